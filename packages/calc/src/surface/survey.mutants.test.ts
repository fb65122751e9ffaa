import { describe, expect, it, vi } from 'vitest';
import { expectProblems } from '../testing/expectProblems.ts';
import { checkSpread, checkSurfaceInput } from './checkInput.ts';
import { fillLevels } from './fillLevels.ts';
import { addPlace, noPlaces, placeAt } from './places.ts';
import type { Places } from './places.ts';
import { cutSegments, firstAbove, footOf } from './segments.ts';
import type { Segment } from './segments.ts';
import { BREAKLINE, WALL } from './surface.ts';
import type { SurfaceInput, SurveyPoint } from './surface.ts';
import { triangulateSurvey } from './survey.ts';
import { addWallFeet } from './wallFeet.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 60_000 });

const point = (x: number, y: number, level = 0): SurveyPoint => ({ id: `${x} ${y}`, x, y, level });
const three = [point(0, 0), point(1, 0), point(0, 1)];
const many = (count: number): SurveyPoint[] => Array.from({ length: count }, (_, i) => point(i, 0));
const unlevelled = { x: 2, y: 2 } as unknown as { x: number; y: number; level: number };

/** Places in the order given; a level that is left out is not measured. */
function placesOf(rows: readonly (readonly [x: number, y: number, level?: number])[]): Places {
  const places = noPlaces();
  rows.forEach(([x, y, level]) => { addPlace(places, x, y, level ?? null, 'here'); });
  return places;
}
const line = (a: number, b: number, kind: number = WALL): Segment => ({ a, b, kind, path: `${a}-${b}` });
const added = (places: Places, from: number) => places.x.slice(from).map((x, i) => [x, places.y[from + i]]);

describe('a survey that is no survey', () => {
  const check = (input: Partial<SurfaceInput>) => () => { checkSurfaceInput({ points: three, ...input }); };
  it('is refused at the place that is wrong', () => {
    expectProblems([
      [check({ points: [point(0, NaN)] }), 'surface.notFinite at points/0/y'],
      [check({ points: [{ ...unlevelled, id: 'P' }] }), 'surface.notFinite at points/0/level'],
      [check({ points: [point(-2e7, 0)] }), 'surface.tooFar at points/0/x'],
      [check({ points: [point(10_000_001, 0)] }), 'surface.tooFar at points/0/x'],
      [check({ breaklines: [{ id: 'B', points: [point(0, 0)] }] }), 'surface.lineTooShort at breaklines/0/points'],
      [check({ breaklines: [{ id: 'B', points: [point(0, 0), unlevelled] }] }), 'surface.notFinite at breaklines/0/points/1/level'],
      [check({ walls: [{ id: 'W', points: [{ x: 0, y: 0 }, { x: 1, y: 0, level: NaN }] }] }), 'surface.notFinite at walls/0/points/1/level'],
      [check({ boundary: [{ x: 0, y: 0 }, { x: 9, y: 0 }] }), 'surface.lineTooShort at boundary'],
      [check({ boundary: [{ x: 0, y: 0 }, { x: 9, y: 0 }, { x: 0, y: Infinity }] }), 'surface.notFinite at boundary/2/y'],
      [check({ points: many(4998), boundary: three }), 'surface.tooMany at points'],
      [check({ points: many(4999), breaklines: [{ id: 'B', points: [point(0, 0), point(1, 1)] }] }), 'surface.tooMany at points'],
    ]);
  });

  it('what is at the limits is taken', () => {
    for (const input of [
      { points: [point(1e7, -1e7, 1e7)] }, { points: many(5000) }, { points: many(4997), boundary: three }, { walls: [{ id: 'W', points: [{ x: 0, y: 0 }, { x: 1, y: 0 }] }] },
      { points: many(4998), breaklines: [{ id: 'B', points: [point(0, 0), point(1, 1)] }] },
    ]) expect(check(input)).not.toThrow();
  });

  it('needs three places that are more than 0.1 mm out of line', () => {
    const spread = (rows: readonly (readonly [number, number])[]) => () => { checkSpread(rows.map(([x]) => x), rows.map(([, y]) => y), rows.map((_, i) => i)); };
    // In line; 0.05 mm off a line of 10 m; 0.09 mm off at 1 m of 100 m; just 0.1 mm off.
    for (const rows of [[[3, 7], [13, 27], [8, 17]], [[0, 0], [10, 0], [5, 5e-5]], [[0, 0], [100, 0], [1, 9e-5]], [[0, 0], [1, 0], [0.5, 1e-4]]] as const) {
      expect(spread(rows)).toThrow('surface.inLine at points');
    }
    expect(spread([[0, 0], [1, 0], [0.5, 1.05e-4]])).not.toThrow();
    expect(spread([[1000, 1000], [1001, 1000], [1000.5, 1000.00011]])).not.toThrow();
    expect(spread([[0, 0], [1, 0]])).toThrow('surface.tooFewPoints at points');
  });

  it('only problems are given the path of the site', () => {
    expect(() => triangulateSurvey({ spotLevels: [], breaklines: null as never, walls: [] })).toThrow(/iterable/);
  });
});

