import { CalcProblem } from '../common/problem.ts';
import { addPlace } from './places.ts';
import type { Places } from './places.ts';
import { BREAKLINE, SURFACE_LIMITS } from './surface.ts';
import { turn } from './turn.ts';

/** A straight piece of a line between two places. */
export interface Segment { readonly a: number; readonly b: number; readonly kind: number; readonly path: string }

/** Share of the way from a to b that lies nearest to a place, and the distance of the place from it. */
export function footOf(places: Places, segment: Segment, i: number): { readonly share: number; readonly distance: number } {
  const { x, y } = places;
  const ux = x[segment.b]! - x[segment.a]!;
  const uy = y[segment.b]! - y[segment.a]!;
  const dx = x[i]! - x[segment.a]!;
  const dy = y[i]! - y[segment.a]!;
  const share = (dx * ux + dy * uy) / (ux * ux + uy * uy);
  const ox = dx - share * ux;
  const oy = dy - share * uy;
  return { share, distance: Math.sqrt(ox * ox + oy * oy) };
}

function touches(places: Places, segment: Segment, i: number): boolean {
  const { share, distance } = footOf(places, segment, i);
  return share >= 0 && share <= 1 && distance <= SURFACE_LIMITS.samePlace;
}

/** Adds the place where two segments cross; nothing when they only touch or do not meet. */
function addCrossing(places: Places, one: Segment, other: Segment): void {
  const a = turn(places, other.a, other.b, one.a);
  const b = turn(places, other.a, other.b, one.b);
  const c = turn(places, one.a, one.b, other.a);
  const d = turn(places, one.a, one.b, other.b);
  const apart = (a > 0 && b > 0) || (a < 0 && b < 0) || (c > 0 && d > 0) || (c < 0 && d < 0) || a === b || c === d;
  if (apart || touches(places, one, other.a) || touches(places, one, other.b) || touches(places, other, one.a) || touches(places, other, one.b)) return;
  const line = (one.kind & BREAKLINE) !== 0 ? one : other;
  const [start, end] = line === one ? [a, b] : [c, d];
  const share = start / (start - end);
  const x = places.x[line.a]! + share * (places.x[line.b]! - places.x[line.a]!);
  const y = places.y[line.a]! + share * (places.y[line.b]! - places.y[line.a]!);
  if ((one.kind & other.kind & BREAKLINE) !== 0) throw new CalcProblem('surface.breaklinesCross', one.path, { x, y, other: other.path });
  addPlace(places, x, y, null, one.path);
  if (places.x.length > 3 * SURFACE_LIMITS.mostPoints) throw new CalcProblem('surface.tooMany', one.path, { count: places.x.length, most: 3 * SURFACE_LIMITS.mostPoints });
}

function addCrossings(places: Places, segments: readonly Segment[]): void {
  const low = (s: Segment): number => Math.min(places.x[s.a]!, places.x[s.b]!);
  const high = (s: Segment): number => Math.max(places.x[s.a]!, places.x[s.b]!);
  const order = segments.map((segment) => ({ segment, low: low(segment), high: high(segment) })).sort((p, q) => p.low - q.low);
  order.forEach((one, k) => {
    for (let j = k + 1; j < order.length && order[j]!.low <= one.high; j += 1) addCrossing(places, one.segment, order[j]!.segment);
  });
}

/** First position in a rising list of places whose x is not below a value. */
export function firstAbove(x: readonly number[], order: readonly number[], value: number): number {
  let low = 0;
  let high = order.length;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (x[order[middle]!]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Levels of the places between two measured ones along a breakline, in a straight line between them. */
function levelsAlong(places: Places, chain: readonly { readonly i: number; readonly share: number }[]): void {
  let before = 0;
  chain.forEach(({ i }, k) => {
    const end = places.level[i] ?? null;
    if (end === null) return;
    const from = chain[before]!;
    const start = places.level[from.i] ?? end;
    for (let m = before + 1; m < k; m += 1) {
      const { i: between, share } = chain[m]!;
      places.level[between] = start + ((end - start) * (share - from.share)) / (chain[k]!.share - from.share);
    }
    before = k;
  });
}

/**
 * Cuts the lines of a survey wherever they cross each other or pass over a place, so that pieces meet only at places.
 * A place on a breakline without a level of its own takes the level of the line there.
 *
 * @param places gains the crossings
 * Errors: surface.breaklinesCross where two breaklines cross away from their vertices: the ground cannot have two levels there
 */
export function cutSegments(places: Places, segments: readonly Segment[]): Segment[] {
  addCrossings(places, segments);
  const order = places.x.map((_, i) => i).sort((p, q) => places.x[p]! - places.x[q]!);
  const pieces = new Map<number, Segment>();
  const reach = SURFACE_LIMITS.samePlace;
  for (const segment of [...segments].sort((p, q) => (q.kind & BREAKLINE) - (p.kind & BREAKLINE))) {
    const { a, b, kind, path } = segment;
    const chain = [{ i: a, share: 0 }, { i: b, share: 1 }];
    const end = Math.max(places.x[a]!, places.x[b]!) + reach;
    for (let k = firstAbove(places.x, order, Math.min(places.x[a]!, places.x[b]!) - reach); k < order.length && places.x[order[k]!]! <= end; k += 1) {
      const i = order[k]!;
      if (i !== a && i !== b && touches(places, segment, i)) chain.push({ i, share: footOf(places, segment, i).share });
    }
    chain.sort((p, q) => p.share - q.share || p.i - q.i);
    if ((kind & BREAKLINE) !== 0) levelsAlong(places, chain);
    for (let k = 1; k < chain.length; k += 1) {
      const low = Math.min(chain[k - 1]!.i, chain[k]!.i);
      const high = Math.max(chain[k - 1]!.i, chain[k]!.i);
      const key = low * 4 * SURFACE_LIMITS.mostPoints + high;
      pieces.set(key, { a: low, b: high, kind: kind | (pieces.get(key)?.kind ?? 0), path });
    }
  }
  return [...pieces.values()];
}
