import { incircle } from 'robust-predicates';
import { nextOf, previousOf } from './surface.ts';

/** A triangulation that is still being changed. */
export interface Mesh {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly triangles: Int32Array;
  readonly twins: Int32Array;
  /** Lines along a half-edge, bits; an edge with one is never flipped. */
  readonly lines: Uint8Array;
  /** One half-edge that leaves each vertex; for a vertex on the hull the one along the hull. */
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
  const [top, bottom] = [triangles[nextOf(a)]!, triangles[nextOf(b)]!];
  if (leaving[bottom] === a) leaving[bottom] = nextOf(b);
  if (leaving[top] === b) leaving[top] = nextOf(a);
  if (leaving[right] === bl) leaving[right] = a;
  if (leaving[left] === ar) leaving[left] = b;
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
