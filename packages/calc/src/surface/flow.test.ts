import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { anySurvey, grid, spots } from '../testing/surveys.ts';
import { groundCatchments } from './catchments.ts';
import { flowArrows } from './flowArrows.ts';
import { flowPath } from './flowPath.ts';
import { groundProfile } from './groundProfile.ts';
import { levelAt } from './locate.ts';
import { findLowSpots } from './lowSpots.ts';
import { triangulateSurface } from './triangulate.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 240_000 });

describe('ways of water', () => {
  test('on an even slope: straight down and off the ground', () => {
    const surface = triangulateSurface({ points: grid(4, 4, 1, (x) => 5 - x / 10) });
    const { points, lowSpot } = flowPath(surface, findLowSpots(surface), { x: 0.3, y: 1.4 });
    expect(lowSpot).toBeNull();
    for (const point of points) expect(point.y).toBeCloseTo(1.4, 12);
    expect(points.at(-1)!.x).toBeCloseTo(4, 12);
  });

  test('a wall turns it aside, along the wall to its end and on', () => {
    const surface = triangulateSurface({
      points: grid(6, 6, 1, (x, y) => 5 - x / 10 - y / 50),
      walls: [{ id: 'W', points: [{ x: 3.5, y: 0.5, level: 4.64 }, { x: 3.5, y: 4.5, level: 4.56 }] }],
    });
    const { points, lowSpot } = flowPath(surface, findLowSpots(surface), { x: 1.2, y: 1.3 });
    expect(lowSpot).toBeNull();
    expect(points).toContainEqual({ x: 3.5, y: 4.5 });
    // it reaches the wall and follows it; nowhere between does it stand beyond it
    expect(points.some(({ x, y }) => x > 3.5 + 1e-12 && y < 4.5)).toBe(false);
  });

  test('down the side into a valley, along it to the low spot', () => {
    const points = grid(6, 4, 1, (x, y) => 10 + Math.abs(y - 2) / 4 + Math.abs(x - 5) / 20 + (x === 6 ? 1 : 0));
    const surface = triangulateSurface({ points, breaklines: [{ id: 'valley', points: [{ x: 0, y: 2, level: 10.25 }, { x: 5, y: 2, level: 10 }] }] });
    const drainage = findLowSpots(surface);
    expect(drainage.lowSpots).toMatchObject([{ bottom: { x: 5, y: 2, level: 10 }, spillLevel: 10.25, spillPoint: { x: 0, y: 2 } }]);
    const { points: way, lowSpot } = flowPath(surface, drainage, { x: 1.3, y: 3.6 });
    expect(lowSpot).toBe(0);
    expect(way.at(-1)).toEqual({ x: 5, y: 2 });
    const inValley = way.findIndex(({ y }) => y === 2);
    expect(way[inValley]!.x).toBeLessThan(4);
    expect(way.slice(inValley).every(({ y }) => y === 2)).toBe(true);
  });

  test('level ground ends too, and water crosses a hollow too shallow to count', () => {
    const flat = triangulateSurface({ points: grid(6, 6, 1, () => 2) });
    expect(flowPath(flat, findLowSpots(flat), { x: 3.2, y: 2.9 }).lowSpot).toBeNull();
    const dent = triangulateSurface({ points: grid(6, 2, 1, (x, y) => (x === 4 && y === 1 ? 0.298 : x === 2 && y === 1 ? -1 : x * 0.1)) });
    const drainage = findLowSpots(dent);
    const { points, lowSpot } = flowPath(dent, drainage, { x: 5.2, y: 1.1 });
    expect(points).toContainEqual({ x: 4, y: 1 });
    expect(points.at(-1)).toEqual({ x: 2, y: 1 });
    expect(lowSpot).toBe(0);
  });

  test('off the ground is refused', () => {
    const surface = triangulateSurface({ points: grid(2, 2, 1, (x) => x) });
    expect(() => flowPath(surface, findLowSpots(surface), { x: 9, y: 9 })).toThrow(/surface.offGround/);
  });

  test('any ground: every way ends at the bottom of a low spot or at the open edge, and never climbs but out of a shallow hollow', () => {
    let inside = 0;
    fc.assert(fc.property(anySurvey, fc.double({ min: 0.05, max: 0.9, noNaN: true }), fc.nat(), (input, share, pick) => {
      const surface = triangulateSurface(input);
      const drainage = findLowSpots(surface, 0);
      const face = pick % (surface.triangles.length / 3);
      const [a, b, c] = [0, 1, 2].map((k) => surface.triangles[3 * face + k]!) as [number, number, number];
      const weights = [share, (1 - share) / 3, (2 * (1 - share)) / 3] as const;
      const place = { x: weights[0] * surface.x[a]! + weights[1] * surface.x[b]! + weights[2] * surface.x[c]!, y: weights[0] * surface.y[a]! + weights[1] * surface.y[b]! + weights[2] * surface.y[c]! };
      const { points, lowSpot } = flowPath(surface, drainage, place);
      if (lowSpot === null) return;
      inside += 1;
      const { bottom } = drainage.lowSpots[lowSpot]!;
      expect(points.at(-1)).toEqual({ x: bottom.x, y: bottom.y });
      if ((input.walls ?? []).length > 0) return; // at a wall the level of a place is that of either side
      const levels = points.map((point) => levelAt(surface, point));
      levels.slice(1).forEach((level, i) => {
        if (level !== null && levels[i] !== null) expect(level).toBeLessThanOrEqual(levels[i]! + 1e-6);
      });
    }), { numRuns: 100 });
    expect(inside).toBeGreaterThan(2);
  });
});

