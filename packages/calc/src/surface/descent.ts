import type { Drainage } from './lowSpots.ts';
import { gradientOf } from './locate.ts';
import { distanceBetween } from './neighbors.ts';
import { OPEN_EDGE, nextOf, previousOf } from './surface.ts';
import type { Position, Ground } from './surface.ts';

/** Where flowing water is: within a triangle, at a vertex, or off the ground. */
export type Drop =
  | { readonly at: 'face'; readonly face: number; readonly place: Position }
  | { readonly at: 'vertex'; readonly vertex: number; readonly place: Position }
  | { readonly at: 'off'; readonly place: Position };

const placeOf = (surface: Ground, vertex: number): Position => ({ x: surface.x[vertex]!, y: surface.y[vertex]! });
export const atVertex = (surface: Ground, vertex: number): Drop => ({ at: 'vertex', vertex, place: placeOf(surface, vertex) });

function lowerEnd(surface: Ground, drainage: Drainage, e: number): number {
  const { rank } = drainage.flood;
  const a = surface.triangles[e]!;
  const b = surface.triangles[nextOf(e)]!;
  return rank[a]! < rank[b]! ? a : b;
}

/** The corner of a triangle that was flooded first. */
export function lowestCorner(surface: Ground, drainage: Drainage, face: number): number {
  const corners = [0, 1, 2].map((k) => surface.triangles[3 * face + k]!);
  return corners.reduce((best, v) => (drainage.flood.rank[v]! < drainage.flood.rank[best]! ? v : best));
}

/** How far a direction leads out of a triangle over one of its edges. */
function outward(surface: Ground, e: number, direction: Position): number {
  const a = surface.triangles[e]!;
  const b = surface.triangles[nextOf(e)]!;
  return direction.x * (surface.y[b]! - surface.y[a]!) - direction.y * (surface.x[b]! - surface.x[a]!);
}

const downhill = (surface: Ground, face: number): Position => {
  const gradient = gradientOf(surface, face);
  return { x: -gradient.x, y: -gradient.y };
};

/** The edge over which straight flow leaves a triangle, and the place on it; null on level ground. */
function exitOf(surface: Ground, face: number, place: Position): { readonly e: number; readonly place: Position; readonly end: number } | null {
  const direction = downhill(surface, face);
  let best: { readonly e: number; readonly time: number } | null = null;
  for (let e = 3 * face; e < 3 * face + 3; e += 1) {
    const speed = outward(surface, e, direction);
    if (!(speed > 0)) continue;
    const a = surface.triangles[e]!;
    const distance = outward(surface, e, { x: surface.x[a]! - place.x, y: surface.y[a]! - place.y });
    const time = Math.max(0, distance / speed);
    if (best === null || time < best.time) best = { e, time };
  }
  if (best === null) return null;
  const a = surface.triangles[best.e]!;
  const b = surface.triangles[nextOf(best.e)]!;
  const [ux, uy] = [surface.x[b]! - surface.x[a]!, surface.y[b]! - surface.y[a]!];
  const [qx, qy] = [place.x + best.time * direction.x - surface.x[a]!, place.y + best.time * direction.y - surface.y[a]!];
  const share = Math.min(1, Math.max(0, (qx * ux + qy * uy) / (ux * ux + uy * uy)));
  const end = share === 0 ? a : share === 1 ? b : -1;
  return { e: best.e, place: { x: surface.x[a]! + share * ux, y: surface.y[a]! + share * uy }, end };
}

/**
 * From within a triangle straight down to its edge: over it into the next one, along it to its lower end when it is a
 * valley or a wall, or off the ground. Level ground leads to the corner that was flooded first.
 *
 * @returns the way; the last drop is where it goes on
 */
export function stepFromFace(surface: Ground, drainage: Drainage, drop: Drop & { readonly at: 'face' }): Drop[] {
  const exit = exitOf(surface, drop.face, drop.place);
  if (exit === null) return [atVertex(surface, lowestCorner(surface, drainage, drop.face))];
  if (exit.end >= 0) return [atVertex(surface, exit.end)];
  const twin = surface.twins[exit.e]!;
  if (twin === OPEN_EDGE) return [{ at: 'off', place: exit.place }];
  const next = Math.floor(twin / 3);
  if (twin >= 0 && outward(surface, exit.e, downhill(surface, next)) > 0) return [{ at: 'face', face: next, place: exit.place }];
  return [{ at: 'face', face: drop.face, place: exit.place }, atVertex(surface, lowerEnd(surface, drainage, exit.e))];
}

/** The steepest way down from a vertex: along an edge, or straight into a triangle. */
export function stepFromVertex(surface: Ground, drainage: Drainage, vertex: number): Drop | null {
  const along = drainage.flood.down[vertex]!;
  if (along < 0) return null;
  let steepest = (surface.level[vertex]! - surface.level[along]!) / distanceBetween(surface, vertex, along);
  let into = -1;
  for (const e of facesAround(surface, drainage, vertex)) {
    const direction = downhill(surface, Math.floor(e / 3));
    const inside = outward(surface, e, direction) < 0 && outward(surface, previousOf(e), direction) < 0;
    const slope = Math.sqrt(direction.x * direction.x + direction.y * direction.y);
    if (!inside || slope <= steepest) continue;
    steepest = slope;
    into = e;
  }
  return into < 0 ? atVertex(surface, along) : { at: 'face', face: Math.floor(into / 3), place: placeOf(surface, vertex) };
}

/** Half-edges that leave a vertex, one for each triangle around it. */
function facesAround(surface: Ground, drainage: Drainage, vertex: number): number[] {
  const first = drainage.neighbors.leaving[vertex]!;
  const found: number[] = [];
  let e = first;
  do {
    found.push(e);
    e = surface.twins[previousOf(e)]!;
  } while (e >= 0 && e !== first);
  if (e < 0) {
    for (let back = surface.twins[first]!; back >= 0; back = surface.twins[nextOf(back)]!) found.push(nextOf(back));
  }
  return found;
}
