import { addPlace, placeAt } from './places.ts';
import type { Places } from './places.ts';
import { firstAbove, footOf } from './segments.ts';
import type { Segment } from './segments.ts';
import { SURFACE_LIMITS, WALL } from './surface.ts';

/**
 * Puts a vertex on a wall opposite to every measured place near it, so that the ground at the foot of a long wall
 * follows the spots along it and not the straight line between its corners.
 *
 * @param places gains the feet, without levels
 * Limits: places within 1 ft of the wall; no foot within 20 mm of another place; ours
 */
export function addWallFeet(places: Places, segments: readonly Segment[]): void {
  const { wallReach, footSpacing } = SURFACE_LIMITS;
  const measured = places.x.flatMap((_, i) => (places.level[i] === null ? [] : [i])).sort((p, q) => places.x[p]! - places.x[q]!);
  for (const segment of segments) {
    if ((segment.kind & WALL) === 0) continue;
    const [ax, ay] = [places.x[segment.a]!, places.y[segment.a]!];
    const [bx, by] = [places.x[segment.b]!, places.y[segment.b]!];
    const end = Math.max(ax, bx) + wallReach;
    for (let k = firstAbove(places.x, measured, Math.min(ax, bx) - wallReach); k < measured.length && places.x[measured[k]!]! <= end; k += 1) {
      const { share, distance } = footOf(places, segment, measured[k]!);
      if (!(share > 0 && share < 1) || distance > wallReach) continue;
      const [x, y] = [ax + share * (bx - ax), ay + share * (by - ay)];
      if (placeAt(places, x, y, footSpacing) < 0) addPlace(places, x, y, null, segment.path);
    }
  }
}
