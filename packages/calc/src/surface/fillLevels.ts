import { nextOf } from './surface.ts';

/** Vertices of a cut mesh, some without a level. */
interface Unfilled { readonly x: readonly number[]; readonly y: readonly number[]; readonly triangles: readonly number[]; readonly twins: readonly number[]; readonly level: readonly (number | null)[] }

/** Known levels next to a vertex: their weighted sum, and between which they lie. */
interface Known { weight: number; total: number; low: number; high: number }

function knownNextTo(surface: Unfilled, level: readonly (number | null)[]): Map<number, Known> {
  const { x, y, triangles, twins } = surface;
  const found = new Map<number, Known>();
  const add = (to: number, from: number): void => {
    const known = level[from] ?? null;
    if (known === null || level[to] !== null) return;
    const before = found.get(to) ?? { weight: 0, total: 0, low: known, high: known };
    const weight = 1 / ((x[to]! - x[from]!) * (x[to]! - x[from]!) + (y[to]! - y[from]!) * (y[to]! - y[from]!));
    found.set(to, { weight: before.weight + weight, total: before.total + weight * known, low: Math.min(before.low, known), high: Math.max(before.high, known) });
  };
  triangles.forEach((a, e) => {
    const b = triangles[nextOf(e)]!;
    add(b, a);
    if (twins[e]! < 0) add(a, b); // else the half-edge on the other side does
  });
  return found;
}

/**
 * Levels of the vertices of walls and boundary that have none [m]: the mean of the known vertices next to them on
 * their own side, by the inverse square of the distance, working outwards from the known ones. A mean makes no new low
 * spot, and no level is carried across a wall.
 *
 * Source: inverse distance weighting (Shepard 1968, from memory); one side at a time is ours
 */
export function fillLevels(surface: Unfilled): number[] {
  const level = [...surface.level];
  for (;;) {
    const found = knownNextTo(surface, level);
    if (found.size === 0) break;
    for (const [vertex, { weight, total, low, high }] of found) level[vertex] = Math.min(Math.max(total / weight, low), high);
  }
  return level.map((value) => value ?? 0);
}
