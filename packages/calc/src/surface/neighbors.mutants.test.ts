import { describe, expect, it, vi } from 'vitest';
import { eachLook, near, vertexAt } from '../testing/looks.ts';
import { spots } from '../testing/surveys.ts';
import { groundCatchments } from './catchments.ts';
import { flowArrows } from './flowArrows.ts';
import { faceAt } from './locate.ts';
import { findLowSpots } from './lowSpots.ts';
import { distanceBetween, neighborsOf, steepestOf } from './neighbors.ts';
import type { Ground, Spot, SurfaceInput } from './surface.ts';
import { triangulateSurface } from './triangulate.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 60_000 });

describe('neighbors', () => {
  // A square with its middle: four triangles; one wall along the side y = 0.
  const square: SurfaceInput = { points: spots([[10, 20, 1], [14, 20, 1], [14, 23, 1], [10, 23, 1], [12, 21.5, 0]]), walls: [{ id: 'W', points: [{ x: 10, y: 20 }, { x: 14, y: 20 }] }] };
  it('every vertex once, and who stands on the open edge', () => {
    eachLook(square, (ground, look) => {
      const { of, open, leaving } = neighborsOf(ground);
      const middle = vertexAt(ground, look({ x: 12, y: 21.5 }));
      expect([of[middle]!.length, open[middle]]).toEqual([4, 0]);
      of.forEach((list, v) => {
        expect(new Set(list).size).toBe(list.length);
        expect(ground.triangles[leaving[v]!]).toBe(v);
        if (v !== middle) expect([list.length, open[v]]).toEqual([3, 1]);
      });
    });
    // All walls: no open edge.
    const yard = triangulateSurface({ points: square.points, walls: [{ id: 'W', points: [[10, 20], [14, 20], [14, 23], [10, 23], [10, 20]].map(([x, y]) => ({ x: x!, y: y! })) }] });
    expect([...neighborsOf(yard).open]).toEqual([0, 0, 0, 0, 0]);
  });

  it('the steepest way down, the earliest flooded of two as steep, none on a bottom', () => {
    const ground: Ground = { x: [5, 8, 5, 5, 3], y: [7, 11, 5, 9, 7], level: [10, 5, 9, 9, 9], pointId: [], triangles: [], twins: [], lines: [] };
    expect([distanceBetween(ground, 0, 1), distanceBetween(ground, 1, 0), distanceBetween(ground, 0, 2), distanceBetween(ground, 0, 4)]).toEqual([5, 5, 2, 2]);
    const rank = Int32Array.from([4, 0, 3, 1, 2]);
    // 5 m down in 5 m; 1 m down in 2 m three times, of which 3 was flooded first.
    expect([steepestOf(ground, rank, 0, [2, 1, 3]), steepestOf(ground, rank, 0, [1, 2]), steepestOf(ground, rank, 0, [2, 3, 4]), steepestOf(ground, rank, 0, [3, 4, 2]), steepestOf(ground, rank, 0, [4, 2])]).toEqual([1, 1, 3, 3, 4]);
    expect([steepestOf(ground, rank, 1, [0, 2]), steepestOf(ground, rank, 0, [])]).toEqual([-1, -1]);
    const level = { ...ground, level: [9, 9, 9, 9, 9] };
    expect([steepestOf(level, rank, 0, [2, 3, 4]), steepestOf(level, rank, 3, [2, 1])]).toEqual([3, 1]);
  });
});

describe('arrows', () => {
  it('stand at the middle of their triangles', () => {
    // A kite: its short diagonal at x = 12 parts it into two triangles. It falls 0.1 to the right.
    eachLook({ points: spots([[10, 20, 1], [12, 19, 0.8], [14, 20, 0.6], [12, 21, 0.8]]) }, (ground, look) => {
      const arrows = flowArrows(ground);
      expect(arrows).toHaveLength(2);
      expect(arrows.map(({ from }) => from)).toEqual(expect.arrayContaining([near(look({ x: 34 / 3, y: 20 })), near(look({ x: 38 / 3, y: 20 }))]));
      for (const { direction, slope } of arrows) expect([direction, slope]).toEqual([near(look({ x: 1, y: 0 })), expect.closeTo(0.1, 12)]);
    });
  });
});

describe('catchments', () => {
  it('a triangle over a divide belongs where its middle drains', () => {
    // P Q V falls to V, which stands on the divide between the pit on the left and the one on the right; its middle is right of V.
    for (const far of [100, -100]) {
      const [p, q, v] = [[0, 4, 2], [8, 4, 2], [2, 0, 1]].map(([x, y, level]) => ({ x: x! + far, y: y! + far, level: level! })) as [Spot, Spot, Spot];
      const points = spots([[-3, 1, 0], [10, 1, 0], [2, -6, 5], [-8, 8, 5], [-8, -6, 5], [14, 8, 5], [14, -6, 5], [3, 9, 5]].map(([x, y, level]) => [x! + far, y! + far, level!] as const));
      eachLook({ points, breaklines: [{ id: 'B', points: [p, q, v, p] }] }, (ground, look) => {
        const drainage = findLowSpots(ground);
        const face = faceAt(ground, look({ x: 3 + far, y: 3 + far }));
        const owner = groundCatchments(ground, drainage).find(({ faces }) => faces.includes(face))!;
        expect(drainage.lowSpots[owner.lowSpot!]!.bottom).toMatchObject(look({ x: 10 + far, y: 1 + far }));
      });
    }
  });
});
