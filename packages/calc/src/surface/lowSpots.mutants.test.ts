import { describe, expect, it, vi } from 'vitest';
import { eachLook, near, vertexAt } from '../testing/looks.ts';
import { grid } from '../testing/surveys.ts';
import { documentLowSpots } from './documentLowSpots.ts';
import { findLowSpots } from './lowSpots.ts';
import { stageAt } from './stage.ts';
import type { SurfaceInput } from './surface.ts';
import { triangulateSurface } from './triangulate.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 60_000 });

describe('low spots at their limits', () => {
  const bowl = (levels: readonly number[], rim = 2): SurfaceInput => ({ points: grid(levels.length + 1, 2, 1, (x, y) => (y === 1 ? (levels[x - 1] ?? rim) : rim + 1)) });
  it('a hundredth of a foot counts, less does not, and the depth asked for itself counts', () => {
    const found = (depth: number, least?: number) => findLowSpots(triangulateSurface(bowl([1 - depth], 1)), least).lowSpots.length;
    expect([found(0.0031), found(0.003), found(0.5, 0.5), found(0.5, 0.51), found(0.25, 0)]).toEqual([1, 0, 1, 0, 1]);
    expect(findLowSpots(triangulateSurface({ points: grid(4, 4, 1, () => 3) }), 0).lowSpots).toEqual([]);
    expect(() => findLowSpots(triangulateSurface(bowl([1])), Infinity)).toThrow('surface.badDepth');
  });

  it('of shallow hollows side by side the lowest holds their common water', () => {
    // Dents at 0.001 and 0 with 0.002 between them, in a trough to 2.
    eachLook(bowl([0.5, 0.001, 0.002, 0, 0.5]), (ground, look) => {
      const { lowSpots, drainsTo } = findLowSpots(ground);
      expect(lowSpots).toMatchObject([{ bottom: { ...near(look({ x: 4, y: 1 })), level: 0 }, spillLevel: 2, parent: null, children: [], spillsTo: null }]);
      const all = Array.from({ length: ground.triangles.length / 3 }, (_, face) => face);
      expect(lowSpots[0]!.volume).toBeCloseTo(stageAt(ground, all, 2).volume, 12);
      for (const x of [1, 2, 3, 4, 5]) expect(drainsTo[vertexAt(ground, look({ x, y: 1 }))]).toBe(0);
    });
  });

  it('a shallow dent beside a deep pit is part of it, also where walls hold the water', () => {
    const yard = [{ id: 'W', points: [[0, 0], [6, 0], [6, 2], [0, 2], [0, 0]].map(([x, y]) => ({ x: x!, y: y! })) }];
    for (const walls of [[], yard]) {
      eachLook({ ...bowl([1.5, 0.999, 1, 0, 0.5]), walls }, (ground) => {
        const { lowSpots } = findLowSpots(ground);
        expect(lowSpots).toMatchObject([{ bottom: { level: 0 }, spillLevel: walls.length === 0 ? 2 : null, topLevel: walls.length === 0 ? 2 : 3, parent: null, children: [] }]);
      });
    }
  });

  it('three in a row spill from one to the next, and what drains where', () => {
    // Pits 0, 0.2 and 0.4 with rims 1, 1.2; all leave over 2 at an end.
    eachLook(bowl([0, 1, 0.2, 1.2, 0.4]), (ground, look) => {
      const drainage = findLowSpots(ground);
      const at = (x: number) => drainage.lowSpots.find((spot) => spot.children.length === 0 && Math.abs(spot.bottom.x - look({ x, y: 1 }).x) + Math.abs(spot.bottom.y - look({ x, y: 1 }).y) < 1e-9)!;
      expect([1, 3, 5].map((x) => [at(x).spillLevel, at(x).spillsTo])).toEqual([[1, at(3).index], [1, at(1).index], [1.2, at(3).index]]);
      const [first, second] = drainage.lowSpots.filter((spot) => spot.children.length > 0);
      expect([first!.children.toSorted((p, q) => p - q), first!.spillLevel, first!.spillsTo, first!.parent]).toEqual([[at(1).index, at(3).index].toSorted((p, q) => p - q), 1.2, at(5).index, second!.index]);
      expect([second!.spillLevel, second!.spillsTo, second!.parent, second!.bottom.level, second!.topLevel]).toEqual([2, null, null, 0, 2]);
      for (const x of [1, 3, 5]) {
        expect(drainage.drainsTo[vertexAt(ground, look({ x, y: 1 }))]).toBe(at(x).index);
        expect(drainage.lowSpotAt.get(vertexAt(ground, look({ x, y: 1 })))).toBe(at(x).index);
      }
      expect(drainage.shallowAt.size).toBe(0);
      const made = documentLowSpots(ground, drainage);
      expect(made).toMatchObject([{ index: second!.index, rimLevel: 2, spillsTo: null, within: expect.arrayContaining([1, 3, 5].map((x) => at(x).index)) }]);
      expect(made[0]!.stageArea.at(-1)!.level).toBe(2);
    });
  });

  it('a document takes no level hollow and none of a micrometer', () => {
    const ground = triangulateSurface(bowl([2 - 9e-7]));
    expect(documentLowSpots(ground, findLowSpots(ground, 0))).toEqual([]);
    const deeper = triangulateSurface(bowl([2 - 3e-6]));
    expect(documentLowSpots(deeper, findLowSpots(deeper, 0))).toHaveLength(1);
    // One that spills into a hollow that is left out leaves the ground as far as the document knows.
    const pair = triangulateSurface(bowl([1, 1.5, 1.5 - 5e-7, 1.5]));
    expect(documentLowSpots(pair, findLowSpots(pair, 0)).map(({ spillsTo }) => spillsTo)).toEqual([null]);
  });
});