describe('places', () => {
  it('are found across the squares that they are kept in, on every side', () => {
    for (const [dx, dy] of [[1, 0], [-1, 0], [0, 1], [0, -1], [1, 1], [-1, -1]] as const) {
      const places = placesOf([[5 + dx * 1e-5, -3 + dy * 1e-5]]);
      expect(placeAt(places, 5 - dx * 1e-5, -3 - dy * 1e-5, 1e-4)).toBe(0);
    }
  });

  it('the nearest within reach, the earliest of two as near, none beyond it', () => {
    const places = placesOf([[0, 0], [0.5, 0], [0.25, 0.25]]);
    expect(placeAt(places, 0.25, 0, 0.5)).toBe(0);
    expect(placeAt(places, 0.375, 0, 0.5)).toBe(1);
    expect(placeAt(places, 0.125, 0, 0.5)).toBe(0);
    expect(placeAt(places, 0.25, 0.25, 0.5)).toBe(2);
    expect(placeAt(places, 0, -0.5, 0.5)).toBe(0);
    expect(placeAt(places, 0, -0.51, 0.5)).toBe(-1);
    const later = placesOf([[9, 9], [0, 0], [0.5, 0], [0.25, 0.25]]);
    expect([placeAt(later, 0.25, 0, 0.25), placeAt(later, 0.25, 0.5, 0.5)]).toEqual([1, 3]);
  });

  it('are one place within 0.1 mm, with the first level that was measured there', () => {
    const places = placesOf([[0, 0], [0.3, 0.3], [0.7, 0.7]]);
    expect(addPlace(places, 0.00009, 0, 2, 'p')).toBe(0);
    expect(addPlace(places, 0, 0, 2 + 5e-7, 'p')).toBe(0);
    expect(addPlace(places, 0.3, 0.3, null, 'p')).toBe(1);
    expect(addPlace(places, 0.00011, 0, 5, 'p')).toBe(3);
    expect(places.level).toEqual([2, null, null, 5]);
    expect(places.pointId).toEqual([null, null, null, null]);
    const zero = placesOf([[0, 0, 0]]);
    expect(addPlace(zero, 0, 0, 1e-6, 'p')).toBe(0);
    expect(() => addPlace(zero, 0, 0, 1.1e-6, 'p')).toThrow('surface.twoLevels at p');
  });
});

