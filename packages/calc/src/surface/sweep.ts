import type { Surface } from './surface.ts';
import { turn } from './turn.ts';

interface Growing {
  readonly places: Pick<Surface, 'x' | 'y'>;
  readonly triangles: number[];
  readonly twins: number[];
  /** The hull counter-clockwise, and the half-edge that leaves each of its vertices along it. */
  readonly after: Int32Array;
  readonly before: Int32Array;
  readonly edge: Int32Array;
}

function join(growing: Growing, one: number, other: number): void {
  if (one >= 0) growing.twins[one] = other;
  if (other >= 0) growing.twins[other] = one;
}

/** Adds the triangle between a place outside and a hull edge that it sees; returns its first half-edge. */
function addBeyond(growing: Growing, v: number, w: number, place: number): number {
  const e = growing.triangles.length;
  growing.triangles.push(w, v, place);
  growing.twins.push(-1, -1, -1);
  join(growing, e, growing.edge[v]!);
  return e;
}

/** Joins a place to every hull edge that it sees, from the latest place outwards both ways. */
function addPlaceBeyond(growing: Growing, latest: number, place: number): void {
  const { places, after, before, edge } = growing;
  const seen = (v: number): boolean => turn(places, v, after[v]!, place) < 0;
  let first = latest;
  while (seen(before[first]!)) first = before[first]!;
  let leavesFirst = -1;
  let intoLast = -1;
  let v = first;
  while (seen(v)) {
    const e = addBeyond(growing, v, after[v]!, place);
    if (leavesFirst < 0) leavesFirst = e + 1;
    else join(growing, e + 1, intoLast);
    intoLast = e + 2;
    v = after[v]!;
  }
  after[first] = place;
  before[place] = first;
  edge[first] = leavesFirst;
  after[place] = v;
  before[v] = place;
  edge[place] = intoLast;
}

/** The first places, which lie in one line, with the first one off that line. */
function start(growing: Growing, order: readonly number[], count: number): void {
  const { places, after, before, edge } = growing;
  const line = order.slice(0, count);
  const apex = order[count]!;
  if (turn(places, line[0]!, line[1]!, apex) > 0) line.reverse();
  // the apex lies to the right of every piece of the line
  let into = -1;
  line.forEach((v, k) => {
    const w = line[k + 1];
    if (w === undefined) return;
    const e = growing.triangles.length;
    growing.triangles.push(w, v, apex);
    growing.twins.push(-1, -1, -1);
    if (into >= 0) join(growing, e + 1, into);
    else edge[v] = e + 1;
    into = e + 2;
    after[w] = v;
    before[v] = w;
    edge[w] = e;
  });
  const first = line[0]!;
  const last = line[line.length - 1]!;
  after[first] = apex;
  before[apex] = first;
  after[apex] = last;
  before[last] = apex;
  edge[apex] = into;
}

/**
 * Some triangulation of places that are all different and not all in one line, by a sweep from left to right.
 * Signs are exact, so it stands for any places, however nearly in line; long triangles are left to the flips.
 *
 * @returns corners and twins, counter-clockwise with y upwards
 * Source: incremental hull by sorted places, textbook (de Berg et al., Computational Geometry, ch. 1 and 9; from memory)
 */
export function sweep(x: readonly number[], y: readonly number[]): { readonly triangles: readonly number[]; readonly twins: readonly number[] } {
  const places = { x, y };
  const order = x.map((_, i) => i).sort((p, q) => x[p]! - x[q]! || y[p]! - y[q]!);
  const none = (): Int32Array => new Int32Array(x.length).fill(-1);
  const growing: Growing = { places, triangles: [], twins: [], after: none(), before: none(), edge: none() };
  let count = 2;
  while (count < order.length && turn(places, order[0]!, order[1]!, order[count]!) === 0) count += 1;
  if (count >= order.length) return growing;
  start(growing, order, count);
  for (let k = count + 1; k < order.length; k += 1) addPlaceBeyond(growing, order[k - 1]!, order[k]!);
  return growing;
}
