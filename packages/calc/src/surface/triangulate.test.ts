import fc from 'fast-check';
import { incircle } from 'robust-predicates';
import { describe, expect, test, vi } from 'vitest';
import { anyPoints, anySurvey, grid, spots } from '../testing/surveys.ts';
import { BREAKLINE, OPEN_EDGE, WALL_EDGE, nextOf, previousOf } from './surface.ts';
import type { Ground, SurfaceInput } from './surface.ts';
import { planArea, triangulateSurface } from './triangulate.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 240_000 });

const faces = (surface: Ground): number[] => Array.from({ length: surface.triangles.length / 3 }, (_, i) => i);
const areaOf = (surface: Ground): number => faces(surface).reduce((sum, face) => sum + planArea(surface, face), 0);
const levelsAt = (surface: Ground, x: number, y: number): number[] => surface.level.filter((_, i) => surface.x[i] === x && surface.y[i] === y).sort((a, b) => a - b);

/** Corners of the triangles on both sides of every inner edge that is no line, near one first. */
function brokenCircles(surface: Ground): number {
  const { x, y, triangles, twins, lines } = surface;
  return twins.filter((twin, e) => {
    if (twin < 0 || lines[e] !== 0) return false;
    const [a, b, c, d] = [e, nextOf(e), previousOf(e), previousOf(twin)].map((k) => triangles[k]!) as [number, number, number, number];
    return incircle(x[a]!, y[a]!, x[b]!, y[b]!, x[c]!, y[c]!, x[d]!, y[d]!) > 0;
  }).length;
}

function euler(surface: Ground): number {
  const edges = surface.twins.reduce((sum, twin) => sum + (twin >= 0 ? 0.5 : 1), 0);
  return surface.x.length - edges + surface.triangles.length / 3;
}

/** Area of the convex hull of points by gift wrapping and the shoelace formula, written apart from the triangulation. */
function hullArea(points: readonly { x: number; y: number }[]): number {
  const start = points.reduce((best, p) => (p.x < best.x || (p.x === best.x && p.y < best.y) ? p : best));
  const hull = [start];
  for (;;) {
    const last = hull[hull.length - 1]!;
    const next = points.reduce((best, p) => {
      const cross = (best.x - last.x) * (p.y - last.y) - (best.y - last.y) * (p.x - last.x);
      const further = (p.x - last.x) * (p.x - last.x) + (p.y - last.y) * (p.y - last.y) > (best.x - last.x) * (best.x - last.x) + (best.y - last.y) * (best.y - last.y);
      return best === last || cross < 0 || (cross === 0 && further) ? p : best;
    }, last);
    if (next === start) break;
    hull.push(next);
  }
  return hull.reduce((sum, p, i) => sum + (p.x * hull[(i + 1) % hull.length]!.y - hull[(i + 1) % hull.length]!.x * p.y) / 2, 0);
}

function expectWhole(surface: Ground): void {
  surface.twins.forEach((twin, e) => {
    if (twin < 0) {
      expect([OPEN_EDGE, WALL_EDGE]).toContain(twin);
      return;
    }
    expect(surface.twins[twin]).toBe(e);
    expect(surface.triangles[twin]).toBe(surface.triangles[nextOf(e)]);
  });
  for (const face of faces(surface)) expect(planArea(surface, face)).toBeGreaterThan(0);
  expect(surface.level.every((level) => Number.isFinite(level))).toBe(true);
}

describe('triangles over points', () => {
  test('a square of four spots: two triangles, five edges', () => {
    const surface = triangulateSurface({ points: spots([[0, 0, 1], [4, 0, 2], [4, 3, 3], [0, 3, 4]]) });
    expect(surface.triangles).toHaveLength(6);
    expect(euler(surface)).toBe(1);
    expect(areaOf(surface)).toBe(12);
    expect(surface.pointId.map(String).sort()).toEqual(['S1', 'S2', 'S3', 'S4']);
  });

  test('any spots: whole mesh, empty circles, Euler V - E + F = 1, area of the hull', () => {
    fc.assert(fc.property(anyPoints, (points) => {
      const surface = triangulateSurface({ points });
      expectWhole(surface);
      expect(brokenCircles(surface)).toBe(0);
      expect(surface.x).toHaveLength(points.length);
      expect(euler(surface)).toBe(1);
      expect(areaOf(surface)).toBeCloseTo(hullArea(points), 9);
    }), { numRuns: 100 });
  });

  test('spots nearly in line, far from the origin, still make a whole mesh', () => {
    const points = Array.from({ length: 80 }, (_, i) => ({ id: `S${i}`, x: 6e5 + i * 0.31, y: 4e6 + i * 0.31 * 0.37 + (i % 2) * 2e-4, level: i % 7 }));
    points.push({ id: 'off', x: 6e5 + 10, y: 4e6 + 20, level: 3 });
    const surface = triangulateSurface({ points });
    expect(brokenCircles(surface)).toBe(0);
    expect(euler(surface)).toBe(1);
  });

  test('the order of the spots does not change where the triangles stand on general ground', () => {
    const points = spots([[0, 0, 1], [5.1, 0.3, 2], [4.2, 3.7, 3], [0.4, 3.2, 4], [2.1, 1.7, 0], [1.3, 2.9, 2]]);
    const edges = (surface: Ground): string[] => surface.triangles.map((a, e) => [surface.pointId[a], surface.pointId[surface.triangles[nextOf(e)]!]].map(String).sort().join('-')).sort();
    expect(edges(triangulateSurface({ points: [...points].reverse() }))).toEqual(edges(triangulateSurface({ points })));
  });
});

