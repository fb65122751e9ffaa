import { nextOf } from './surface.ts';
import type { Position, Ground } from './surface.ts';

/**
 * Places on the shore of a level: a vertex below it has its own number, a crossing of an edge the number of vertices
 * plus that of its half-edge (the smaller of the two).
 */
export type ShoreKey = number;

export const isBelow = (surface: Ground, vertex: number, level: number): boolean => surface.level[vertex]! < level;

export function crossingKey(surface: Ground, e: number): ShoreKey {
  const twin = surface.twins[e]!;
  return surface.x.length + (twin >= 0 && twin < e ? twin : e);
}

/** Where a level crosses an edge, or the vertex itself. */
export function shorePlace(surface: Ground, key: ShoreKey, level: number): Position {
  const { x, y, triangles } = surface;
  const count = x.length;
  if (key < count) return { x: x[key]!, y: y[key]! };
  const e = key - count;
  const a = triangles[e]!;
  const b = triangles[nextOf(e)]!;
  const share = (level - surface.level[a]!) / (surface.level[b]! - surface.level[a]!);
  return { x: x[a]! + share * (x[b]! - x[a]!), y: y[a]! + share * (y[b]! - y[a]!) };
}

/** The shore across a triangle, with the water on its left: where it comes in over the ground and where it goes out; null for none. */
export function shoreAcross(surface: Ground, face: number, level: number): { readonly from: ShoreKey; readonly to: ShoreKey } | null {
  let from = -1;
  let to = -1;
  for (let e = 3 * face; e < 3 * face + 3; e += 1) {
    const a = isBelow(surface, surface.triangles[e]!, level);
    const b = isBelow(surface, surface.triangles[nextOf(e)]!, level);
    if (a && !b) from = crossingKey(surface, e);
    if (!a && b) to = crossingKey(surface, e);
  }
  return from < 0 ? null : { from, to };
}

/** The places of a chain of keys, without those that fall on the one before. */
export function placesOf(surface: Ground, keys: readonly ShoreKey[], level: number, closed: boolean): Position[] {
  const places: Position[] = [];
  for (const key of keys) {
    const place = shorePlace(surface, key, level);
    const last = places[places.length - 1];
    if (last === undefined || last.x !== place.x || last.y !== place.y) places.push(place);
  }
  const first = places[0];
  const last = places[places.length - 1];
  if (closed && places.length > 1 && first!.x === last!.x && first!.y === last!.y) places.pop();
  return places;
}

/** Follows links from a key until the chain ends or comes back; takes what it walks over out of the map. */
export function chainFrom(links: Map<ShoreKey, ShoreKey>, start: ShoreKey): { readonly keys: ShoreKey[]; readonly closed: boolean } {
  const keys = [start];
  for (let key = start; ; ) {
    const next = links.get(key);
    if (next === undefined) return { keys, closed: false };
    links.delete(key);
    if (next === start) return { keys, closed: true };
    keys.push(next);
    key = next;
  }
}
