import type { Point, Side } from '../display.ts';

export interface Box {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

export interface Wanted {
  readonly key: number;
  readonly text: string;
  readonly at: Point;
  readonly side: Side;
  readonly rank: number;
  readonly movable: boolean;
}

export interface PlacedText {
  readonly key: number;
  readonly text: string;
  readonly box: Box;
  /** From the point to the text, when the text had to move away from it. */
  readonly leader: readonly [Point, Point] | null;
}

export type Segment = readonly [Point, Point];

export interface Sheet {
  readonly width: number;
  readonly height: number;
  readonly size: number;
  readonly marks: readonly Box[];
  readonly lines: readonly Segment[];
  /** Hatched areas, in which lettering is hard to read. */
  readonly hatched: readonly (readonly Point[])[];
}

/** Mean advance of the lettering as a share of its size; measured on the drawing's own labels, on the wide side. */
const advance = 0.53;
const edge = 3;
const unplaceable = 500;

/**
 * Puts the texts on the sheet in order of rank, each at the place of least cost among a fixed set about its point:
 * never over another text or mark, rarely over lines, near its point. What finds no place is dropped, rank 0 never.
 */
export function placeTexts(wanted: readonly Wanted[], sheet: Sheet): PlacedText[] {
  const taken: Box[] = [...sheet.marks];
  const placed: PlacedText[] = [];
  const order = [...wanted].sort((a, b) => Number(a.movable) - Number(b.movable) || a.rank - b.rank || a.key - b.key);
  for (const text of order) {
    const result = text.movable ? bestPlace(text, sheet, taken) : fixedPlace(text, sheet, taken);
    if (result === null) continue;
    taken.push(result.box);
    placed.push(result);
  }
  return placed.sort((a, b) => a.key - b.key);
}

function fixedPlace(text: Wanted, sheet: Sheet, taken: readonly Box[]): PlacedText | null {
  const { width, height } = sizeOf(text, sheet.size);
  const [x, y] = text.at;
  const left = text.side === 'right' ? x + 4 : text.side === 'left' ? x - 4 - width : x - width / 2;
  const top = text.side === 'above' ? y - 4 - height : text.side === 'below' ? y + 3 : y - height / 2;
  const box = inside({ x0: left, y0: top, x1: left + width, y1: top + height }, sheet);
  if (text.rank >= 1 && taken.some((other) => overlap(box, other) > 0)) return null;
  return { key: text.key, text: text.text, box, leader: null };
}

function sizeOf(text: Wanted, size: number): { width: number; height: number } {
  return { width: Array.from(text.text).length * size * advance + 2, height: size * 1.2 };
}

function bestPlace(text: Wanted, sheet: Sheet, taken: readonly Box[]): PlacedText | null {
  let best: { box: Box; cost: number; away: number } | null = null;
  for (const [dx, dy, penalty] of offsets(text, sheet.size)) {
    const { width, height } = sizeOf(text, sheet.size);
    const raw = { x0: text.at[0] + dx, y0: text.at[1] + dy, x1: text.at[0] + dx + width, y1: text.at[1] + dy + height };
    const box = inside(raw, sheet);
    const away = distance(box, text.at);
    const far = away > Math.min(120, sheet.width * 0.2) ? unplaceable : 0;
    const cost = far + penalty + away * 0.9 + costOf(box, sheet, taken) + Math.abs(box.x0 - raw.x0) * 0.1;
    if (best === null || cost < best.cost) best = { box, cost, away };
  }
  if (best === null || (best.cost >= unplaceable && text.rank >= 1)) return null;
  const leader = best.away > 16 ? leaderOf(best.box, text.at) : null;
  return { key: text.key, text: text.text, box: best.box, leader };
}

/** Left-top corners to try, nearest and most natural first. */
function offsets(text: Wanted, size: number): [number, number, number][] {
  const { width, height } = sizeOf(text, size);
  const result: [number, number, number][] = [];
  const sides: Side[] = [text.side, ...(['above', 'right', 'below', 'left'] as const).filter((side) => side !== text.side)];
  sides.forEach((side, order) => {
    const penalty = order === 0 ? 0 : 9 + order * 2;
    for (const step of [0, 14, 28, 44, 62, 84, 110, 140]) {
      for (const slide of [0, 0.5, 1]) result.push([...corner(side, step, slide, width, height), penalty]);
    }
  });
  return result;
}

function corner(side: Side, step: number, slide: number, width: number, height: number): [number, number] {
  const along = [8, -width / 2, -width - 8][slide * 2] ?? 8;
  switch (side) {
    case 'above':
      return [along, -3 - height - step];
    case 'below':
      return [along, 4 + step];
    case 'right':
      return [9 + step, -height / 2 + (slide - 0.5) * height];
    case 'left':
      return [-9 - step - width, -height / 2 + (slide - 0.5) * height];
  }
}

function costOf(box: Box, sheet: Sheet, taken: readonly Box[]): number {
  let cost = 0;
  for (const other of taken) if (overlap(box, other) > 0) cost += unplaceable;
  if (cost > 0) return cost;
  for (const line of sheet.lines) cost += Math.min(crossing(box, line) * 1.2, 90);
  for (const area of sheet.hatched) cost += covered(box, area) * 6;
  return cost;
}

function overlap(a: Box, b: Box): number {
  const wide = Math.min(a.x1, b.x1) - Math.max(a.x0, b.x0);
  const high = Math.min(a.y1, b.y1) - Math.max(a.y0, b.y0);
  return wide > 0 && high > 0 ? wide * high : 0;
}

/** Length of the piece of a line that lies in the box [px]. */
function crossing(box: Box, [a, b]: Segment): number {
  const d: Point = [b[0] - a[0], b[1] - a[1]];
  let enter = 0;
  let leave = 1;
  for (const [from, step, low, high] of [[a[0], d[0], box.x0, box.x1], [a[1], d[1], box.y0, box.y1]] as const) {
    if (step === 0) {
      if (from < low || from > high) return 0;
      continue;
    }
    const t0 = (low - from) / step;
    const t1 = (high - from) / step;
    enter = Math.max(enter, Math.min(t0, t1));
    leave = Math.min(leave, Math.max(t0, t1));
  }
  return leave > enter ? (leave - enter) * Math.hypot(d[0], d[1]) : 0;
}

/** How many of six points of the box lie in the area. */
function covered(box: Box, area: readonly Point[]): number {
  let count = 0;
  for (const x of [box.x0, (box.x0 + box.x1) / 2, box.x1]) {
    for (const y of [box.y0 + 2, box.y1 - 2]) if (contains(area, x, y)) count += 1;
  }
  return count;
}

function contains(area: readonly Point[], x: number, y: number): boolean {
  let within = false;
  area.forEach(([ax, ay], index) => {
    const [bx, by] = area.at(index - 1) ?? [ax, ay];
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) within = !within;
  });
  return within;
}

function inside(box: Box, sheet: Sheet): Box {
  const dx = Math.max(edge - box.x0, 0) + Math.min(sheet.width - edge - box.x1, 0);
  const dy = Math.max(edge - box.y0, 0) + Math.min(sheet.height - edge - box.y1, 0);
  return { x0: box.x0 + dx, y0: box.y0 + dy, x1: box.x1 + dx, y1: box.y1 + dy };
}

function nearest(box: Box, [x, y]: Point): Point {
  return [Math.min(Math.max(x, box.x0), box.x1), Math.min(Math.max(y, box.y0), box.y1)];
}

function distance(box: Box, at: Point): number {
  const [x, y] = nearest(box, at);
  return Math.hypot(x - at[0], y - at[1]);
}

function leaderOf(box: Box, at: Point): [Point, Point] {
  return [at, nearest(box, at)];
}
