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
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  let enter = 0;
  let leave = 1;
  // A line along one axis lies between the box's sides in the other, or it was sorted out above.
  if (dx !== 0) {
    const t0 = (box.x0 - a[0]) / dx;
    const t1 = (box.x1 - a[0]) / dx;
    enter = Math.max(enter, Math.min(t0, t1));
    leave = Math.min(leave, Math.max(t0, t1));
  }
  if (dy !== 0) {
    const t0 = (box.y0 - a[1]) / dy;
    const t1 = (box.y1 - a[1]) / dy;
    enter = Math.max(enter, Math.min(t0, t1));
    leave = Math.min(leave, Math.max(t0, t1));
  }
  return leave > enter ? (leave - enter) * Math.hypot(dx, dy) : 0;
}

/** Whether two lines cross between their ends. */
export function cross([a, b]: Segment, [c, d]: Segment): boolean {
  const side = (p: Point, q: Point, r: Point): number => (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/** An area with the box about it, outside of which nothing is asked. */
export interface Area {
  readonly points: readonly Point[];
  readonly bounds: Box;
}

export function areaOf(points: readonly Point[]): Area {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return { points, bounds: { x0: Math.min(...xs), y0: Math.min(...ys), x1: Math.max(...xs), y1: Math.max(...ys) } };
}

/** How many of six points of the box lie in the area. */
export function covered(box: Box, { points: area, bounds }: Area): number {
  let count = 0;
  if (!overlap(box, bounds)) return count;
  for (const x of [box.x0, (box.x0 + box.x1) / 2, box.x1]) {
    for (const y of [box.y0 + 2, box.y1 - 2]) if (contains(area, x, y)) count += 1;
  }
  return count;
}

function contains(area: readonly Point[], x: number, y: number): boolean {
  let within = false;
  let before = area.at(-1);
  for (const point of area) {
    const [ax, ay] = point;
    const [bx, by] = before ?? point;
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) within = !within;
    before = point;
  }
  return within;
}

export function nearest(box: Box, [x, y]: Point): Point {
  return [Math.min(Math.max(x, box.x0), box.x1), Math.min(Math.max(y, box.y0), box.y1)];
}

export function distance(box: Box, at: Point): number {
  const dx = Math.max(box.x0 - at[0], 0, at[0] - box.x1);
  const dy = Math.max(box.y0 - at[1], 0, at[1] - box.y1);
  return Math.sqrt(dx * dx + dy * dy);
}
