import { expect } from 'vitest';
import type { Ground, Position, SurfaceInput } from '../surface/surface.ts';
import { triangulateSurface } from '../surface/triangulate.ts';
import { spots } from './surveys.ts';

/** A survey turned by quarters and mirrored: eight looks at the same ground. */
export function looks(input: SurfaceInput): SurfaceInput[] {
  const turns: ((x: number, y: number) => [number, number])[] = [
    (x, y) => [x, y], (x, y) => [-y, x], (x, y) => [-x, -y], (x, y) => [y, -x], (x, y) => [-x, y], (x, y) => [x, -y], (x, y) => [y, x], (x, y) => [-y, -x],
  ];
  return turns.map((look) => {
    const moved = <P extends { readonly x: number; readonly y: number }>(points: readonly P[]): P[] => points.map((p) => { const [x, y] = look(p.x, p.y); return { ...p, x, y }; });
    return {
      points: moved(input.points), breaklines: input.breaklines?.map((line) => ({ ...line, points: moved(line.points) })),
      walls: input.walls?.map((line) => ({ ...line, points: moved(line.points) })), boundary: input.boundary ? moved(input.boundary) : undefined,
    };
  });
}

/** Each look at a survey, with the way in which a place of it is turned. */
export function eachLook(input: SurfaceInput, check: (ground: Ground, look: (place: Position) => Position) => void): void {
  const turned = looks(input);
  const frame = looks({ points: spots([[1, 0, 0], [0, 1, 0]]) });
  turned.forEach((look, k) => {
    const [right, up] = frame[k]!.points;
    check(triangulateSurface(look), ({ x, y }) => ({ x: x * right!.x + y * up!.x + 0, y: x * right!.y + y * up!.y + 0 }));
  });
}

/** Number of the vertex at a place. */
export const vertexAt = (ground: Ground, { x, y }: Position): number => ground.x.findIndex((px, i) => Math.abs(px - x) < 1e-12 && Math.abs(ground.y[i]! - y) < 1e-12);

/** A place to a nanometer, for expectations. */
export const near = ({ x, y }: Position) => ({ x: expect.closeTo(x, 9) as number, y: expect.closeTo(y, 9) as number });

/** The same ground with its vertices, triangles and corners counted from others: as many ways as it has triangles. */
export function recounted(ground: Ground): Ground[] {
  const faces = ground.triangles.length / 3;
  const vertices = ground.x.length;
  return Array.from({ length: faces }, (_, first): Ground => {
    const old = (e: number): number => 3 * ((Math.floor(e / 3) + first) % faces) + ((e + first) % 3);
    const count = Array.from(ground.triangles, (_unused, e) => e);
    const place = new Map(count.map((e) => [old(e), e]));
    const vertex = (v: number): number => (v + first) % vertices;
    const from = Array.from({ length: vertices }, () => 0);
    for (let v = 0; v < vertices; v += 1) from[vertex(v)] = v;
    return {
      x: from.map((v) => ground.x[v]!), y: from.map((v) => ground.y[v]!), level: from.map((v) => ground.level[v]!), pointId: from.map((v) => ground.pointId[v]!),
      triangles: count.map((e) => vertex(ground.triangles[old(e)]!)), twins: count.map((e) => { const twin = ground.twins[old(e)]!; return twin < 0 ? twin : place.get(twin)!; }), lines: count.map((e) => ground.lines[old(e)]!),
    };
  });
}
