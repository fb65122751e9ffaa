import type { DisplayList, Item, Point } from '../display.ts';
import { label } from '../labels.ts';
import type { Label } from '../labels.ts';
import { cutAlong } from './cut.ts';
import { scalesOf, smallestWhole } from './paper.ts';
import type { Scale, ScaleUnit } from './paper.ts';
import { rulers } from './rulers.ts';
import { drawn, placed } from './sheet.ts';
import type { Leaf, SheetContext } from './sheet.ts';

/** A long profile that can be drawn at any pair of scales: how long and high it is, and the drawing. */
export interface Profile {
  readonly across: number;
  readonly rise: number;
  readonly sizeAt: (scale: { readonly across: number; readonly up: number }) => { readonly width: number; readonly height: number };
  readonly draw: (scale: { readonly across: number; readonly up: number }, size: { readonly width: number; readonly height: number }) => DisplayList;
}

/** Room for the figures of the levels at the left, and beyond a match line [units]. */
const beside = { left: 66, right: 16 } as const;
/** Heights are drawn at most so many times as large as lengths. */
const mostExaggeration = 10;
const mostSheets = 6;
/** The key under a profile has at least this room [units]. */
const keyRoom = 96;

interface Chosen {
  readonly across: Scale;
  readonly up: Scale;
  readonly height: number;
}

/**
 * The largest scale of a rule at which the whole profile lies on one sheet; one that would be smaller than 1 in = 10 ft (1:100)
 * is broken over sheets at that scale. Heights take the largest scale that leaves room for the key.
 */
function choose(profile: Profile, context: SheetContext, free: number): Chosen {
  const scales = scalesOf(context.unit);
  const width = context.paper.field.width - beside.left - beside.right;
  const sheets = (scale: Scale): number => profile.sizeAt({ across: scale.metres, up: scale.metres }).width / width;
  const fits = (scale: Scale): boolean => sheets(scale) <= 1 || (scale.ratio >= smallestWhole[context.unit] && sheets(scale) <= mostSheets);
  const candidates = scales.filter(fits);
  for (const across of candidates) {
    const up = scales.find(({ ratio, metres }) => ratio <= across.ratio && across.ratio / ratio <= mostExaggeration && profile.sizeAt({ across: across.metres, up: metres }).height <= free);
    if (up !== undefined) return { across, up, height: free };
  }
  throw new RangeError('no scale of the rule takes this profile');
}

/** Sheets of a profile with rulers and match lines; each has the words that found no room in a key of its own. */
export function profileSheets(profile: Profile, context: SheetContext, title: Label, notes: readonly Label[]): Leaf[] {
  const { field } = context.paper;
  let free = field.height - keyRoom;
  for (let attempt = 0; ; attempt += 1) {
    const chosen = choose(profile, context, free);
    const leaves = at(profile, context, chosen, title, notes);
    const over = Math.max(...leaves.map(({ height }) => height)) - field.height;
    if (over <= 0 || attempt === 3) return leaves.map(({ leaf }) => leaf);
    free -= Math.ceil(over);
  }
}

function at(profile: Profile, context: SheetContext, { across, up, height }: Chosen, title: Label, notes: readonly Label[]): { leaf: Leaf; height: number }[] {
  const { field } = context.paper;
  const scale = { across: across.metres, up: up.metres };
  const whole = profile.draw(scale, { width: profile.sizeAt(scale).width, height });
  const windows = windowsOf(whole, (field.width - beside.left - beside.right) * across.metres, context.unit);
  return windows.map((window, index) => {
    const extent = { ...whole.extent, x0: window.from - beside.left * across.metres, x1: window.from - beside.left * across.metres + field.width * across.metres };
    const cut = cutAlong(whole, window.from, window.to, extent);
    const items = [...rulers(cut, context.unit, { across, up }, window), ...cut.items, ...matchLines(cut, window, { index, of: windows.length })];
    const display: DisplayList = { ...cut, items, exaggeration: across.ratio / up.ratio };
    const { tree, height: tall } = drawn(display, { width: field.width, height }, context.say, `p${index}`);
    const place = { x: field.x, y: field.y, width: field.width, height };
    const heading = { title: index === 0 ? title : label('drawing.sheet.continued', { title: context.say(title.code, title.params) }), scales: scaleWords(context.unit, across, up), notes };
    return { height: tall, leaf: { heading, drawing: { display, at: place }, body: [placed(tree, field)] } };
  });
}

