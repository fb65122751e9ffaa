import { incircle } from 'robust-predicates';
import { describe, expect, it, vi } from 'vitest';
import { CalcProblem } from '../common/problem.ts';
import { looks } from '../testing/looks.ts';
import { grid, spots } from '../testing/surveys.ts';
import { constrain } from './constrain.ts';
import { delaunayMesh } from './delaunay.ts';
import { faceAt, levelAt, planeLevel } from './locate.ts';
import type { Mesh } from './mesh.ts';
import { BREAKLINE, OPEN_EDGE, WALL, WALL_EDGE, nextOf, previousOf } from './surface.ts';
import type { Ground, SurfaceInput } from './surface.ts';
import { planArea, triangulateSurface } from './triangulate.ts';
import { turn } from './turn.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 60_000 });

const areaOf = (ground: Ground): number => ground.triangles.reduce((sum, _, e) => (e % 3 === 0 ? sum + planArea(ground, e / 3) : sum), 0);

/** What is wrong with a mesh: turned triangles, halves of edges that do not fit. */
function faults(mesh: Mesh): number {
  let count = 0;
  for (let e = 0; e < mesh.triangles.length; e += 1) {
    const twin = mesh.twins[e]!;
    if (e % 3 === 0 && !(turn(mesh, mesh.triangles[e]!, mesh.triangles[e + 1]!, mesh.triangles[e + 2]!) > 0)) count += 1;
    if (twin >= 0 && (mesh.twins[twin] !== e || mesh.triangles[twin] !== mesh.triangles[nextOf(e)] || mesh.lines[twin] !== mesh.lines[e])) count += 1;
    if (twin < -1) count += 1;
  }
  return count;
}

/** Different places of a lattice, an eighth of a meter apart so that doubled areas are less than one; the same for the same seed. */
function scattered(seed: number, count: number, across: number): { x: number[]; y: number[] } {
  let state = seed;
  const next = (): number => {
    state = (state * 1103515245 + 12345) % 2147483648;
    return Math.floor(state / 65536) % across;
  };
  const found = new Map<string, readonly [number, number]>();
  while (found.size < count) {
    const place = [next(), next()] as const;
    found.set(place.join(), place);
  }
  return { x: [...found.values()].map(([x]) => 10 + x / 8), y: [...found.values()].map(([, y]) => -20 + y / 8) };
}

/** Edges that are no line and whose far corner lies within the circle of their triangle. */
function brokenCircles(mesh: Mesh): number {
  let count = 0;
  for (let e = 0; e < mesh.triangles.length; e += 1) {
    const twin = mesh.twins[e]!;
    if (twin < 0 || mesh.lines[e] !== 0) continue;
    const [a, b, c, d] = [e, nextOf(e), previousOf(e), previousOf(twin)].map((k) => mesh.triangles[k]!) as [number, number, number, number];
    if (incircle(mesh.x[a]!, mesh.y[a]!, mesh.x[b]!, mesh.y[b]!, mesh.x[c]!, mesh.y[c]!, mesh.x[d]!, mesh.y[d]!) > 0) count += 1;
  }
  return count;
}

const copied = (mesh: Mesh): Mesh => ({ ...mesh, triangles: mesh.triangles.slice(), twins: mesh.twins.slice(), lines: mesh.lines.slice(), leaving: mesh.leaving.slice() });
/** Places on the straight way between two, with its ends, in order. */
function onWay({ x, y }: Mesh, from: number, to: number): number[] {
  const along = (i: number): number => (x[i]! - x[from]!) * (x[to]! - x[from]!) + (y[i]! - y[from]!) * (y[to]! - y[from]!);
  const onLine = x.map((_, i) => i).filter((i) => (x[to]! - x[from]!) * (y[i]! - y[from]!) === (y[to]! - y[from]!) * (x[i]! - x[from]!));
  return onLine.filter((i) => along(i) >= 0 && along(i) <= along(to)).sort((p, q) => along(p) - along(q));
}
const pieceKeys = (way: readonly number[]): string[] => way.slice(1).map((b, k) => [Math.min(b, way[k]!), Math.max(b, way[k]!)].join());
/** Edges that are kept, from the lower number to the higher one. */
function keptEdges(mesh: Mesh): Set<string> {
  const found = new Set<string>();
  mesh.lines.forEach((kind, e) => { if (kind !== 0) found.add(pieceKeys([mesh.triangles[e]!, mesh.triangles[nextOf(e)]!])[0]!); });
  return found;
}