describe('arrows', () => {
  test('point down the slope, none on level ground', () => {
    const arrows = flowArrows(triangulateSurface({ points: grid(2, 2, 1, (x, y) => 5 - 0.03 * x - 0.04 * y) }));
    expect(arrows).toHaveLength(8);
    for (const { direction, slope } of arrows) {
      expect(slope).toBeCloseTo(0.05, 12);
      expect([direction.x, direction.y]).toEqual([expect.closeTo(0.6, 12), expect.closeTo(0.8, 12)]);
    }
    expect(flowArrows(triangulateSurface({ points: grid(2, 2, 1, () => 1) }))).toEqual([]);
  });
});

describe('catchments', () => {
  test('a ridge between two bowls halves the ground', () => {
    const rows: [number, number, number][] = [[0, 0, 3], [4, 0, 3], [8, 0, 3], [0, 4, 3], [4, 4, 3], [8, 4, 3], [4, 2, 2.9], [2, 2, 1], [6, 2, 1]];
    const surface = triangulateSurface({ points: spots(rows) });
    const catchments = groundCatchments(surface, findLowSpots(surface));
    expect(catchments.map(({ lowSpot, area }) => [lowSpot, area])).toEqual([[0, 16], [1, 16], [null, 0]]);
  });
});

describe('section over the ground', () => {
  test('levels at its corners and where it crosses edges', () => {
    const surface = triangulateSurface({ points: spots([[0, 0, 3], [4, 0, 3], [4, 4, 3], [0, 4, 3], [2, 2, 1]]) });
    const [stretch, ...others] = groundProfile(surface, [{ x: 0, y: 1 }, { x: 4, y: 1 }]);
    expect(others).toEqual([]);
    expect(stretch!.map(({ station, level }) => [station, level])).toEqual([[0, 3], [1, 2], [3, 2], [4, 3]].map(([station, level]) => [expect.closeTo(station!, 12), expect.closeTo(level!, 12)]));
    const bent = groundProfile(surface, [{ x: 0, y: 1 }, { x: 2, y: 1 }, { x: 2, y: 3 }])[0]!;
    expect(bent.map(({ station }) => station)).toEqual([0, 1, 2, 3, 4].map((station) => expect.closeTo(station, 12)));
    expect(bent.map(({ level }) => level)).toEqual([3, 2, 2, 1, 2].map((level) => expect.closeTo(level, 12)));
  });

  test('a step at a wall, a gap over a building, nothing off the ground', () => {
    const points = [...grid(6, 1, 1, () => 1), ...grid(6, 1, 1, () => 2).map((p) => ({ ...p, y: p.y + 4 }))];
    const stepped = triangulateSurface({ points, walls: [{ id: 'W', points: [{ x: 0, y: 2 }, { x: 6, y: 2 }] }] });
    const [step] = groundProfile(stepped, [{ x: 2.5, y: 0 }, { x: 2.5, y: 5 }]);
    expect(step!.filter(({ y }) => Math.abs(y - 2) < 1e-9).map(({ level }) => level)).toEqual([1, 2]);
    const house = [[1.5, 0.5], [3.5, 0.5], [3.5, 3.5], [1.5, 3.5], [1.5, 0.5]].map(([x, y]) => ({ x: x!, y: y! }));
    const built = triangulateSurface({ points: grid(5, 4, 1, (x) => x).filter((p) => p.x < 2 || p.x > 3 || p.y < 1 || p.y > 3), walls: [{ id: 'house', points: house }] });
    const stretches = groundProfile(built, [{ x: -1, y: 2.2 }, { x: 6, y: 2.2 }]);
    expect(stretches.map((stretch) => [stretch[0]!.station, stretch.at(-1)!.station])).toEqual([[1, 2.5], [4.5, 6]].map((pair) => pair.map((value) => expect.closeTo(value, 9))));
    expect(groundProfile(built, [{ x: 9, y: 9 }, { x: 12, y: 9 }])).toEqual([]);
    expect(() => groundProfile(built, [{ x: 0, y: 0 }])).toThrow(/surface.lineTooShort/);
  });

  test('along an edge and through vertices every place comes once', () => {
    const surface = triangulateSurface({ points: grid(4, 2, 1, (x, y) => x + y) });
    const [stretch] = groundProfile(surface, [{ x: 0, y: 1 }, { x: 4, y: 1 }]);
    expect(stretch!.map(({ station }) => station)).toEqual([0, 1, 2, 3, 4].map((station) => expect.closeTo(station, 12)));
    expect(stretch!.map(({ level }) => level)).toEqual([1, 2, 3, 4, 5].map((level) => expect.closeTo(level, 12)));
  });
});
