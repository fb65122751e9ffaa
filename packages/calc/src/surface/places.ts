import { CalcProblem } from '../common/problem.ts';
import { SURFACE_LIMITS } from './surface.ts';

/** Every place of a survey once, with its level where one was measured. */
export interface Places {
  readonly x: number[];
  readonly y: number[];
  readonly level: (number | null)[];
  readonly pointId: (string | null)[];
  /** Places by squares of one meter. */
  readonly squares: Map<number, number[]>;
}

const SQUARES_ACROSS = 2 * SURFACE_LIMITS.farthest + 4;

export const noPlaces = (): Places => ({ x: [], y: [], level: [], pointId: [], squares: new Map() });

const squareOf = (x: number, y: number): number => Math.floor(x) + SURFACE_LIMITS.farthest + (Math.floor(y) + SURFACE_LIMITS.farthest) * SQUARES_ACROSS;

/** The nearest place within reach of x, y (half a meter at most); -1 when there is none. */
export function placeAt(places: Places, x: number, y: number, reach: number): number {
  const found = new Set<number>();
  for (const dx of [-reach, reach]) for (const dy of [-reach, reach]) found.add(squareOf(x + dx, y + dy));
  let best = -1;
  let nearest = reach * reach;
  for (const square of found) {
    for (const i of places.squares.get(square) ?? []) {
      const dx = places.x[i]! - x;
      const dy = places.y[i]! - y;
      const distance = dx * dx + dy * dy;
      if (distance > nearest || (distance === nearest && best >= 0)) continue;
      best = i;
      nearest = distance;
    }
  }
  return best;
}

/**
 * The number of a place, which is new or already there.
 *
 * @param level null where none was measured
 * @param path where it stands in the input, for the error
 * Errors: surface.twoLevels when the place already has another level
 */
export function addPlace(places: Places, x: number, y: number, level: number | null, path: string): number {
  const there = placeAt(places, x, y, SURFACE_LIMITS.samePlace);
  if (there < 0) {
    const square = squareOf(x, y);
    const list = places.squares.get(square);
    if (list) list.push(places.x.length);
    else places.squares.set(square, [places.x.length]);
    places.x.push(x);
    places.y.push(y);
    places.level.push(level);
    places.pointId.push(null);
    return places.x.length - 1;
  }
  const known = places.level[there] ?? null;
  if (known === null) places.level[there] = level;
  else if (level !== null && Math.abs(known - level) > SURFACE_LIMITS.sameLevel) {
    throw new CalcProblem('surface.twoLevels', path, { x, y, level, other: known });
  }
  return there;
}
