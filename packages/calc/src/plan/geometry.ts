import type { Position } from '../document/document.ts';
import { ringArea } from '../surface/extent.ts';

/** Area of an outline [m2], whichever way round it is drawn. Source: shoelace formula, geometry. */
export const outlineArea = (points: readonly Position[]): number => (points.length < 3 ? 0 : Math.abs(ringArea(points)));

export function distance(a: Position, b: Position): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  return Math.sqrt(dx * dx + dy * dy);
}

/** Length of a run from place to place [m]. */
export function runLength(points: readonly Position[]): number {
  let sum = 0;
  for (let i = 1; i < points.length; i += 1) sum += distance(points[i - 1]!, points[i]!);
  return sum;
}

export type Side = readonly [from: Position, to: Position];

/** Straight sides of a run; those of an outline close it. */
export function sidesOf(points: readonly Position[], closed: boolean): Side[] {
  const sides = points.slice(1).map((point, i): Side => [points[i]!, point]);
  return closed && points.length > 2 ? [...sides, [points[points.length - 1]!, points[0]!]] : sides;
}

const turn = (a: Position, b: Position, c: Position): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

/** Where two sides cross; null when they only touch, run along each other or stay apart. */
export function crossing([a, b]: Side, [c, d]: Side): Position | null {
  const t1 = turn(c, d, a);
  const t2 = turn(c, d, b);
  const t3 = turn(a, b, c);
  const t4 = turn(a, b, d);
  if (t1 * t2 >= 0 || t3 * t4 >= 0) return null;
  const share = t1 / (t1 - t2);
  return { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) };
}

/** First place at which a run or outline crosses itself; null for a plain one. */
export function ownCrossing(points: readonly Position[], closed: boolean): Position | null {
  const sides = sidesOf(points, closed);
  for (let i = 0; i < sides.length; i += 1) {
    for (let j = i + 1; j < sides.length; j += 1) {
      const place = crossing(sides[i]!, sides[j]!);
      if (place !== null) return place;
    }
  }
  return null;
}

/** Whether a place lies within an outline, by the rule of odd crossings; places on the outline may fall on either side. */
export function isInside(place: Position, outline: readonly Position[]): boolean {
  let inside = false;
  for (const [a, b] of sidesOf(outline, true)) {
    if (a.y > place.y === b.y > place.y) continue;
    if (place.x < a.x + ((place.y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
  }
  return inside;
}

/** The place of a side that is nearest to another place. */
export function nearestOf([a, b]: Side, place: Position): Position {
  const ux = b.x - a.x;
  const uy = b.y - a.y;
  const long = ux * ux + uy * uy;
  const share = long === 0 ? 0 : ((place.x - a.x) * ux + (place.y - a.y) * uy) / long;
  const kept = share < 0 ? 0 : share > 1 ? 1 : share;
  return { x: a.x + kept * ux, y: a.y + kept * uy };
}

/** Least distance between two runs [m], and a place of the first where it is met. */
export function leastDistance(one: readonly Side[], other: readonly Side[]): { readonly distance: number; readonly place: Position } | null {
  let best: { readonly distance: number; readonly place: Position } | null = null;
  const look = (place: Position, away: number): void => {
    if (best === null || away < best.distance) best = { distance: away, place };
  };
  for (const side of one) {
    for (const facing of other) {
      const place = crossing(side, facing);
      if (place !== null) return { distance: 0, place };
      for (const end of side) look(end, distance(end, nearestOf(facing, end)));
      for (const end of facing) {
        const foot = nearestOf(side, end);
        look(foot, distance(end, foot));
      }
    }
  }
  return best;
}