describe('a way made to edges', () => {
  /** Each way on a mesh of its own: the mesh is whole, its circles are empty, and what is kept is the way and what was kept before. */
  function tryWays(mesh: Mesh, ways: readonly (readonly [number, number])[], before: readonly (readonly [number, number])[] = []): unknown[] {
    const start = copied(mesh);
    const wrong: unknown[] = [];
    for (const [from, to] of before) constrain(start, from, to, WALL);
    const old = before.flatMap(([from, to]) => pieceKeys(onWay(mesh, from, to)));
    for (const [from, to] of ways) {
      const changed = copied(start);
      const way = onWay(mesh, from, to);
      const crossed = old.some((key) => {
        const [p, q] = key.split(',').map(Number) as [number, number];
        return way.slice(1).some((b, k) => turn(mesh, p, q, b) * turn(mesh, p, q, way[k]!) < 0 && turn(mesh, b, way[k]!, p) * turn(mesh, b, way[k]!, q) < 0);
      });
      let refused = false;
      try {
        constrain(changed, from, to, WALL);
      } catch (error) {
        refused = error instanceof CalcProblem && error.code === 'surface.linesCross';
        if (!refused) throw error;
      }
      if (refused !== crossed) wrong.push([from, to, refused]);
      if (refused) continue;
      const wanted = [...new Set([...old, ...pieceKeys(way)])].sort();
      const found = [...keptEdges(changed)].sort();
      const broken = faults(changed) + brokenCircles(changed);
      if (broken !== 0 || found.join(' ') !== wanted.join(' ')) wrong.push([from, to, broken, found, wanted]);
    }
    return wrong;
  }
  const allPairs = (count: number) => Array.from({ length: count * count }, (_, k) => [Math.floor(k / count), k % count] as const).filter(([a, b]) => a !== b);

  it('between any two places of a raster: through every place on it, and nothing else is kept', () => {
    const at = Array.from({ length: 25 }, (_, k) => [k % 5, Math.floor(k / 5)] as const);
    expect(tryWays(delaunayMesh(at.map(([i]) => 10 + i / 8), at.map(([, j]) => j / 8 - 20)), allPairs(25))).toEqual([]);
  });

  it('between any two of scattered places, with lines that are kept before', () => {
    for (const [seed, count, across] of [[1, 26, 9], [2, 24, 30], [3, 22, 7]] as const) {
      const { x, y } = scattered(seed, count, across);
      const mesh = delaunayMesh(x, y);
      expect(tryWays(mesh, allPairs(count).filter(([a, b]) => (a + 2 * b) % 3 === 0))).toEqual([]);
      expect(tryWays(mesh, allPairs(count).filter(([a, b]) => (a + 2 * b) % 3 === 1), [[0, 1]])).toEqual([]);
    }
  });

  it('over scattered places every circle is empty from the start', () => {
    for (let seed = 1; seed <= 60; seed += 1) {
      const count = 4 + (seed % 9);
      const { x, y } = scattered(seed, count, 6);
      const mesh = delaunayMesh(x, y);
      expect([seed, faults(mesh), brokenCircles(mesh), ...tryWays(mesh, allPairs(count))]).toEqual([seed, 0, 0]);
    }
  });

  it('does not cross a way that is kept', () => {
    const square = delaunayMesh([0, 2, 2, 0], [0, 0, 1, 1]);
    constrain(square, 0, 2, WALL);
    expect(() => { constrain(square, 1, 3, BREAKLINE); }).toThrow('surface.linesCross');
  });

  it('a place on two ways is of both kinds', () => {
    const square = delaunayMesh([0, 2, 2, 0], [0, 0, 1, 1]);
    constrain(square, 0, 2, WALL);
    constrain(square, 2, 0, BREAKLINE);
    expect([...square.lines].filter((kind) => kind !== 0)).toEqual([WALL + BREAKLINE, WALL + BREAKLINE]);
  });

  it('places in one line have no triangles', () => {
    expect(() => delaunayMesh([0, 1, 2, 3], [0, 0, 0, 0])).toThrow('surface.inLine');
  });
});

const corners = (rows: readonly (readonly [number, number])[]) => rows.map(([x, y]) => ({ x, y }));
const ring = (rows: readonly (readonly [number, number, number?])[]) => [{ id: 'W', points: [...rows, rows[0]!].map(([x, y, level]) => ({ x, y, level })) }];
function expectArea(input: SurfaceInput, area: number): void {
  for (const look of looks(input)) expect(areaOf(triangulateSurface(look))).toBeCloseTo(area, 9);
}