describe('lines cut into pieces', () => {
  it('the foot of a place on a line', () => {
    // 3-4-5: the place lies 5 along and 2 beside the way from (1, 2) to (9, 8).
    const { share, distance } = footOf(placesOf([[1, 2], [9, 8], [1 + 4 - 1.2, 2 + 3 + 1.6]]), line(0, 1), 2);
    expect([share, distance]).toEqual([expect.closeTo(0.5, 14), expect.closeTo(2, 14)]);
  });

  it('the first place not below a value', () => {
    const x = [5, 1, 3, 3, 9];
    const order = [1, 2, 3, 0, 4];
    expect([0, 1, 2, 3, 4, 5, 6, 9, 10].map((value) => firstAbove(x, order, value))).toEqual([0, 0, 1, 1, 3, 3, 4, 4, 5]);
  });

  it('any two lines of a small raster gain the place where they cross, and no other', () => {
    // Against Cramer's rule in whole numbers; an eighth of a meter apart, so that no area is a whole number.
    const corners = [0, 1, 2, 3].flatMap((x) => [0, 1, 2, 3].map((y) => [x, y] as const)).filter(([x, y]) => (x * 5 + y * 3) % 7 < 4);
    const pairs = corners.flatMap((a, i) => corners.slice(i + 1).map((b) => [a, b] as const));
    let crossings = 0;
    for (const [a, b] of pairs) {
      for (const [c, d] of pairs) {
        const base = (b[0] - a[0]) * (d[1] - c[1]) - (b[1] - a[1]) * (d[0] - c[0]);
        const s = ((c[0] - a[0]) * (d[1] - c[1]) - (c[1] - a[1]) * (d[0] - c[0])) / base;
        const t = ((c[0] - a[0]) * (b[1] - a[1]) - (c[1] - a[1]) * (b[0] - a[0])) / base;
        const cross = s > 0 && s < 1 && t > 0 && t < 1;
        const places = noPlaces();
        const [ia, ib, ic, id] = [a, b, c, d].map(([x, y]) => addPlace(places, x / 8, y / 8, null, 'p')) as [number, number, number, number];
        const before = places.x.length;
        cutSegments(places, [line(ia, ib, crossings % 2 === 0 ? BREAKLINE : WALL), line(ic, id)]);
        const found = places.x.length - before;
        if (found !== (cross ? 1 : 0)) expect([a, b, c, d, found]).toEqual([a, b, c, d, cross ? 1 : 0]);
        if (!cross) continue;
        crossings += 1;
        const gap = Math.abs(places.x[before]! - (a[0] + s * (b[0] - a[0])) / 8) + Math.abs(places.y[before]! - (a[1] + s * (b[1] - a[1])) / 8);
        if (!(gap < 1e-15)) expect([a, b, c, d, gap]).toEqual([a, b, c, d, 0]);
      }
    }
    expect(crossings).toBeGreaterThan(100);
  });

  it('two breaklines may begin at one place', () => {
    expect(cutSegments(placesOf([[0, 0, 1], [1, 0, 1], [0, 1, 1]]), [line(0, 1, BREAKLINE), line(0, 2, BREAKLINE)])).toHaveLength(2);
    expect(() => cutSegments(placesOf([[0, 0, 1], [1, 1, 1], [0, 1, 1], [1, 0, 1]]), [line(0, 1, BREAKLINE), line(2, 3, BREAKLINE)])).toThrow('surface.breaklinesCross at 0-1');
  });

  it('pass through every place within 0.1 mm, and not through one beyond their ends', () => {
    const rows: [number, number][] = [[0, 0], [2, 0], [3, 0], [1, 1e-4], [1.5, 1.1e-4], [-1, 0]];
    for (const turned of [false, true]) {
      const pieces = cutSegments(placesOf(rows.map(([x, y]) => (turned ? [y, x] : [x, y]))), [line(0, 1)]);
      expect(pieces.map(({ a, b, kind }) => [a, b, kind])).toEqual([[0, 3, WALL], [1, 3, WALL]]);
    }
    // Two places on both sides of the line at one share: the earlier first.
    const beside = cutSegments(placesOf([[0, 0], [0, 2], [8e-5, 1], [-8e-5, 1]]), [line(0, 1)]);
    expect(beside.map(({ a, b }) => [a, b])).toEqual([[0, 2], [2, 3], [1, 3]]);
  });

  it('the same piece of two lines is kept once, with both kinds', () => {
    expect(cutSegments(placesOf([[0, 0], [2, 0]]), [line(0, 1), line(1, 0, BREAKLINE)]).map(({ kind }) => kind)).toEqual([WALL + BREAKLINE]);
  });

  it('pieces stay apart among thousands of places', () => {
    // Places on a parabola: no three in line, and ways that do not cross.
    const places = placesOf(Array.from({ length: 1600 }, (_, i) => [i, i * i * 0.01]));
    for (const ways of [[[0, 1300], [1, 50]], [[0, 1501], [1250, 1500]]] as const) {
      expect(cutSegments(places, ways.map(([a, b]) => line(a, b))).map(({ a, b }) => [a, b])).toEqual(ways);
    }
  });

  it('a breakline carries its levels straight from one measured place to the next', () => {
    // 0 at x = 0, 1 at x = 2 by a spot on it, 8 at x = 4; the walls cross at quarters: 0.25, 0.5, 0.75 and 1 + 7/4, 1 + 7/2.
    const places = placesOf([[0, 0, 0], [4, 0, 8], [2, 0, 1], ...[0.5, 1, 1.5, 2.5, 3].flatMap((x): [number, number][] => [[x, -1], [x, 1]])]);
    cutSegments(places, [...[3, 5, 7, 9, 11].map((a) => line(a, a + 1)), line(0, 1, BREAKLINE)]);
    const level = (x: number) => places.level[placeAt(places, x, 0, 1e-4)];
    expect([0.5, 1, 1.5, 2, 2.5, 3].map(level)).toEqual([0.25, 0.5, 0.75, 1, 2.75, 4.5]);
  });

  it('do not make more than 15,000 places', () => {
    const places = noPlaces();
    const walls: Segment[] = [];
    const wall = (ax: number, ay: number, bx: number, by: number) => { walls.push(line(addPlace(places, ax, ay, null, 'p'), addPlace(places, bx, by, null, 'p'))); };
    for (let i = 0; i < 123; i += 1) wall(i + 0.5, -1, i + 0.5, 119);
    for (let j = 0; j < 119; j += 1) wall(-1, j + 0.5, 123, j + 0.5);
    // 123 x 119 crossings and 484 ends are 15,121.
    expect(() => cutSegments(places, walls)).toThrow('surface.tooMany');
  });
});