describe('lines', () => {
  const field = grid(4, 4, 1, (x) => x / 10);

  test('a breakline is an edge all along, and its vertices carry its levels', () => {
    const surface = triangulateSurface({ points: field, breaklines: [{ id: 'B1', points: [{ x: 0.5, y: 0.2, level: 9 }, { x: 3.5, y: 3.9, level: 8 }] }] });
    const length = surface.lines.reduce((sum, kind, e) => {
      if ((kind & BREAKLINE) === 0) return sum;
      const [a, b] = [surface.triangles[e]!, surface.triangles[nextOf(e)]!];
      return sum + Math.sqrt((surface.x[a]! - surface.x[b]!) ** 2 + (surface.y[a]! - surface.y[b]!) ** 2) / 2;
    }, 0);
    expect(length).toBeCloseTo(Math.sqrt(3 * 3 + 3.7 * 3.7), 12);
    expect(brokenCircles(surface)).toBe(0);
    expect(levelsAt(surface, 0.5, 0.2)).toEqual([9]);
  });

  test('a breakline over a spot bends there; a wall that crosses it takes its level there', () => {
    const surface = triangulateSurface({
      points: field,
      breaklines: [{ id: 'B1', points: [{ x: 1, y: 0.5, level: 2 }, { x: 1, y: 1.5, level: 4 }] }],
      walls: [{ id: 'W1', points: [{ x: 0.5, y: 0.75 }, { x: 1.5, y: 0.75 }] }],
    });
    expect(levelsAt(surface, 1, 1)).toEqual([0.1]);
    // half way between 2 at y = 0.5 and 0.1 at y = 1, on both sides of the wall
    expect(levelsAt(surface, 1, 0.75)).toEqual([1.05, 1.05]);
  });

  test('a wall is a cut: each side has vertices of its own, and its ends are joined', () => {
    const points = grid(4, 4, 1, (_, y) => (y < 2 ? 1 : 3));
    const surface = triangulateSurface({ points: points.filter((p) => p.y !== 2), walls: [{ id: 'W1', points: [{ x: -1, y: 2 }, { x: 5, y: 2 }] }] });
    // no level crosses: all below is 1, all above is 3
    surface.level.forEach((level, i) => { expect(level).toBe(surface.y[i]! < 2 ? 1 : surface.y[i]! > 2 ? 3 : level); });
    expect(levelsAt(surface, -1, 2)).toEqual([1, 3]);
    expect(levelsAt(surface, 5, 2)).toEqual([1, 3]);
    const free = triangulateSurface({ points, walls: [{ id: 'W1', points: [{ x: 1, y: 2 }, { x: 3, y: 2 }] }] });
    expect([0, 1, 2, 3, 4].map((x) => levelsAt(free, x, 2).length)).toEqual([1, 1, 2, 1, 1]);
    expect(euler(free)).toBe(0); // a slit within the ground is a hole
  });

  test('the ground at the foot of a long wall follows the spots beside it', () => {
    // a wall of 10 m with a low place at its middle, 0.3 m off; the corners of the wall are high
    const points = spots([[0, 0, 2], [10, 0, 2], [5, 0.3, 1], [0, 6, 2], [10, 6, 2]]);
    const surface = triangulateSurface({ points, walls: [{ id: 'house', points: [{ x: 0, y: 0 }, { x: 10, y: 0 }] }] });
    const [foot] = levelsAt(surface, 5, 0);
    expect(foot).toBeGreaterThanOrEqual(1);
    expect(foot).toBeLessThan(1.02); // by the inverse squares: 1/0.3^2 against 1/5^2 twice
    expect(levelsAt(surface, 5, 0)).toHaveLength(1);
  });

  test('a ring of walls with nothing measured inside is a building; with a spot inside it is a courtyard', () => {
    const house = [{ x: 0.5, y: 0.5 }, { x: 2.5, y: 0.5 }, { x: 2.5, y: 1.5 }, { x: 0.5, y: 1.5 }, { x: 0.5, y: 0.5 }];
    const bare = field.filter((p) => !(p.y === 1 && (p.x === 1 || p.x === 2)));
    expect(areaOf(triangulateSurface({ points: bare, walls: [{ id: 'house', points: house }] }))).toBeCloseTo(16 - 2, 12);
    expect(areaOf(triangulateSurface({ points: field, walls: [{ id: 'house', points: house }] }))).toBeCloseTo(16, 12);
  });

  test('a boundary keeps the ground within it', () => {
    const boundary = [{ x: 0.5, y: 0.5 }, { x: 3.5, y: 0.5 }, { x: 3.5, y: 2.5 }, { x: 2, y: 1.5 }, { x: 0.5, y: 2.5 }];
    const surface = triangulateSurface({ points: field, boundary });
    expect(areaOf(surface)).toBeCloseTo(3 * 2 - (3 * 1) / 2, 12);
    expectWhole(surface);
  });

  test('any spots and walls: whole mesh, empty circles except across walls, no wall is lost', () => {
    fc.assert(fc.property(anySurvey, (input) => {
      const surface = triangulateSurface(input);
      expectWhole(surface);
      expect(brokenCircles(surface)).toBe(0);
      surface.lines.forEach((kind, e) => { if ((kind & 2) !== 0) expect(surface.twins[e]).toBe(WALL_EDGE); });
    }), { numRuns: 100 });
  });
});