describe('what is ground', () => {
  const field = grid(4, 4, 1, (x) => x / 10);
  it('all that lies within the boundary, corners without a level as well', () => {
    // An octagon with short sides: some triangles have three corners of the boundary. Area: 3 x 3 less four corners of 0.5 x 0.5 / 2.
    const octagon = corners([[1, 0.5], [3, 0.5], [3.5, 1], [3.5, 3], [3, 3.5], [1, 3.5], [0.5, 3], [0.5, 1]]);
    expectArea({ points: field, boundary: octagon }, 9 - 0.5);
    // A finer corner; by the shoelace formula its piece has (-0.2 - 0.21 - 0.275 + 0.75)/2 = 0.0325.
    const fine = corners([[1, 0.5], [3, 0.5], [3.5, 1], [3.5, 3], [3, 3.5], [1, 3.5], [0.5, 3], [0.5, 1], [0.6, 0.8], [0.75, 0.65]]);
    expectArea({ points: field, boundary: fine }, 8.5 + 0.0325);
    expectArea({ points: field, boundary: corners([[0, 0], [4, 0], [4, 4], [0, 4]]) }, 16);
    const bare = { points: spots([[0, 0, 1], [4, 0, 1], [4, 3, 1], [0, 3, 1]]), boundary: corners([[1, 1], [2, 1], [2, 2], [1, 2]]) };
    for (const look of looks(bare)) expect(() => triangulateSurface(look)).toThrow('surface.noGround'); // nothing was measured in it
  });

  it('a ring of walls measured only on the walls is a building', () => {
    expectArea({ points: field.filter(({ x, y }) => !(x >= 1 && x <= 3 && y >= 1 && y <= 3)), walls: ring([[0.9, 0.9, 5], [3.1, 0.9, 5], [3.1, 3.1, 5], [0.9, 3.1, 5]]) }, 16 - 2.2 * 2.2);
    for (const look of looks({ points: [], walls: ring([[0, 0, 1], [4, 0, 1], [4, 3, 1], [0, 3, 1]]) })) expect(() => triangulateSurface(look)).toThrow('surface.noGround');
  });

  it('walls that leave a side open enclose nothing', () => {
    // Measured at corners within the wall only; from its end (2, 5) back to its start (-1, 1) the ground is open.
    const open = [{ id: 'W', points: [{ x: -1, y: 1 }, { x: 0, y: 0, level: 1 }, { x: 4, y: 0, level: 1 }, { x: 4, y: 3, level: 1 }, { x: 2, y: 5 }] }];
    const outline = corners([[-1, 1], [0, 0], [4, 0], [4, 3], [2, 5]]);
    // Shoelace: (-1 x 0 - 0 x 1) + 0 + 12 + (20 - 6) + (2 + 5) = 33, half of it.
    expectArea({ points: [], walls: open }, 16.5);
    expectArea({ points: spots([[-5, 6, 2]]), walls: open, boundary: outline }, 16.5);
    expectArea({ points: [], walls: open, boundary: outline }, 16.5);
    for (const look of looks({ points: [], walls: ring([[0, 0, 1], [4, 0, 1], [1, 3, 1]]) })) expect(() => triangulateSurface(look)).toThrow('surface.noGround');
  });

  it('a piece behind a wall with one measured spot is ground, and so is a spike of the boundary between spots', () => {
    expectArea({ points: spots([[0, 0, 1], [4, 0, 1], [4, 4, 1], [0, 4, 1]]), walls: [{ id: 'W', points: [{ x: 0, y: 2 }, { x: 2, y: 0 }] }] }, 16);
    expectArea({ points: field, boundary: corners([[0.5, 0.5], [3.5, 0.5], [3.5, 1.45], [3.9, 1.5], [3.5, 1.55], [3.5, 3.5], [0.5, 3.5]]) }, 9 + 0.02);
  });

  it('within a boundary over scattered spots, all of it', () => {
    for (let seed = 1; seed <= 12; seed += 1) {
      const { x, y } = scattered(seed, 40, 32);
      const points = spots([...x.map((px, i) => [px, y[i]!, 1] as const), [10, -20, 1], [14, -20, 1], [14, -16, 1], [10, -16, 1]]).filter((p, i, all) => all.findIndex((q) => q.x === p.x && q.y === p.y) === i);
      const boundary = corners([[10.3, -19.6], [13.6, -19.5], [13.4, -18], [12.1, -17.9], [13.7, -16.2], [10.2, -16.4]]);
      const twice = boundary.reduce((sum, p, i) => { const q = boundary[(i + 1) % boundary.length]!; return sum + p.x * q.y - q.x * p.y; }, 0);
      expect(areaOf(triangulateSurface({ points, boundary }))).toBeCloseTo(twice / 2, 9);
      expect(areaOf(triangulateSurface({ points, boundary: corners([[10, -20], [14, -20], [14, -16], [10, -16]]) }))).toBeCloseTo(16, 9);
    }
  });

  it('a breakline may run over the boundary', () => {
    const breaklines = [{ id: 'B', points: [{ x: 2.2, y: 0.2, level: 1 }, { x: 2.4, y: 2.2, level: 2 }] }];
    expectArea({ points: field, breaklines, boundary: corners([[0.5, 0.5], [3.5, 0.5], [3.5, 3.5], [0.5, 3.5]]) }, 9);
    const crossing = [{ id: 'A', points: [{ x: 0.2, y: 0.3, level: 1 }, { x: 3.2, y: 3.4, level: 2 }] }, { id: 'B', points: [{ x: 0.4, y: 3.3, level: 1 }, { x: 3.3, y: 0.2, level: 2 }] }];
    expect(() => triangulateSurface({ points: field, breaklines: crossing })).toThrow('surface.breaklinesCross at breaklines/0/points/1');
  });

  it('walls cut, open edges stay open', () => {
    const ground = triangulateSurface({ points: field, walls: [{ id: 'W', points: [{ x: 0, y: 2 }, { x: 4, y: 2 }] }] });
    expect(new Set(ground.twins.filter((twin) => twin < 0))).toEqual(new Set([OPEN_EDGE, WALL_EDGE]));
    expect([OPEN_EDGE, WALL_EDGE]).toEqual([-1, -2]);
    ground.twins.forEach((twin, e) => { if (twin >= 0) expect([ground.twins[twin], ground.triangles[twin]]).toEqual([e, ground.triangles[nextOf(e)]]); });
    expect(ground.twins.filter((twin) => twin === WALL_EDGE)).toHaveLength(8);
    expect(previousOf(0)).toBe(2);
  });

  it('a wall without levels takes nothing from zero', () => {
    const ground = triangulateSurface({ points: grid(2, 2, 1, () => 50), walls: [{ id: 'W', points: [{ x: 0.5, y: 0.4 }, { x: 1.5, y: 0.4, level: 60 }] }] });
    expect(new Set(ground.level)).toEqual(new Set([50, 60, ...ground.level.filter((level) => level > 50 && level < 60)]));
    expect(Math.min(...ground.level)).toBe(50);
  });
});

