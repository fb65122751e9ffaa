import { describe, expect, it, vi } from 'vitest';
import { eachLook, near, vertexAt } from '../testing/looks.ts';
import { grid, spots } from '../testing/surveys.ts';
import { documentLowSpots } from './documentLowSpots.ts';
import { findLowSpots } from './lowSpots.ts';
import { stageAt } from './stage.ts';
import { stageAreaOf } from './stageTable.ts';
import type { SurfaceInput } from './surface.ts';
import { triangulateSurface } from './triangulate.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 60_000 });

describe('low spots at their limits', () => {
  const row = (levels: readonly number[]): SurfaceInput => ({ points: grid(levels.length - 1, 2, 1, (x, y) => (y === 1 ? levels[x]! : 3)) });
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
    // The pit at 1.2 spills over 1.5 into a hollow of half a micrometer, which is left out and runs over 1.3 off the ground.
    const pair = triangulateSurface(row([1.3, 1.3 - 5e-7, 1.5, 1.2, 2]));
    expect(documentLowSpots(pair, findLowSpots(pair, 0)).map(({ rimLevel, spillsTo }) => [rimLevel, spillsTo])).toEqual([[1.5, null]]);
  });

  it('a document knows the outermost low spot that is spilled into', () => {
    // The pit at 1.2 spills over 1.5 into the pits at 0 and 0.2, which join at 1 and run over 1.3 off the ground.
    eachLook(row([1.3, 0, 1, 0.2, 1.5, 1.2, 2]), (ground) => {
      const drainage = findLowSpots(ground);
      const [below, above] = documentLowSpots(ground, drainage).toSorted((p, q) => p.rimLevel - q.rimLevel);
      expect([below!.rimLevel, below!.spillsTo, below!.within.length, above!.rimLevel, above!.spillsTo, above!.within]).toEqual([1.3, null, 2, 1.5, below!.index, [above!.index]]);
    });
  });

  it('what falls away outside of the rims drains nowhere', () => {
    const ground = triangulateSurface(row([2.5, 0, 1, 0.2, 2, 1.5, 1]));
    const { drainsTo, lowSpots } = findLowSpots(ground);
    expect([lowSpots.length, ...[5, 6].map((x) => drainsTo[vertexAt(ground, { x, y: 1 })])]).toEqual([3, -1, -1]);
  });

  it('a shallow hollow at the open edge drains off beside others that hold water', () => {
    eachLook(row([0.501, 0.5, 2, 0, 1, 0.2, 2.5]), (ground, look) => {
      const { drainsTo, lowSpots } = findLowSpots(ground);
      expect([lowSpots.length, ...[0, 1].map((x) => drainsTo[vertexAt(ground, look({ x, y: 1 }))])]).toEqual([3, -1, -1]);
    });
  });

  it('water within walls is known to the highest ground, wherever that stands', () => {
    const walls = [{ id: 'W', points: [[0, 0], [4, 0], [4, 3], [0, 3], [0, 0]].map(([x, y]) => ({ x: x!, y: y! })) }];
    for (let high = 0; high < 4; high += 1) {
      const points = spots([[0, 0, 1.2], [4, 0, 1.2], [4, 3, 1.2], [0, 3, 1.2], [1, 1, 1]]).map((p, i) => (i === high ? { ...p, level: 1.9 } : p));
      eachLook({ points, walls }, (ground) => { expect(findLowSpots(ground).lowSpots).toMatchObject([{ topLevel: 1.9, area: expect.closeTo(12, 9) }]); });
    }
  });

  it('two level bottoms that meet at their own level are one', () => {
    const [first, second, between, ...others] = [[1, 1, 1], [3, 1, 1], [2, 1, 1], ...row([2, 2, 2, 2, 2]).points.map(({ x, y, level }) => [x, y, level])].filter(([x, y, level]) => level !== 2 || y !== 1 || x === 0 || x === 4) as [number, number, number][];
    expect(findLowSpots(triangulateSurface({ points: spots([first!, second!, between!, ...others]) }), 0).lowSpots).toHaveLength(1);
  });

  it('a table has two hundred rows at most', () => {
    const rough = triangulateSurface({ points: grid(22, 22, 1, (x, y) => (x === 0 || y === 0 || x === 22 || y === 22 ? 9 : ((x * 37 + y * 101 + x * y * 13) % 997) / 500)) });
    expect(documentLowSpots(rough, findLowSpots(rough))[0]!.stageArea).toHaveLength(200);
    const [outermost] = findLowSpots(rough).lowSpots.slice(-1);
    expect(stageAreaOf(rough, outermost!)).toHaveLength(200);
  });
});
