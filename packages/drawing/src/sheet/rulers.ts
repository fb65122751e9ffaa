import type { DisplayList, Item, Point, Side } from '../display.ts';
import { ticks } from '../graphs/axis.ts';
import { label } from '../labels.ts';
import type { Label } from '../labels.ts';
import type { Scale, ScaleUnit } from './paper.ts';

const sizeOf: Readonly<Record<ScaleUnit, number>> = { foot: 0.3048, metre: 1 };
/** Steps of a ruler, in feet or metres, and the least room for one [units of the sheet]. */
const steps = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200];
const room = { across: 70, up: 40 } as const;

const line = (points: readonly Point[], weight: 'hair' | 'thin'): Item => ({ kind: 'line', part: null, role: 'ink', state: 'plain', points, weight, dash: 'solid', of: null });
const text = (at: Point, words: Label, side: Side): Item => ({ kind: 'text', part: null, role: 'faint', state: 'plain', at, label: words, side, rank: 0, movable: false });

function step(unit: ScaleUnit, scale: Scale, least: number): number {
  return (steps.find((size) => (size * sizeOf[unit]) / scale.metres >= least) ?? 500) * sizeOf[unit];
}

/** Levels at the left and stations along the foot: whoever has no scale rule reads the drawing by these, at any size of copy. */
export function rulers(display: DisplayList, unit: ScaleUnit, { across, up }: { readonly across: Scale; readonly up: Scale }, window: { readonly from: number; readonly to: number }): Item[] {
  const { y0, y1 } = display.extent;
  const foot = y0 + 26 * up.metres;
  const items: Item[] = [];
  for (const level of ticks(foot + 6 * up.metres, y1, step(unit, up, room.up))) {
    items.push(line([[window.from, level], [window.to, level]], 'hair'), text([window.from, level], label('drawing.value.level', { value: level }), 'left'));
  }
  items.push(line([[window.from, foot], [window.to, foot]], 'thin'));
  for (const station of ticks(window.from, window.to, step(unit, across, room.across))) {
    items.push(line([[station, foot], [station, foot + 6 * up.metres]], 'thin'), text([station, foot], label('drawing.value.length', { value: station }), 'below'));
  }
  return items;
}
