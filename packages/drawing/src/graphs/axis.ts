import type { Dash, Hatch, Item, Point, Role, Side, Weight } from '../display.ts';
import type { Label } from '../labels.ts';

/** From a quantity's own range to a band of the picture. */
export interface Scale {
  readonly low: number;
  readonly high: number;
  readonly from: number;
  readonly to: number;
}

export function put(scale: Scale, value: number): number {
  const span = scale.high - scale.low;
  return span === 0 ? scale.from : scale.from + ((value - scale.low) / span) * (scale.to - scale.from);
}

/** A round step (1, 2 or 5 times a power of ten) that gives at most `most` steps in `span`. */
export function roundStep(span: number, most: number): number {
  if (!(span > 0)) return 1;
  let unit = 1;
  while (unit > span / most) unit /= 10;
  while (unit * 10 <= span / most) unit *= 10;
  return [1, 2, 5, 10].map((times) => times * unit).find((step) => span / step <= most) ?? unit * 10;
}

export function ticks(low: number, high: number, step: number): number[] {
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  return Array.from({ length: Math.max(last - first + 1, 0) }, (_, index) => (first + index) * step);
}

/** Collects the items of a graph; its lettering belongs to no part. */
export class GraphPen {
  readonly items: Item[] = [];

  line(role: Role, points: readonly Point[], weight: Weight = 'normal', dash: Dash = 'solid', part: string | null = null): void {
    this.items.push({ kind: 'line', part, role, state: 'plain', points, weight, dash });
  }

  shape(role: Role, points: readonly Point[], hatch: Hatch, outlined = false): void {
    this.items.push({ kind: 'polygon', part: null, role, state: 'plain', points, hatch, outlined });
  }

  text(role: Role, at: Point, label: Label, side: Side, rank: number, movable = true): void {
    this.items.push({ kind: 'text', part: null, role, state: 'plain', at, label, side, rank, movable });
  }

  mark(role: Role, mark: 'dutyPoint' | 'measuredPoint' | 'levelMark', at: Point, part: string | null = null): void {
    this.items.push({ kind: 'mark', part, role, state: 'plain', mark, at, index: 0, value: null });
  }
}

/** Keeps the lowest and the highest of every bucket, so that no peak is lost to the size of the picture. */
export function thin(points: readonly Point[], buckets: number): Point[] {
  if (points.length <= buckets * 2) return [...points];
  const size = Math.ceil(points.length / buckets);
  const result: Point[] = [];
  for (let start = 0; start < points.length; start += size) {
    const part = points.slice(start, start + size);
    const low = part.reduce((best, point) => (point[1] < best[1] ? point : best));
    const high = part.reduce((best, point) => (point[1] > best[1] ? point : best));
    result.push(...(low[0] < high[0] ? [low, high] : [high, low]));
  }
  return result;
}