export function scaleWord(unit: ScaleUnit, { ratio }: Scale): Label {
  return unit === 'foot' ? label('drawing.sheet.feetPerInch', { feet: ratio / 12 }) : label('drawing.sheet.ratio', { ratio });
}

function scaleWords(unit: ScaleUnit, across: Scale, up: Scale): Label[] {
  const name = unit === 'foot' ? 'feet' : 'ratio';
  const value = ({ ratio }: Scale): number => (unit === 'foot' ? ratio / 12 : ratio);
  return [
    label(unit === 'foot' ? 'drawing.sheet.across' : 'drawing.sheet.acrossRatio', { [name]: value(across) }),
    label(unit === 'foot' ? 'drawing.sheet.up' : 'drawing.sheet.upRatio', { [name]: value(up) }),
    across.ratio === up.ratio ? label('drawing.trueScale') : label('drawing.exaggeration', { times: across.ratio / up.ratio }),
  ];
}

interface Window {
  readonly from: number;
  readonly to: number;
}

/** As few sheets as hold the profile, of one length as near as whole five feet or two metres allow: no sheet is left with a stub. */
function windowsOf({ extent }: DisplayList, most: number, unit: ScaleUnit): Window[] {
  const whole = unit === 'foot' ? 5 * 0.3048 : 2;
  const sheets = Math.ceil((extent.x1 - extent.x0) / most - 1e-9);
  const ends = Array.from({ length: sheets - 1 }, (_, index) => Math.round((extent.x0 + ((index + 1) * (extent.x1 - extent.x0)) / sheets) / whole) * whole);
  const stops = [extent.x0, ...ends, extent.x1];
  const windows = stops.slice(1).map((to, index) => ({ from: stops[index] ?? to, to }));
  // A rounded end may make a window longer than a sheet; then every sheet but the last is filled.
  if (windows.every(({ from, to }) => to - from <= most * (1 + 1e-9))) return windows;
  return filled(extent, most, whole);
}

function filled({ x0, x1 }: DisplayList['extent'], most: number, whole: number): Window[] {
  const windows: Window[] = [];
  let from = x0;
  while (x1 - from > most * (1 + 1e-9)) {
    const to = Math.floor((from + most) / whole) * whole;
    windows.push({ from, to });
    from = to;
  }
  return [...windows, { from, to: x1 }];
}

function matchLines({ extent }: DisplayList, { from, to }: Window, { index, of }: { readonly index: number; readonly of: number }): Item[] {
  const up = (share: number): number => extent.y0 + share * (extent.y1 - extent.y0);
  const line = (x: number): Item => ({ kind: 'line', part: null, role: 'ink', state: 'plain', points: [[x, up(0.04)], [x, up(0.97)]], weight: 'bold', dash: 'chain', of: null });
  const text = (at: Point, words: Label, side: 'left' | 'right'): Item => ({ kind: 'text', part: null, role: 'ink', state: 'plain', at, label: words, side, rank: 0, movable: false });
  return [
    ...(index > 0 ? [line(from), text([from, up(0.94)], label('drawing.sheet.matchBefore', { station: from, sheet: index }), 'right')] : []),
    ...(index < of - 1 ? [line(to), text([to, up(0.94)], label('drawing.sheet.matchNext', { station: to, sheet: index + 2 }), 'left')] : []),
  ];
}

