import { CalcProblem } from '../common/problem.ts';
import type { GroundLowSpot } from './lowSpots.ts';
import { chainFrom, crossingKey, isBelow, placesOf, shoreAcross } from './shore.ts';
import type { ShoreKey } from './shore.ts';
import { nextOf } from './surface.ts';
import type { Position, Ground } from './surface.ts';

/** Water in plan: a ring counter-clockwise (y upwards) and its islands clockwise; rings do not repeat their first place. */
export interface WaterPolygon { readonly outer: readonly Position[]; readonly holes: readonly (readonly Position[])[] }

/** Signed area of a ring [m2], above zero counter-clockwise. */
export function ringArea(ring: readonly Position[]): number {
  const origin = ring[0]!; // an empty ring asks nothing of it
  let twice = 0;
  for (let i = 1; i + 1 < ring.length; i += 1) {
    const p = ring[i]!;
    const q = ring[i + 1]!;
    twice += (p.x - origin.x) * (q.y - origin.y) - (q.x - origin.x) * (p.y - origin.y);
  }
  return twice / 2;
}

/** Rings of less area are points [m2]. */
const LEAST_RING = 1e-9;

const lowestOf = (surface: Ground, face: number): number => Math.min(surface.level[surface.triangles[3 * face]!]!, surface.level[surface.triangles[3 * face + 1]!]!, surface.level[surface.triangles[3 * face + 2]!]!);

/** Wet triangles by the sheets of water that hang together over wet edges. */
function sheets(surface: Ground, faces: readonly number[], level: number): number[][] {
  const wet = new Set(faces.filter((face) => lowestOf(surface, face) < level));
  const found: number[][] = [];
  for (const start of wet) {
    wet.delete(start);
    const sheet = [start];
    for (let k = 0; k < sheet.length; k += 1) {
      for (let e = 3 * sheet[k]!; e < 3 * sheet[k]! + 3; e += 1) {
        const twin = surface.twins[e]!;
        const other = Math.floor(twin / 3);
        if (twin < 0 || !wet.has(other)) continue;
        if (!isBelow(surface, surface.triangles[e]!, level) && !isBelow(surface, surface.triangles[nextOf(e)]!, level)) continue;
        wet.delete(other);
        sheet.push(other);
      }
    }
    found.push(sheet);
  }
  return found;
}

/** The edge of a sheet of water as links from place to place, water on the left: shores, walls and open edges. */
function edgeOf(surface: Ground, sheet: readonly number[], level: number): Map<ShoreKey, ShoreKey> {
  const links = new Map<ShoreKey, ShoreKey>();
  for (const face of sheet) {
    const across = shoreAcross(surface, face, level);
    if (across) links.set(across.from, across.to);
    for (let e = 3 * face; e < 3 * face + 3; e += 1) {
      if (surface.twins[e]! >= 0) continue;
      const a = surface.triangles[e]!;
      const b = surface.triangles[nextOf(e)]!;
      const [wetA, wetB] = [isBelow(surface, a, level), isBelow(surface, b, level)];
      if (wetA || wetB) links.set(wetA ? a : crossingKey(surface, e), wetB ? b : crossingKey(surface, e));
    }
  }
  return links;
}

function polygonOf(surface: Ground, sheet: readonly number[], level: number): WaterPolygon | null {
  const links = edgeOf(surface, sheet, level);
  let outer: Position[] = [];
  let largest = 0;
  const holes: Position[][] = [];
  for (const start of links.keys()) {
    const ring = placesOf(surface, chainFrom(links, start).keys, level, true);
    const area = ringArea(ring);
    // where the shore runs through a vertex, a ring can shrink to a point
    if (area > largest) [outer, largest] = [ring, area];
    else if (area < -LEAST_RING) holes.push(ring);
  }
  return outer.length === 0 ? null : { outer, holes };
}

/**
 * Where water stands in a low spot at a level, in plan.
 *
 * @param level between the lowest point and the top level [m]
 * @returns polygons [m]; their area is the water surface at that level. Walls are edges of them: water on one side does
 * not show on the other, and a wall within the water is a slit of no width
 * Errors: surface.outsideLowSpot
 * Source: geometry
 */
export function waterExtent(surface: Ground, lowSpot: GroundLowSpot, level: number): WaterPolygon[] {
  if (!(level >= lowSpot.bottom.level && level <= lowSpot.topLevel)) {
    throw new CalcProblem('surface.outsideLowSpot', 'level', { level, bottom: lowSpot.bottom.level, top: lowSpot.topLevel });
  }
  return sheets(surface, lowSpot.faces, level).flatMap((sheet) => polygonOf(surface, sheet, level) ?? []);
}
