import type { Point } from '../display.ts';

export interface Box {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

export type Segment = readonly [Point, Point];

export function overlap(a: Box, b: Box): boolean {
  return Math.min(a.x1, b.x1) > Math.max(a.x0, b.x0) && Math.min(a.y1, b.y1) > Math.max(a.y0, b.y0);
}

export const grown = (box: Box, by: number): Box => ({ x0: box.x0 - by, y0: box.y0 - by, x1: box.x1 + by, y1: box.y1 + by });

/** Length of the piece of a line that lies in the box. */
export function crossing(box: Box, [a, b]: Segment): number {
  if (Math.max(a[0], b[0]) < box.x0 || Math.min(a[0], b[0]) > box.x1 || Math.max(a[1], b[1]) < box.y0 || Math.min(a[1], b[1]) > box.y1) return 0;
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

/** Whether two lines cross between their ends. */
export function cross([a, b]: Segment, [c, d]: Segment): boolean {
  const side = (p: Point, q: Point, r: Point): number => (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/** How many of six points of the box lie in the area. */
export function covered(box: Box, area: readonly Point[]): number {
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

export function nearest(box: Box, [x, y]: Point): Point {
  return [Math.min(Math.max(x, box.x0), box.x1), Math.min(Math.max(y, box.y0), box.y1)];
}

export function distance(box: Box, at: Point): number {
  const [x, y] = nearest(box, at);
  return Math.hypot(x - at[0], y - at[1]);
}
