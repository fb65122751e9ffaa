import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { anySurvey, grid, spots } from '../testing/surveys.ts';
import { groundCatchments } from './catchments.ts';
import { findLowSpots } from './lowSpots.ts';
import type { Drainage } from './lowSpots.ts';
import { stageAt } from './stage.ts';
import { OPEN_EDGE, nextOf } from './surface.ts';
import type { Ground } from './surface.ts';
import { planArea, triangulateSurface } from './triangulate.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 240_000 });

/**
 * The level to which each vertex is under water before the water leaves, by a queue from the open edge inwards as in
 * Barnes, Lehman and Mulla 2014; Infinity where nothing leaves.
 */
function filledLevels(surface: Ground): number[] {
  const filled = surface.x.map(() => Infinity);
  const near: number[][] = surface.x.map(() => []);
  const queue: { v: number; level: number }[] = [];
  surface.triangles.forEach((a, e) => {
    const b = surface.triangles[nextOf(e)]!;
    near[a]!.push(b);
    near[b]!.push(a);
    if (surface.twins[e] === OPEN_EDGE) queue.push({ v: a, level: surface.level[a]! }, { v: b, level: surface.level[b]! });
  });
  while (queue.length > 0) {
    const at = queue.reduce((best, item, i) => (item.level < queue[best]!.level ? i : best), 0);
    const [{ v, level }] = queue.splice(at, 1) as [{ v: number; level: number }];
    if (filled[v] !== Infinity) continue;
    filled[v] = level;
    for (const n of near[v]!) if (filled[n] === Infinity) queue.push({ v: n, level: Math.max(level, surface.level[n]!) });
  }
  return filled;
}

/** The same from the tree of low spots. */
function filledByTree(surface: Ground, { lowSpots }: Drainage): number[] {
  const filled = [...surface.level];
  for (const spot of lowSpots) {
    for (const face of spot.faces) {
      for (let e = 3 * face; e < 3 * face + 3; e += 1) {
        const v = surface.triangles[e]!;
        if (spot.spillLevel !== null) filled[v] = Math.max(filled[v]!, spot.spillLevel);
      }
    }
  }
  return filled;
}

describe('low spots of hand-made ground', () => {
  test('one bowl: bottom, spill at the lowest place of its rim, off the ground', () => {
    const surface = triangulateSurface({ points: spots([[0, 0, 2], [4, 0, 2], [4, 4, 1.5], [0, 4, 2], [2, 2, 1]]) });
    const { lowSpots } = findLowSpots(surface);
    expect(lowSpots).toHaveLength(1);
    expect(lowSpots[0]).toMatchObject({ bottom: { x: 2, y: 2, level: 1 }, spillLevel: 1.5, spillPoint: { x: 4, y: 4 }, spillsTo: null, parent: null, children: [] });
    expect(lowSpots[0]!.volume).toBeCloseTo(stageAt(surface, [0, 1, 2, 3], 1.5).volume, 12);
  });

  // a dam with two bowls: the left is lower; they meet at 1.6 over (5, 2); together they leave at 1.8 over (10, 2)
  const twin = spots([
    [0, 0, 3], [5, 0, 3], [10, 0, 3], [0, 4, 3], [5, 4, 3], [10, 4, 3], [0, 2, 3], [5, 2, 1.6], [10, 2, 1.8], [2.5, 2, 1], [7.5, 2, 1.2],
  ]);

  test('two bowls in one: each spills into the other, together they leave; the volumes add up', () => {
    const surface = triangulateSurface({ points: twin });
    const { lowSpots } = findLowSpots(surface);
    expect(lowSpots.map(({ bottom, spillLevel, spillsTo, parent, children }) => ({ at: bottom.x, spillLevel, spillsTo, parent, children }))).toEqual([
      { at: 2.5, spillLevel: 1.6, spillsTo: 1, parent: 2, children: [] },
      { at: 7.5, spillLevel: 1.6, spillsTo: 0, parent: 2, children: [] },
      { at: 2.5, spillLevel: 1.8, spillsTo: null, parent: null, children: [0, 1] },
    ]);
    const [left, right, both] = lowSpots as [typeof lowSpots[0], typeof lowSpots[0], typeof lowSpots[0]];
    expect(stageAt(surface, both.faces, 1.6).volume).toBeCloseTo(left.volume + right.volume, 12);
    expect(both.spillPoint).toEqual({ x: 10, y: 2 });
    expect(both.volume).toBeGreaterThan(left.volume + right.volume);
  });

  test('a wall between them keeps them apart, a gap in it joins them again', () => {
    const wall = (to: number) => [{ id: 'W1', points: [{ x: 5, y: 0 }, { x: 5, y: to }] }];
    const closed = findLowSpots(triangulateSurface({ points: twin, walls: wall(4) })).lowSpots;
    // the left one has nowhere lower to go than the open edge at 3; the right one leaves at 1.8 as before
    expect(closed.map(({ bottom, spillLevel, spillsTo }) => ({ at: bottom.x, spillLevel, spillsTo }))).toEqual([
      { at: 2.5, spillLevel: 3, spillsTo: null }, { at: 7.5, spillLevel: 1.8, spillsTo: null },
    ]);
    const gap = findLowSpots(triangulateSurface({ points: twin, walls: wall(1) })).lowSpots;
    expect(gap.map(({ spillLevel }) => spillLevel)).toEqual([1.6, 1.6, 1.8]);
  });

  test('a courtyard with walls all round spills nowhere; its water is known to its highest ground', () => {
    const yard = [{ x: 0, y: 0 }, { x: 4, y: 0 }, { x: 4, y: 3 }, { x: 0, y: 3 }, { x: 0, y: 0 }];
    const points = spots([[0, 0, 1.2], [4, 0, 1.2], [4, 3, 1.2], [0, 3, 1.2], [1, 1, 1]]);
    const { lowSpots, drainsTo } = findLowSpots(triangulateSurface({ points, walls: [{ id: 'yard', points: yard }] }));
    expect(lowSpots).toMatchObject([{ spillLevel: null, spillPoint: null, spillsTo: null, topLevel: 1.2, area: 12 }]);
    expect(lowSpots[0]!.volume).toBeCloseTo((12 * 0.2) / 3, 12);
    expect(new Set(drainsTo)).toEqual(new Set([0]));
  });

  test('a hollow less deep than a rod reads does not count; the ground there drains on', () => {
    const dent = (deep: number) => grid(6, 2, 1, (x, y) => (x === 4 && y === 1 ? 0.3 - deep : x === 2 && y === 1 ? -1 : x * 0.1));
    expect(findLowSpots(triangulateSurface({ points: dent(0.002) })).lowSpots.map((spot) => spot.bottom.x)).toEqual([2]);
    const deep = findLowSpots(triangulateSurface({ points: dent(0.15) }));
    expect(deep.lowSpots.map((spot) => spot.bottom.x)).toEqual([2, 4]);
    expect(findLowSpots(triangulateSurface({ points: dent(0.15) }), 0.2).lowSpots.map((spot) => spot.bottom.x)).toEqual([2]);
    expect(() => findLowSpots(triangulateSurface({ points: dent(0.1) }), -1)).toThrow(/surface.badDepth/);
  });

  test('level ground has no low spot; a level floor has one', () => {
    expect(findLowSpots(triangulateSurface({ points: grid(5, 5, 1, () => 7) })).lowSpots).toEqual([]);
    const floor = findLowSpots(triangulateSurface({ points: grid(5, 5, 1, (x, y) => (x > 0 && y > 0 && x < 5 && y < 5 ? 1 : 1.5)) })).lowSpots;
    expect(floor).toHaveLength(1);
    // 9 m2 at 1, 25 m2 at 1.5: the sides are 12 prisms of 0.25 m3; each corner square has a level half, and the other
    // half is a pyramid of 1/12 m3, or both halves slope and hold 1/12 m3 each, as its diagonal runs
    const corners = (floor[0]!.volume - 9 * 0.5 - 12 * 0.25) * 12;
    expect(corners).toBeCloseTo(4 + (floor[0]!.area - 23) * 2, 9);
  });
});

