import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { stageCurve, volumeAtLevel } from '../levels/stageVolume.ts';
import { anyPoints, anySurvey, grid, spots } from '../testing/surveys.ts';
import { findLowSpots } from './lowSpots.ts';
import { stageAreaOf } from './stageTable.ts';
import { stageAt, stagesAt } from './stage.ts';
import type { Ground } from './surface.ts';
import { triangulateSurface } from './triangulate.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 240_000 });

const allFaces = (surface: Ground): number[] => Array.from({ length: surface.triangles.length / 3 }, (_, i) => i);

/** Water over one triangle, another way: clip the triangle at the level corner by corner, then prisms over a fan of the rest. */
function clipped(surface: Ground, face: number, h: number): { area: number; volume: number } {
  const corners = [0, 1, 2].map((k) => surface.triangles[3 * face + k]!).map((v) => ({ x: surface.x[v]!, y: surface.y[v]!, z: surface.level[v]! }));
  const wet: { x: number; y: number; z: number }[] = [];
  corners.forEach((a, k) => {
    const b = corners[(k + 1) % 3]!;
    if (a.z <= h) wet.push(a);
    if ((a.z < h && b.z > h) || (a.z > h && b.z < h)) {
      const share = (h - a.z) / (b.z - a.z);
      wet.push({ x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y), z: h });
    }
  });
  let area = 0;
  let volume = 0;
  for (let k = 1; k + 1 < wet.length; k += 1) {
    const [p, q, r] = [wet[0]!, wet[k]!, wet[k + 1]!];
    const part = Math.abs((q.x - p.x) * (r.y - p.y) - (r.x - p.x) * (q.y - p.y)) / 2;
    area += part;
    volume += (part * (h - p.z + (h - q.z) + (h - r.z))) / 3;
  }
  return { area, volume };
}

describe('stage, area and volume of known bodies', () => {
  // volumes by the textbook formulas of the bodies; the numbers are worked out in the line above each check
  test('pyramid on its point: V = A h/3, the surface grows with the square of the depth', () => {
    const surface = triangulateSurface({ points: spots([[0, 0, 3], [4, 0, 3], [4, 6, 3], [0, 6, 3], [1.5, 2.5, 0]]) });
    for (const h of [0.3, 1, 2.2, 3]) {
      const { area, volume } = stageAt(surface, allFaces(surface), h);
      expect(area).toBeCloseTo(24 * (h / 3) * (h / 3), 12);
      expect(volume).toBeCloseTo((24 * (h / 3) * (h / 3) * h) / 3, 12);
    }
  });

  test('trough of two planes: V = length * width * h / 2', () => {
    const surface = triangulateSurface({ points: spots([[0, 0, 1], [0, 5, 1], [2, 0, 0], [2, 5, 0], [6, 0, 1], [6, 5, 1]]) });
    for (const h of [0.1, 0.5, 1]) {
      const { area, volume } = stageAt(surface, allFaces(surface), h);
      expect(area).toBeCloseTo(5 * 6 * h, 12);
      expect(volume).toBeCloseTo((5 * 6 * h * h) / 2, 12);
    }
  });

  test('cone of 48 sides: V = n/2 r^2 sin(2 pi/n) h/3', () => {
    const rim = Array.from({ length: 48 }, (_, i) => [3 * Math.cos((i * Math.PI) / 24), 3 * Math.sin((i * Math.PI) / 24), 2] as [number, number, number]);
    const surface = triangulateSurface({ points: spots([...rim, [0, 0, 0]]) });
    const base = 24 * 9 * Math.sin(Math.PI / 24);
    expect(stageAt(surface, allFaces(surface), 2).volume).toBeCloseTo((base * 2) / 3, 11);
    expect(stageAt(surface, allFaces(surface), 0.5).volume).toBeCloseTo((base * 0.5) / 16 / 3, 11);
  });

  test('dish with a level floor: frustum h/3 (A1 + A2 + sqrt(A1 A2)) at every depth', () => {
    const surface = triangulateSurface({ points: spots([[0, 0, 1], [6, 0, 1], [6, 6, 1], [0, 6, 1], [2, 2, 0], [4, 2, 0], [4, 4, 0], [2, 4, 0]]) });
    for (const h of [0.25, 0.5, 1, 1.5]) {
      const side = 2 + 4 * Math.min(h, 1);
      const upTo = Math.min(h, 1);
      const volume = (upTo / 3) * (4 + side * side + 2 * side) + 36 * Math.max(0, h - 1);
      expect(stageAt(surface, allFaces(surface), h).volume).toBeCloseTo(volume, 12);
      expect(stageAt(surface, allFaces(surface), h).area).toBeCloseTo(side * side, 12);
    }
    // level ground has no water while the water stands at its own level
    expect(stageAt(surface, allFaces(surface), 0)).toEqual({ level: 0, area: 0, volume: 0 });
  });
});

