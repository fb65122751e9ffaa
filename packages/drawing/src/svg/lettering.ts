import type { DisplayList, Point, TextItem } from '../display.ts';
import { areaOf } from './geometry.ts';
import type { Area, Segment } from './geometry.ts';
import { markBox } from './marks.ts';
import { placeTexts } from './place.ts';
import type { PlacedText, Sheet, Wanted } from './place.ts';
import type { Projection } from './project.ts';
import type { SvgOptions } from './render.ts';

/** A part's texts that found no room beside it: a number at the part, and the words in the key below the picture. */
export interface Balloon {
  readonly number: number;
  readonly placed: PlacedText;
  readonly item: TextItem;
  readonly words: readonly string[];
}

export interface Lettering {
  readonly texts: readonly { readonly placed: PlacedText; readonly item: TextItem }[];
  readonly balloons: readonly Balloon[];
}

export function letterOut(display: DisplayList, view: Projection, options: SvgOptions): Lettering {
  const items = new Map<number, TextItem>();
  display.items.forEach((item, key) => {
    if (item.kind === 'text') items.set(key, item);
  });
  const say = (item: TextItem): string => options.label(item.label.code, item.label.params);
  const wanted = [...items].filter(([, { rank }]) => rank <= options.maxRank).map(([key, item]): Wanted => (
    { key, text: say(item), at: view.toPixels(item.at), side: item.side, rank: item.rank, movable: item.movable }));
  const sheet = sheetOf(display, view, options);
  const placed = placeTexts(wanted, sheet);
  const texts = placed.flatMap((entry) => {
    const item = items.get(entry.key);
    return item === undefined ? [] : [{ placed: entry, item }];
  });
  if (display.name !== 'section') return { texts, balloons: [] };
  const done = new Set(placed.map(({ key }) => key));
  const left = [...items].filter(([key, { movable }]) => movable && !done.has(key));
  return { texts, balloons: balloonsFor(left, { view, sheet, placed, say }) };
}

interface Board {
  readonly view: Projection;
  readonly sheet: Sheet;
  readonly placed: readonly PlacedText[];
  readonly say: (item: TextItem) => string;
}

/** One balloon for each part, numbered from the house outward. */
function balloonsFor(left: readonly (readonly [number, TextItem])[], { view, sheet, placed, say }: Board): Balloon[] {
  const groups = new Map<string, TextItem[]>();
  for (const [key, item] of left) {
    const name = item.part ?? `text ${key}`;
    groups.set(name, [...(groups.get(name) ?? []), item]);
  }
  const sorted = [...groups.values()].flatMap((items) => {
    const first = [...items].sort((a, b) => a.rank - b.rank)[0];
    return first === undefined ? [] : [{ first, items: [first, ...items.filter((item) => item !== first)] }];
  }).sort((a, b) => a.first.at[0] - b.first.at[0] || b.first.at[1] - a.first.at[1]);
  const wanted = sorted.map(({ first }, index): Wanted => (
    { key: index, text: String(index + 1), at: view.toPixels(first.at), side: first.side, rank: 0, movable: true, balloon: true }));
  const found = placeTexts(wanted, sheet, placed);
  return sorted.flatMap(({ first, items }, index) => {
    const entry = found.find(({ key }) => key === index);
    return entry === undefined ? [] : [{ number: index + 1, placed: entry, item: first, words: [...new Set(items.map(say))] }];
  });
}

function sheetOf(display: DisplayList, view: Projection, options: SvgOptions): Sheet {
  const { width, height, textSize } = options;
  const own = display.name === 'section';
  return {
    width, height, size: textSize, reach: Math.min(own ? 150 : 120, width * 0.22), overLines: !own,
    marks: display.items.flatMap((item) => (item.kind === 'mark' ? [markBox(item, view.toPixels(item.at))] : [])),
    lines: segments(display, view), hatched: hatched(display, view),
  };
}

function segments(display: DisplayList, view: Projection): Segment[] {
  return display.items.flatMap((item) => {
    if (item.kind === 'line' && item.weight !== 'hair') return pairs(item.points.map((point) => view.toPixels(point)));
    if (item.kind === 'polygon' && item.outlined) return pairs([...item.points, ...item.points.slice(0, 1)].map((point) => view.toPixels(point)));
    return [];
  });
}

function hatched(display: DisplayList, view: Projection): Area[] {
  return display.items.flatMap((item) =>
    item.kind === 'polygon' && ['soil', 'concrete', 'stone', 'water'].includes(item.hatch) ? [areaOf(item.points.map((point) => view.toPixels(point)))] : []);
}

function pairs(points: readonly Point[]): Segment[] {
  return points.slice(1).map((point, index) => [points[index] ?? point, point]);
}