describe('low spots of any ground', () => {
  test('the water stands as high as a flood from the edge inwards says', () => {
    fc.assert(fc.property(anySurvey, (input) => {
      const surface = triangulateSurface(input);
      const drainage = findLowSpots(surface, 0);
      const tree = filledByTree(surface, drainage);
      filledLevels(surface).forEach((level, v) => { if (level !== Infinity) expect(tree[v]).toBe(level); });
    }), { numRuns: 100 });
  });

  test('bottoms lie below spills, children below their parent, volumes add up, spills lead to simple low spots', () => {
    fc.assert(fc.property(anySurvey, (input) => {
      const surface = triangulateSurface(input);
      const { lowSpots } = findLowSpots(surface);
      for (const spot of lowSpots) {
        expect(spot.topLevel).toBeGreaterThanOrEqual(spot.bottom.level);
        if (spot.spillsTo !== null) expect(lowSpots[spot.spillsTo]!.children).toEqual([]);
        if (spot.spillsTo !== null) expect(spot.spillsTo).not.toBe(spot.index);
        if (spot.children.length === 0) continue;
        const children = spot.children.map((child) => lowSpots[child]!);
        const meet = children[0]!.topLevel;
        for (const child of children) {
          expect(child.parent).toBe(spot.index);
          expect(child.spillLevel).toBe(meet);
          expect(child.spillPoint).toEqual(children[0]!.spillPoint);
        }
        expect(spot.bottom.level).toBe(children.reduce((low, child) => Math.min(low, child.bottom.level), Infinity));
        const shallow = stageAt(surface, spot.faces, meet).volume - children.reduce((sum, child) => sum + child.volume, 0);
        expect(shallow).toBeGreaterThanOrEqual(-1e-9);
        expect(shallow).toBeLessThanOrEqual(0.003048 * 400); // only hollows too shallow to count
      }
    }), { numRuns: 100 });
  });

  test('catchments share out the whole ground, once', () => {
    fc.assert(fc.property(anySurvey, (input) => {
      const surface = triangulateSurface(input);
      const catchments = groundCatchments(surface, findLowSpots(surface));
      const faces = catchments.flatMap((catchment) => catchment.faces).sort((p, q) => p - q);
      expect(faces).toEqual(Array.from({ length: surface.triangles.length / 3 }, (_, i) => i));
      const whole = faces.reduce((sum, face) => sum + planArea(surface, face), 0);
      expect(catchments.reduce((sum, catchment) => sum + catchment.area, 0)).toBeCloseTo(whole, 9);
    }), { numRuns: 100 });
  });
});