describe('feet of walls', () => {
  const feet = (rows: readonly (readonly [number, number, number?])[], segments: readonly Segment[]) => {
    const places = placesOf(rows);
    addWallFeet(places, segments);
    return added(places, rows.length).sort((p, q) => p[0]! - q[0]!);
  };
  it('stand opposite to the measured places within a foot of it, at any slant', () => {
    expect(feet([[50, 0, 1], [0, 0], [10, 0], [9.9, 0.2, 1], [5, 0.3048, 1], [0.1, -0.3, 1], [3, 0.306, 1], [10.2, 0.1, 1], [-0.2, 0.1, 1]], [line(1, 2)])).toEqual([[0.1, 0], [5, 0], [9.9, 0]]);
    expect(feet([[0, 0], [0, 10], [0.3048, 5, 1]], [line(0, 1)])).toEqual([[0, 5]]);
    // 3-4-5: a place 0.2 beside the middle (3, 3.5) of the way from (1, 2) to (5, 5).
    expect(feet([[1, 2], [5, 5], [3 - 0.12, 3.5 + 0.16, 1]], [line(0, 1)])).toEqual([[expect.closeTo(3, 12), expect.closeTo(3.5, 12)]]);
    expect(feet([[5, 5], [1, 2], [3 - 0.12, 3.5 + 0.16, 1]], [line(0, 1)])).toHaveLength(1);
  });

  it('not for places without a level, not on other lines, not within 20 mm of another place', () => {
    expect(feet([[0, 0], [10, 0], [4, 0.1]], [line(0, 1)])).toEqual([]);
    expect(feet([[0, 0], [10, 0], [4, 0.1, 1]], [line(0, 1, BREAKLINE)])).toEqual([]);
    expect(feet([[0, 0], [10, 0], [4, 0.1, 1]], [line(0, 1, BREAKLINE + WALL)])).toHaveLength(1);
    expect(feet([[0, 0], [10, 0], [5, 0.1, 1], [5.015, -0.1, 1]], [line(0, 1)])).toHaveLength(1);
    expect(feet([[0, 0], [10, 0], [5, 0.1, 1], [5.021, -0.1, 1]], [line(0, 1)])).toHaveLength(2);
    expect(feet([[5.01, 0.001], [0, 0], [10, 0], [5, 0.1, 1]], [line(1, 2)])).toEqual([]);
  });
});

describe('levels of places that have none', () => {
  it('are means by the inverse square of the distance, every neighbor once', () => {
    // Triangles 0 1 2 and 0 2 3: vertex 0 is next to 1 at 1 m (10), to 2 at 2 m (20) over the inner edge, to 3 at 4 m (40).
    const mesh = { x: [1, 2, 1, 1], y: [3, 3, 5, -1], triangles: [0, 1, 2, 0, 2, 3], twins: [-1, -1, 3, 2, -1, -1] };
    const weights = 1 + 1 / 4 + 1 / 16;
    expect(fillLevels({ ...mesh, level: [null, 10, 20, 40] })[0]).toBeCloseTo((10 + 20 / 4 + 40 / 16) / weights, 12);
    expect(fillLevels({ ...mesh, triangles: [2, 0, 1, 0, 2, 3], twins: [3, -1, -1, 0, -1, -1], level: [null, 10, 20, 40] })[0]).toBeCloseTo((10 + 20 / 4 + 40 / 16) / weights, 12);
    // From known places outwards: 1 and 3 know only 2 at first (and 0 takes nothing from them before).
    expect(fillLevels({ ...mesh, level: [null, null, 7, null] })).toEqual([7, 7, 7, 7]);
    expect(fillLevels({ ...mesh, level: [null, null, null, null] })).toEqual([0, 0, 0, 0]);
    // A hull edge gives its level both ways.
    const one = { x: [0, 1, 0], y: [0, 0, 1], triangles: [0, 1, 2], twins: [-1, -2, -1] };
    expect([0, 1, 2].map((known) => fillLevels({ ...one, level: [0, 1, 2].map((i) => (i === known ? 3 : null)) }))).toEqual([[3, 3, 3], [3, 3, 3], [3, 3, 3]]);
    expect(fillLevels({ ...one, level: [null, 5, 9] })[0]).toBeCloseTo(7, 12);
  });
});