describe('where a place is', () => {
  const ground = triangulateSurface({ points: spots([[0, 0, 1], [10, 0, 3], [10, 8, 7], [0, 8, 5]]) });
  it('the level of the plane x/5 + y/2 + 1 within and on the edges, null beyond 0.1 mm', () => {
    for (const [x, y] of [[0, 0], [10, 8], [5, 4], [2.5, 2], [1, 7], [9, 1], [0, 3], [10, 3], [5, 0], [5, 8], [0.5, 0.25]] as const) {
      expect(levelAt(ground, { x, y })).toBeCloseTo(1 + x / 5 + y / 2, 12);
    }
    for (const [x, y] of [[5, -5e-5], [5, 8.00005], [-5e-5, 4], [10.00005, 4]] as const) expect(levelAt(ground, { x, y })).toBeCloseTo(1 + x / 5 + y / 2, 3);
    for (const [x, y] of [[5, -2e-4], [5, 8.0002], [-2e-4, 4], [10.0002, 4], [50, 50]] as const) expect(levelAt(ground, { x, y })).toBeNull();
  });

  it('the first triangle on the edge of two', () => {
    expect(ground.triangles).toHaveLength(6);
    expect(faceAt(ground, { x: 5, y: 4 })).toBe(0);
    expect([faceAt(ground, { x: 5, y: -1 }), faceAt(ground, { x: 5, y: -1e-5 }) >= 0]).toEqual([-1, true]);
  });

  it('a level is held between the corners of its triangle', () => {
    expect([planeLevel(ground, 0, { x: -500, y: -500 }), planeLevel(ground, 0, { x: 500, y: 500 })]).toEqual([1, 5]); // corners at 1, 3 and 5
  });
});