describe('stage, area and volume of any ground', () => {
  const levels = Array.from({ length: 13 }, (_, i) => 99.9 + i * 0.27);

  test('agrees with clipped polygons to 1e-9', () => {
    fc.assert(fc.property(anySurvey, (input) => {
      const surface = triangulateSurface(input);
      const faces = allFaces(surface);
      for (const { level, area, volume } of stagesAt(surface, faces, levels)) {
        const other = faces.map((face) => clipped(surface, face, level)).reduce((sum, part) => ({ area: sum.area + part.area, volume: sum.volume + part.volume }), { area: 0, volume: 0 });
        const flat = faces.filter((face) => [0, 1, 2].every((k) => surface.level[surface.triangles[3 * face + k]!] === level)).reduce((sum, face) => sum + clipped(surface, face, level).area, 0);
        expect(Math.abs(area - (other.area - flat))).toBeLessThanOrEqual(1e-9 * Math.max(1e-3, other.area));
        expect(Math.abs(volume - other.volume)).toBeLessThanOrEqual(1e-9 * Math.max(1e-3, other.volume));
      }
    }), { numRuns: 100 });
  });

  test('volume never falls as the level rises, and its change is the mean area times the rise', () => {
    fc.assert(fc.property(anyPoints, (points) => {
      const surface = triangulateSurface({ points });
      const stages = stagesAt(surface, allFaces(surface), levels);
      stages.slice(1).forEach((stage, i) => {
        const before = stages[i]!;
        const rise = stage.level - before.level;
        expect(stage.volume - before.volume).toBeGreaterThanOrEqual(before.area * rise - 1e-9);
        expect(stage.volume - before.volume).toBeLessThanOrEqual(stage.area * rise + 1e-9);
      });
    }), { numRuns: 100 });
  });

  test('parts of the ground add up to the whole', () => {
    const surface = triangulateSurface({ points: grid(6, 5, 1, (x, y) => Math.abs(x - 2.3) + Math.abs(y - 1.8) * 0.7) });
    const faces = allFaces(surface);
    const whole = stageAt(surface, faces, 1.7);
    const even = stageAt(surface, faces.filter((face) => face % 2 === 0), 1.7);
    const odd = stageAt(surface, faces.filter((face) => face % 2 === 1), 1.7);
    expect(even.volume + odd.volume).toBeCloseTo(whole.volume, 12);
    expect(even.area + odd.area).toBeCloseTo(whole.area, 12);
  });

  test('refuses falling and non-finite levels', () => {
    const surface = triangulateSurface({ points: grid(1, 1, 1, (x) => x) });
    expect(() => stagesAt(surface, [0, 1], [1, 0.5])).toThrow(/surface.notRising/);
    expect(() => stageAt(surface, [0, 1], Number.NaN)).toThrow(/surface.notFinite/);
  });
});

describe('stage-area pairs for a document', () => {
  const bowl = (levelAt: (x: number, y: number) => number, most?: number) => {
    const surface = triangulateSurface({ points: grid(10, 10, 0.6, levelAt) });
    const lowSpot = findLowSpots(surface).lowSpots.at(-1)!;
    return { surface, lowSpot, pairs: stageAreaOf(surface, lowSpot, most) };
  };
  const expectClose = ({ surface, lowSpot, pairs }: ReturnType<typeof bowl>, share: number): void => {
    const curve = stageCurve(pairs);
    for (let k = 1; k <= 60; k += 1) {
      const level = lowSpot.bottom.level + ((lowSpot.topLevel - lowSpot.bottom.level) * k) / 60;
      const exact = stageAt(surface, lowSpot.faces, level).volume;
      expect(Math.abs(volumeAtLevel(curve, level) - exact)).toBeLessThanOrEqual(share * exact + 1e-4 * lowSpot.volume);
    }
    expect(Math.abs(volumeAtLevel(curve, lowSpot.topLevel) - lowSpot.volume)).toBeLessThanOrEqual(share * lowSpot.volume);
  };

  test.each<[string, (x: number, y: number) => number]>([
    ['a round dish', (x, y) => ((x - 3) * (x - 3) + (y - 3) * (y - 3)) / 40],
    ['a trough, closed at its ends', (x, y) => Math.abs(x - 3) / 10 + (y < 0.1 || y > 5.9 ? 1 : 0)],
    ['a level floor', (x, y) => (Math.max(Math.abs(x - 3), Math.abs(y - 3)) < 1.5 ? 5 : 5.2)],
    ['a level bench halfway up', (x, y) => Math.floor(Math.max(Math.abs(x - 3), Math.abs(y - 3)) + 0.3) / 3],
    ['a level bottom between rough sides', (x, y) => ((x * 7 + y * 13) % 5) / 50 + (x < 0.1 || y < 0.1 || x > 5.9 || y > 5.9 ? 1 : 0)],
  ])('%s: the frustum rule over the pairs is within 0.1 percent', (_, levelAt) => {
    const made = bowl(levelAt);
    expect(made.pairs.length).toBeLessThanOrEqual(200);
    expect(made.pairs[0]!.level).toBe(made.lowSpot.bottom.level);
    expect(made.pairs.at(-1)!.level).toBe(made.lowSpot.topLevel);
    expect(made.pairs.every((pair, i) => pair.area > 0 && (i === 0 || (pair.level > made.pairs[i - 1]!.level && pair.area >= made.pairs[i - 1]!.area)))).toBe(true);
    expectClose(made, 0.001);
  });

  test('a table of twenty rows is still within one percent', () => {
    const made = bowl((x, y) => ((x - 3) * (x - 3) + (y - 2.5) * (y - 2.5)) / 40, 20);
    expect(made.pairs).toHaveLength(20);
    expectClose(made, 0.01);
  });
});
