import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { anySurvey, grid, spots } from '../testing/surveys.ts';
import { contourLines } from './contours.ts';
import { ringArea, waterExtent } from './extent.ts';
import { levelAt } from './locate.ts';
import { findLowSpots } from './lowSpots.ts';
import { stageAt } from './stage.ts';
import { SURFACE_LIMITS, type Ground } from './surface.ts';
import { triangulateSurface } from './triangulate.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 240_000 });

const pyramid = triangulateSurface({ points: spots([[0, 0, 3], [4, 0, 3], [4, 6, 3], [0, 6, 3], [2, 3, 0]]) });

describe('water in plan', () => {
  test('in a pyramid on its point it is the square of that depth', () => {
    const [lowSpot] = findLowSpots(pyramid).lowSpots;
    const [polygon, ...others] = waterExtent(pyramid, lowSpot!, 1.5);
    expect(others).toEqual([]);
    expect(polygon!.holes).toEqual([]);
    const corners = polygon!.outer.map(({ x, y }) => `${x},${y}`).sort();
    expect(corners).toEqual(['1,1.5', '1,4.5', '3,1.5', '3,4.5']);
    expect(ringArea(polygon!.outer)).toBe(6);
  });

  test('an island is a hole, clockwise; two separate ponds of one low spot are two polygons', () => {
    const ring = triangulateSurface({ points: grid(8, 8, 1, (x, y) => {
      const away = Math.max(Math.abs(x - 4), Math.abs(y - 4));
      return away > 3 ? 3 : away > 1 ? 1 : 2.5;
    }) });
    const polygons = waterExtent(ring, findLowSpots(ring).lowSpots.at(-1)!, 2);
    expect(polygons).toHaveLength(1);
    expect(polygons[0]!.holes).toHaveLength(1);
    expect(ringArea(polygons[0]!.holes[0]!)).toBeLessThan(0);
    const twin = triangulateSurface({ points: spots([[0, 0, 3], [5, 0, 3], [10, 0, 3], [0, 4, 3], [5, 4, 3], [10, 4, 3], [0, 2, 3], [5, 2, 1.6], [10, 2, 1.8], [2.5, 2, 1], [7.5, 2, 1.2]]) });
    const both = findLowSpots(twin).lowSpots[2]!;
    expect(waterExtent(twin, both, 1.5)).toHaveLength(2);
    expect(waterExtent(twin, both, 1.7)).toHaveLength(1);
  });

  test('water on one side of a wall does not show on the other', () => {
    const points = grid(6, 4, 1, (x, y) => (y === 0 || y === 4 || x === 0 || x === 6 ? 2 : 1));
    const surface = triangulateSurface({ points, walls: [{ id: 'W', points: [{ x: 3, y: 0 }, { x: 3, y: 4 }] }] });
    const { lowSpots } = findLowSpots(surface);
    expect(lowSpots).toHaveLength(2);
    for (const spot of lowSpots) {
      const left = spot.bottom.x < 3 || (spot.bottom.x === 3 && spot.faces.some((face) => surface.x[surface.triangles[3 * face]!]! < 3));
      const xs = waterExtent(surface, spot, 1.5).flatMap((polygon) => polygon.outer.map(({ x }) => x));
      if (left) expect(Math.max(...xs)).toBe(3);
      else expect(Math.min(...xs)).toBe(3);
    }
  });

  test('only between the lowest point and the spill level', () => {
    const [lowSpot] = findLowSpots(pyramid).lowSpots;
    expect(() => waterExtent(pyramid, lowSpot!, 3.01)).toThrow(/surface.outsideLowSpot/);
    expect(() => waterExtent(pyramid, lowSpot!, Number.NaN)).toThrow(/surface.outsideLowSpot/);
    expect(waterExtent(pyramid, lowSpot!, 0)).toEqual([]);
  });

  test('any ground: the polygons have the area of the stage', () => {
    let ponds = 0;
    fc.assert(fc.property(anySurvey, fc.double({ min: 0.05, max: 1, noNaN: true }), (input, share) => {
      const surface = triangulateSurface(input);
      for (const spot of findLowSpots(surface).lowSpots) {
        const level = Math.min(spot.topLevel, spot.bottom.level + share * (spot.topLevel - spot.bottom.level));
        const polygons = waterExtent(surface, spot, level);
        const area = polygons.reduce((sum, { outer, holes }) => sum + ringArea(outer) + holes.reduce((less, hole) => less + ringArea(hole), 0), 0);
        expect(area).toBeCloseTo(stageAt(surface, spot.faces, level).area, 8);
        ponds += 1;
      }
    }), { numRuns: 100 });
    expect(ponds).toBeGreaterThan(10);
  });
});

