import { CalcProblem } from '../common/problem.ts';
import { flip, makeDelaunay, star } from './mesh.ts';
import type { Mesh } from './mesh.ts';
import { nextOf, previousOf } from './surface.ts';
import { turn } from './turn.ts';

function mark(mesh: Mesh, e: number, kind: number): void {
  mesh.lines[e] = mesh.lines[e]! | kind;
  const twin = mesh.twins[e]!;
  if (twin >= 0) mesh.lines[twin] = mesh.lines[twin]! | kind;
}

/** The half-edge from a to b, or from b to a on the hull. */
function edgeBetween(mesh: Mesh, a: number, b: number): number {
  for (const e of star(mesh, a)) {
    if (mesh.triangles[nextOf(e)] === b) return e;
    if (mesh.triangles[previousOf(e)] === b) return previousOf(e);
  }
  throw new CalcProblem('surface.notTriangulated', '', { x: mesh.x[a]!, y: mesh.y[a]! });
}

const ahead = (mesh: Mesh, a: number, b: number, c: number): boolean =>
  (mesh.x[b]! - mesh.x[a]!) * (mesh.x[c]! - mesh.x[a]!) + (mesh.y[b]! - mesh.y[a]!) * (mesh.y[c]! - mesh.y[a]!) > 0;

/** Where the way from a to b leaves the triangles around a: across the half-edge opposite to a, or through a vertex, b itself among them. */
function firstCrossing(mesh: Mesh, a: number, b: number): { readonly edge: number } | { readonly vertex: number } {
  for (const e of star(mesh, a)) {
    const opposite = nextOf(e);
    const p = mesh.triangles[opposite]!;
    const q = mesh.triangles[nextOf(opposite)]!;
    const sideP = turn(mesh, a, b, p);
    const sideQ = turn(mesh, a, b, q);
    if (sideP === 0 && ahead(mesh, a, b, p)) return { vertex: p };
    if (sideQ === 0 && ahead(mesh, a, b, q)) return { vertex: q };
    if (sideP < 0 && sideQ > 0) return { edge: opposite };
  }
  throw new CalcProblem('surface.notTriangulated', '', { x: mesh.x[a]!, y: mesh.y[a]! });
}

/** The edges between a and the first vertex on the way to b, as pairs of vertices, and that vertex. */
function crossedEdges(mesh: Mesh, a: number, b: number, first: number): { readonly pairs: [number, number][]; readonly end: number } {
  const pairs: [number, number][] = [];
  for (let e = first; ; ) {
    if (mesh.lines[e] !== 0) throw new CalcProblem('surface.linesCross', '', { x: mesh.x[mesh.triangles[e]!]!, y: mesh.y[mesh.triangles[e]!]! });
    pairs.push([mesh.triangles[e]!, mesh.triangles[nextOf(e)]!]);
    const twin = mesh.twins[e]!;
    if (twin < 0) throw new CalcProblem('surface.notTriangulated', '', { x: mesh.x[b]!, y: mesh.y[b]! });
    const corner = mesh.triangles[previousOf(twin)]!;
    const side = turn(mesh, a, b, corner);
    if (side === 0) return { pairs, end: corner };
    e = side > 0 ? nextOf(twin) : previousOf(twin);
  }
}

/** Whether the ends of an edge lie on both sides of the way between the corners beside it (p left of the way to the left one), so that its flip leaves two triangles. */
function canFlip(mesh: Mesh, e: number): boolean {
  const twin = mesh.twins[e]!;
  const p = mesh.triangles[e]!;
  const q = mesh.triangles[nextOf(e)]!;
  const left = mesh.triangles[previousOf(e)]!;
  const right = mesh.triangles[previousOf(twin)]!;
  const sideP = turn(mesh, right, left, p);
  const sideQ = turn(mesh, right, left, q);
  return sideP > 0 && sideQ < 0;
}

/** Flips the crossed edges away until the edge from a to end stands. */
function clearWay(mesh: Mesh, a: number, end: number, pairs: [number, number][]): number[] {
  const changed: number[] = [];
  const waiting = pairs;
  for (let head = 0; head < waiting.length; head += 1) {
    const [p, q] = waiting[head]!;
    const e = edgeBetween(mesh, p, q);
    if (!canFlip(mesh, e)) {
      waiting.push([p, q]);
      continue;
    }
    const u = mesh.triangles[previousOf(e)]!;
    const v = mesh.triangles[previousOf(mesh.twins[e]!)]!;
    const twin = mesh.twins[e]!;
    flip(mesh, e);
    changed.push(e, nextOf(e), previousOf(e), twin, nextOf(twin), previousOf(twin));
    const crosses = u !== a && u !== end && v !== a && v !== end && turn(mesh, a, end, u) > 0 !== turn(mesh, a, end, v) > 0;
    if (crosses) waiting.push([u, v]);
  }
  return changed;
}

/**
 * Makes the straight way between two vertices an edge (or a chain of edges, where vertices lie on it) and keeps it.
 *
 * @param mesh changed in place; stays Delaunay except across lines
 * @param kind bit of the line
 * Errors: surface.linesCross when it would cross a line that already stands
 * Source: Sloan 1993, A fast algorithm for generating constrained Delaunay triangulations, Computers and Structures 47 (from memory)
 */
export function constrain(mesh: Mesh, from: number, to: number, kind: number): void {
  for (let a = from; a !== to; ) {
    const first = firstCrossing(mesh, a, to);
    if ('vertex' in first) {
      mark(mesh, edgeBetween(mesh, a, first.vertex), kind);
      a = first.vertex;
      continue;
    }
    const { pairs, end } = crossedEdges(mesh, a, to, first.edge);
    const changed = clearWay(mesh, a, end, pairs);
    mark(mesh, edgeBetween(mesh, a, end), kind);
    makeDelaunay(mesh, changed);
    a = end;
  }
}
