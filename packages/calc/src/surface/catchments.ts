import { descend } from './flowPath.ts';
import type { Drainage } from './lowSpots.ts';
import type { Drop } from './descent.ts';
import type { Ground } from './surface.ts';
import { planArea } from './triangulate.ts';

/** Ground that drains to one simple low spot, or off the ground (null): its triangles and their area in plan [m2]. */
export interface GroundCatchment { readonly lowSpot: number | null; readonly faces: readonly number[]; readonly area: number }

/**
 * Which ground drains to which low spot. A triangle belongs where the water from its center goes.
 *
 * @param drainage from findLowSpots for the same surface
 * @returns one catchment for each simple low spot in their order, then what leaves the ground; areas add up to the whole
 * Accuracy: the divide runs along edges of triangles, so it is as good as the spots are dense
 * Source: steepest descent as in flowPath
 */
export function groundCatchments(surface: Ground, drainage: Drainage): GroundCatchment[] {
  const { x, y, triangles } = surface;
  const faces = new Map<number | null, number[]>();
  for (const spot of drainage.lowSpots) if (spot.children.length === 0) faces.set(spot.index, []);
  faces.set(null, []);
  const known = new Map<number, number | null>();
  for (let face = 0; 3 * face < triangles.length; face += 1) {
    const [a, b, c] = [triangles[3 * face]!, triangles[3 * face + 1]!, triangles[3 * face + 2]!];
    const center: Drop = { at: 'face', face, place: { x: (x[a]! + x[b]! + x[c]!) / 3, y: (y[a]! + y[b]! + y[c]!) / 3 } };
    faces.get(descend(surface, drainage, center, known).lowSpot)!.push(face);
  }
  return [...faces].map(([lowSpot, list]) => ({ lowSpot, faces: list, area: list.reduce((sum, face) => sum + planArea(surface, face), 0) }));
}
