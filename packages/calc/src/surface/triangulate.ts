import { CalcProblem } from '../common/problem.ts';
import { checkSpread, checkSurfaceInput } from './checkInput.ts';
import { constrain } from './constrain.ts';
import { delaunayMesh } from './delaunay.ts';
import { cutVertices, groundFaces, isOpen } from './faces.ts';
import { fillLevels } from './fillLevels.ts';
import type { Mesh } from './mesh.ts';
import { addPlace, noPlaces } from './places.ts';
import type { Places } from './places.ts';
import { cutSegments } from './segments.ts';
import type { Segment } from './segments.ts';
import { BOUNDARY, BREAKLINE, OPEN_EDGE, WALL, WALL_EDGE } from './surface.ts';
import type { Ground, SurfaceInput } from './surface.ts';
import { addWallFeet } from './wallFeet.ts';

function collect(input: SurfaceInput): { readonly places: Places; readonly segments: Segment[] } {
  const places = noPlaces();
  const segments: Segment[] = [];
  const addLine = (points: SurfaceInput['boundary'] & {}, levels: readonly (number | null)[], kind: number, path: string): void => {
    const chain = points.map((point, i) => addPlace(places, point.x, point.y, levels[i] ?? null, `${path}/${i}`));
    chain.forEach((b, i) => {
      const a = chain[i - 1];
      if (a !== undefined && a !== b) segments.push({ a, b, kind, path: `${path}/${i}` });
    });
  };
  input.points.forEach((point, i) => {
    const place = addPlace(places, point.x, point.y, point.level, `points/${i}`);
    places.pointId[place] ??= point.id;
  });
  input.breaklines?.forEach((line, i) => { addLine(line.points, line.points.map((p) => p.level), BREAKLINE, `breaklines/${i}/points`); });
  input.walls?.forEach((line, i) => { addLine(line.points, line.points.map((p) => p.level ?? null), WALL, `walls/${i}/points`); });
  if (input.boundary) addLine([...input.boundary, input.boundary[0]!], [], BOUNDARY, 'boundary');
  return { places, segments };
}

function cutSurface(mesh: Mesh, kept: Uint8Array, places: Places): Ground {
  const { corner, old } = cutVertices(mesh, kept);
  const number = new Int32Array(corner.length).fill(-1);
  let count = 0;
  corner.forEach((vertex, e) => {
    if (vertex < 0) return;
    number[e] = count;
    count += 1;
  });
  const edges = [...corner.keys()].filter((e) => corner[e]! >= 0);
  const triangles = edges.map((e) => corner[e]!);
  const twins = edges.map((e) => {
    if (isOpen(mesh, kept, e)) return number[mesh.twins[e]!]!;
    return (mesh.lines[e]! & WALL) !== 0 ? WALL_EDGE : OPEN_EDGE;
  });
  const x = old.map((i) => places.x[i]!);
  const y = old.map((i) => places.y[i]!);
  const level = fillLevels({ x, y, triangles, twins, level: old.map((i) => places.level[i]!) });
  return { x, y, level, pointId: old.map((i) => places.pointId[i]!), triangles, twins, lines: edges.map((e) => mesh.lines[e]!) };
}

/**
 * The surveyed ground as triangles: Delaunay over all points, with breaklines, walls and boundary as edges.
 *
 * @param input places and levels [m], x to the right, y upwards; lines may touch and cross points and each other
 * Walls: water does not cross them; without levels of its own a wall takes the ground's level on each side, from the
 * spots nearest to it there. A ring of walls with nothing measured inside is a building and no ground.
 * Limits: 5,000 points and line vertices; places within 0.1 mm are one place
 * Errors: surface.tooFewPoints, surface.inLine, surface.twoLevels, surface.breaklinesCross, surface.linesCross,
 * surface.notFinite, surface.tooFar, surface.tooMany, surface.lineTooShort, surface.noGround
 * Source: Delaunay triangulation with constraints (Chew 1989, Sloan 1993; from memory); exact predicates (Shewchuk 1997)
 * Checked against: Euler's formula and the empty circle of every triangle on random surveys
 */
export function triangulateSurface(input: SurfaceInput): Ground {
  checkSurfaceInput(input);
  const { places, segments } = collect(input);
  checkSpread(places.x, places.y, places.level.flatMap((level, i) => (level === null ? [] : [i])));
  addWallFeet(places, segments);
  const pieces = cutSegments(places, segments);
  const mesh = delaunayMesh(places.x, places.y);
  for (const piece of pieces) constrain(mesh, piece.a, piece.b, piece.kind);
  const kept = groundFaces(mesh, places.level, input.boundary !== undefined);
  if (!kept.includes(1)) throw new CalcProblem('surface.noGround', 'boundary', {});
  return cutSurface(mesh, kept, places);
}

/** Signed area in plan of a triangle [m2]. */
export function planArea(surface: Ground, face: number): number {
  const { x, y, triangles } = surface;
  const a = triangles[3 * face]!;
  const b = triangles[3 * face + 1]!;
  const c = triangles[3 * face + 2]!;
  return ((x[b]! - x[a]!) * (y[c]! - y[a]!) - (x[c]! - x[a]!) * (y[b]! - y[a]!)) / 2;
}

