import { incircle } from 'robust-predicates';
import { CalcProblem } from '../common/problem.ts';
import { sweep } from './sweep.ts';
import { nextOf, previousOf } from './surface.ts';

/** A triangulation that is still being changed. */
export interface Mesh {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly triangles: Int32Array;
  readonly twins: Int32Array;
  /** Lines along a half-edge, bits; an edge with one is never flipped. */
  readonly lines: Uint8Array;
  /** One half-edge that leaves each vertex. */
  readonly leaving: Int32Array;
}

/** Flips the edge that two triangles share. */
export function flip(mesh: Mesh, a: number): void {
  const { triangles, twins, lines, leaving } = mesh;
  const b = twins[a]!;
  const ar = previousOf(a);
  const bl = previousOf(b);
  const left = triangles[ar]!;
  const right = triangles[bl]!;
  const outerA = twins[bl]!;
  const outerB = twins[ar]!;
  triangles[a] = right;
  triangles[b] = left;
  twins[a] = outerA;
  if (outerA >= 0) twins[outerA] = a;
  twins[b] = outerB;
  if (outerB >= 0) twins[outerB] = b;
  twins[ar] = bl;
  twins[bl] = ar;
  lines[a] = lines[bl]!;
  lines[b] = lines[ar]!;
  lines[ar] = 0;
  lines[bl] = 0;
  for (const e of [a, nextOf(a), ar, b, nextOf(b), bl]) leaving[triangles[e]!] = e;
}

/** Half-edges that leave a vertex. */
export function star(mesh: Mesh, vertex: number): number[] {
  const first = mesh.leaving[vertex]!;
  const found: number[] = [];
  let e = first;
  do {
    found.push(e);
    e = mesh.twins[previousOf(e)]!;
  } while (e >= 0 && e !== first);
  if (e < 0) {
    for (let back = mesh.twins[first]!; back >= 0; back = mesh.twins[nextOf(back)]!) found.push(nextOf(back));
  }
  return found;
}

/** Whether the far corner of the neighbor lies within the circle through the three corners of a triangle. */
function breaksCircle(mesh: Mesh, e: number): boolean {
  const { x, y, triangles, twins } = mesh;
  const a = triangles[e]!;
  const b = triangles[nextOf(e)]!;
  const c = triangles[previousOf(e)]!;
  const d = triangles[previousOf(twins[e]!)]!;
  return incircle(x[a]!, y[a]!, x[b]!, y[b]!, x[c]!, y[c]!, x[d]!, y[d]!) > 0;
}

/**
 * Flips edges until every edge that is no line has the empty-circle property (Lawson 1977).
 * The predicates are exact, so it ends.
 */
export function makeDelaunay(mesh: Mesh, start: Iterable<number>): void {
  const waiting = [...start];
  for (let e = waiting.pop(); e !== undefined; e = waiting.pop()) {
    const twin = mesh.twins[e]!;
    if (twin < 0 || mesh.lines[e] !== 0 || !breaksCircle(mesh, e)) continue;
    flip(mesh, e);
    waiting.push(e, nextOf(e), twin, nextOf(twin));
  }
}

/**
 * Delaunay triangulation of places that are all different and not all in one line.
 *
 * @param x, y places [m]
 * Errors: surface.inLine
 * Source: any triangulation and flips to the empty circle (Lawson 1977, from memory); the signs of all tests are
 * exact by the library robust-predicates (Shewchuk 1997)
 */
export function delaunayMesh(x: readonly number[], y: readonly number[]): Mesh {
  const { triangles, twins } = sweep(x, y);
  if (triangles.length === 0) throw new CalcProblem('surface.inLine', 'points', { count: x.length });
  const leaving = new Int32Array(x.length).fill(-1);
  triangles.forEach((vertex, e) => { leaving[vertex] = e; });
  const mesh: Mesh = { x, y, triangles: Int32Array.from(triangles), twins: Int32Array.from(twins), lines: new Uint8Array(triangles.length), leaving };
  makeDelaunay(mesh, mesh.twins.keys());
  return mesh;
}
