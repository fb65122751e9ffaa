import { CalcProblem } from '../common/problem.ts';
import { makeDelaunay } from './mesh.ts';
import type { Mesh } from './mesh.ts';
import { turn } from './turn.ts';

interface Growing {
  readonly mesh: Mesh;
  /** Neighbors on the hull, counter-clockwise. */
  readonly after: Int32Array;
  readonly before: Int32Array;
  used: number;
}

/** Adds a triangle; returns its first half-edge. */
function add(growing: Growing, a: number, b: number, c: number): number {
  const e = growing.used;
  growing.mesh.triangles.set([a, b, c], e);
  growing.used += 3;
  return e;
}

function join(mesh: Mesh, one: number, other: number): void {
  mesh.twins[one] = other;
  mesh.twins[other] = one;
}

function linkHull(growing: Growing, v: number, w: number, edge: number): void {
  growing.after[v] = w;
  growing.before[w] = v;
  growing.mesh.leaving[v] = edge;
}

/** Joins a place to every hull edge that it sees, from the latest place outwards both ways. */
function addPlace(growing: Growing, latest: number, place: number): void {
  const { mesh, after, before } = growing;
  const sees = (v: number): boolean => turn(mesh, v, after[v]!, place) < 0;
  let first = latest;
  while (sees(before[first]!)) first = before[first]!;
  const start = growing.used;
  let v = first;
  let into = -1;
  while (sees(v)) {
    const e = add(growing, after[v]!, v, place);
    join(mesh, e, mesh.leaving[v]!);
    if (into >= 0) join(mesh, e + 1, into);
    into = e + 2;
    v = after[v]!;
  }
  linkHull(growing, first, place, start + 1);
  linkHull(growing, place, v, into);
  const edges: number[] = [];
  for (let e = start; e < growing.used; e += 1) edges.push(e);
  makeDelaunay(mesh, edges);
}

/** The first places, which lie in one line, with the first one off that line. */
function startFan(growing: Growing, line: readonly number[], apex: number): void {
  const { mesh } = growing;
  // the apex lies to the right of every piece of the line
  const chain = turn(mesh, line[0]!, line[1]!, apex) > 0 ? [...line].reverse() : line;
  let into = -1;
  chain.forEach((v, k) => {
    const w = chain[k + 1];
    if (w === undefined) return;
    const e = add(growing, w, v, apex);
    if (into >= 0) join(mesh, e + 1, into);
    else linkHull(growing, v, apex, e + 1);
    into = e + 2;
    linkHull(growing, w, v, e);
  });
  linkHull(growing, apex, chain[chain.length - 1]!, into);
}

/**
 * Delaunay triangulation of places that are all different and not all in one line: from left to right each place is
 * joined to the hull before it, and edges are flipped until every circle is empty.
 *
 * @param x, y places [m]
 * Errors: surface.inLine
 * Source: incremental hull and flips, textbook (de Berg et al., Computational Geometry, ch. 1 and 9; from memory); all
 * signs are exact by the library robust-predicates (Shewchuk 1997), so it stands for places however nearly in line
 */
export function delaunayMesh(x: readonly number[], y: readonly number[]): Mesh {
  const order = x.map((_, i) => i).sort((p, q) => x[p]! - x[q]! || y[p]! - y[q]!);
  const most = 6 * x.length;
  const none = (length: number): Int32Array => new Int32Array(length).fill(-1);
  const mesh: Mesh = { x, y, triangles: none(most), twins: none(most), lines: new Uint8Array(most), leaving: none(x.length) };
  const growing: Growing = { mesh, after: none(x.length), before: none(x.length), used: 0 };
  let count = 2;
  while (count < order.length && turn(mesh, order[0]!, order[1]!, order[count]!) === 0) count += 1;
  if (count >= order.length) throw new CalcProblem('surface.inLine', 'points', { count: x.length });
  startFan(growing, order.slice(0, count), order[count]!);
  for (let k = count + 1; k < order.length; k += 1) addPlace(growing, order[k - 1]!, order[k]!);
  const { used } = growing;
  return { ...mesh, triangles: mesh.triangles.subarray(0, used), twins: mesh.twins.subarray(0, used), lines: mesh.lines.subarray(0, used) };
}