/** Whether no triangle is thinner than the distance at which two places are one [m]. */
function isThick({ x, y, triangles }: Ground): boolean {
  for (let face = 0; 3 * face < triangles.length; face += 1) {
    const [a, b, c] = [triangles[3 * face]!, triangles[3 * face + 1]!, triangles[3 * face + 2]!];
    const twice = (x[b]! - x[a]!) * (y[c]! - y[a]!) - (x[c]! - x[a]!) * (y[b]! - y[a]!);
    const longest = Math.max(Math.hypot(x[b]! - x[a]!, y[b]! - y[a]!), Math.hypot(x[c]! - x[b]!, y[c]! - y[b]!), Math.hypot(x[a]! - x[c]!, y[a]! - y[c]!));
    if (twice / longest < SURFACE_LIMITS.samePlace) return false;
  }
  return true;
}

describe('contours', () => {
  test('on an even slope: straight lines from edge to edge', () => {
    const surface = triangulateSurface({ points: grid(4, 3, 1, (x) => x / 4) });
    const lines = contourLines(surface, 0.3);
    expect(lines.map(({ level, closed }) => [level, closed])).toEqual([[0.3, false], [0.6, false], [0.3 * 3, false]]);
    for (const { level, points } of lines) {
      for (const point of points) expect(point.x).toBeCloseTo(4 * level, 12);
      expect([points[0]!.y, points.at(-1)!.y].sort((a, b) => a - b)).toEqual([0, 3]);
    }
  });

  test('in a pyramid on its point: closed squares', () => {
    expect(contourLines(pyramid, 1).map(({ level, closed, points }) => [level, closed, Math.abs(ringArea(points))])).toEqual([
      [1, true, 24 / 9], [2, true, (24 * 4) / 9], [3, true, 24],
    ].map(([level, closed, area]) => [level, closed, expect.closeTo(area as number, 12)]));
  });

  test('end at a wall', () => {
    const points = grid(4, 4, 1, (x) => x / 4);
    const surface = triangulateSurface({ points, walls: [{ id: 'W', points: [{ x: 0, y: 2 }, { x: 4, y: 2 }] }] });
    expect(contourLines(surface, 0.55)).toHaveLength(2);
  });

  test('any ground: every place of a line is at its level', () => {
    fc.assert(fc.property(anySurvey, fc.constantFrom(0.1, 0.25, 1), (input, interval) => {
      const surface = triangulateSurface({ points: input.points });
      // on a triangle thinner than what counts as one place, one place has as many levels as its sides
      fc.pre(isThick(surface));
      for (const { level, points } of contourLines(surface, interval)) {
        points.slice(1).forEach((point, i) => {
          const middle = { x: (point.x + points[i]!.x) / 2, y: (point.y + points[i]!.y) / 2 };
          const ground = levelAt(surface, middle);
          if (ground !== null) expect(ground).toBeCloseTo(level, 6);
        });
      }
    }), { numRuns: 100 });
  });

  test('refuses an interval that is none', () => {
    expect(() => contourLines(pyramid, 0)).toThrow(/surface.badInterval/);
    expect(() => contourLines(pyramid, 1e-6)).toThrow(/surface.tooManyContours/);
  });
});
