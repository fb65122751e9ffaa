import { OPEN_EDGE, nextOf } from './surface.ts';
import type { Ground } from './surface.ts';

/** How the vertices of a surface hang together. */
export interface Neighbors {
  /** Vertices joined to each vertex by an edge. */
  readonly of: readonly (readonly number[])[];
  /** 1 for a vertex on the open edge of the ground. */
  readonly open: Uint8Array;
  /** One half-edge that leaves each vertex. */
  readonly leaving: Int32Array;
}

export function neighborsOf(surface: Ground): Neighbors {
  const { triangles, twins } = surface;
  const of: number[][] = surface.x.map(() => []);
  const open = new Uint8Array(of.length);
  const leaving = new Int32Array(of.length).fill(-1);
  triangles.forEach((a, e) => {
    const b = triangles[nextOf(e)]!;
    of[a]!.push(b);
    leaving[a] = e;
    if (twins[e]! >= 0) return;
    of[b]!.push(a);
    if (twins[e] !== OPEN_EDGE) return;
    open[a] = 1;
    open[b] = 1;
  });
  return { of, open, leaving };
}

export function distanceBetween(surface: Ground, a: number, b: number): number {
  const dx = surface.x[a]! - surface.x[b]!;
  const dy = surface.y[a]! - surface.y[b]!;
  return Math.sqrt(dx * dx + dy * dy);
}

/** Of some neighbors the one with the steepest way down; on level ground the earliest in the order of flooding; -1 for none. */
export function steepestOf(surface: Ground, rank: Int32Array, from: number, candidates: readonly number[]): number {
  let best = -1;
  let steepest = -1;
  for (const to of candidates) {
    if (rank[to]! >= rank[from]!) continue;
    const slope = (surface.level[from]! - surface.level[to]!) / distanceBetween(surface, from, to);
    if (slope < steepest || (slope === steepest && rank[to]! > rank[best]!)) continue;
    best = to;
    steepest = slope;
  }
  return best;
}