describe('refused', () => {
  const code = (input: SurfaceInput): string => {
    try {
      triangulateSurface(input);
    } catch (error) {
      return (error as { code: string; path: string }).code;
    }
    return 'none';
  };
  const three = spots([[0, 0, 1], [1, 0, 1], [0, 1, 1]]);
  const cross = (kind: 'level' | 'none') => [[0, 0, 4, 4], [0, 4, 4, 0]].map(([ax, ay, bx, by], i) => ({
    id: `L${i}`, points: [{ x: ax!, y: ay!, ...(kind === 'level' ? { level: 1 } : {}) }, { x: bx!, y: by!, ...(kind === 'level' ? { level: 2 } : {}) }],
  }));

  test.each<[string, SurfaceInput]>([
    ['surface.tooFewPoints', { points: three.slice(0, 2) }],
    ['surface.tooFewPoints', { points: [] }],
    ['surface.inLine', { points: spots([[0, 0, 1], [1, 1, 2], [3, 3, 0], [9, 9, 0]]) }],
    ['surface.twoLevels', { points: [...three, { id: 'X', x: 0.00005, y: 0, level: 1.01 }] }],
    ['surface.notFinite', { points: [...three, { id: 'X', x: Number.NaN, y: 0, level: 1 }] }],
    ['surface.notFinite', { points: [...three, { id: 'X', x: 2, y: 0, level: Number.POSITIVE_INFINITY }] }],
    ['surface.tooFar', { points: [...three, { id: 'X', x: 2e7, y: 0, level: 1 }] }],
    ['surface.lineTooShort', { points: three, walls: [{ id: 'W', points: [{ x: 0, y: 0 }] }] }],
    ['surface.breaklinesCross', { points: three, breaklines: cross('level') as never }],
    ['surface.tooMany', { points: Array.from({ length: 5001 }, (_, i) => ({ id: `${i}`, x: i, y: i * i, level: 0 })) }],
    ['surface.noGround', { points: three, boundary: [{ x: 5, y: 5 }, { x: 6, y: 5 }, { x: 5, y: 6 }] }],
  ])('%s', (expected, input) => { expect(code(input)).toBe(expected); });

  test('walls may cross, the same spot may be given twice, two breaklines may meet at a vertex', () => {
    expect(code({ points: three, walls: cross('none') })).toBe('none');
    expect(code({ points: [...three, { ...three[0]!, id: 'again' }] })).toBe('none');
    const meeting = [[0, 0], [4, 1]].map(([x, y], i) => ({ id: `B${i}`, points: [{ x: x!, y: y!, level: 1 }, { x: 2, y: 2, level: 3 }] }));
    expect(code({ points: three, breaklines: meeting })).toBe('none');
  });
});
