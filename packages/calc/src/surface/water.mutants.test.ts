import { describe, expect, it, vi } from 'vitest';
import { eachLook, near, vertexAt } from '../testing/looks.ts';
import { grid, spots } from '../testing/surveys.ts';
import { groundCatchments } from './catchments.ts';
import { lowestCorner, stepFromVertex } from './descent.ts';
import { flowArrows } from './flowArrows.ts';
import { descend, flowPath } from './flowPath.ts';
import { faceAt } from './locate.ts';
import { findLowSpots } from './lowSpots.ts';
import { distanceBetween, neighborsOf, steepestOf } from './neighbors.ts';
import type { Ground, SurfaceInput } from './surface.ts';
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
type Spot = { readonly x: number; readonly y: number; readonly level: number };

describe('one step down', () => {
  const plane = { points: grid(4, 4, 1, (x, y) => 5 - 0.03 * x - 0.04 * y) };
  it('from a vertex of a plane: straight down into the triangle there, along the steepest edge where that leads off', () => {
    eachLook(plane, (ground, look) => {
      const drainage = findLowSpots(ground);
      expect([new Set(drainage.flood.hollowOf), new Set(drainage.drainsTo), drainage.lowSpots]).toEqual([new Set([-1]), new Set([-1]), []]);
      for (let i = 0; i <= 4; i += 1) {
        for (let j = 0; j <= 4; j += 1) {
          const vertex = vertexAt(ground, look({ x: i, y: j }));
          const step = stepFromVertex(ground, drainage, vertex);
          if (i < 4 && j < 4) expect(step).toEqual({ at: 'face', face: faceAt(ground, look({ x: i + 0.06, y: j + 0.08 })), place: { x: ground.x[vertex], y: ground.y[vertex] } });
          else if (i === 4 && j === 4) expect(step).toBeNull();
          else expect(step).toMatchObject({ at: 'vertex', place: near(look(i === 4 ? { x: 4, y: j + 1 } : { x: i + 1, y: 4 })) });
        }
      }
    });
  });

  it('the corner of a triangle that was flooded first is its lowest', () => {
    const ground = triangulateSurface({ points: grid(4, 4, 1, (x, y) => ((x * 7 + y * 11) % 13) + x / 10 + y / 100) });
    const drainage = findLowSpots(ground);
    for (let face = 0; 3 * face < ground.triangles.length; face += 1) {
      const levels = [0, 1, 2].map((k) => ground.level[ground.triangles[3 * face + k]!]!);
      expect(ground.level[lowestCorner(ground, drainage, face)]).toBe(Math.min(...levels));
    }
  });
});

describe('ways of water', () => {
  it('over a plane: straight, through every edge in turn, off at the right place, however steep', () => {
    for (const slope of [0.01, 5]) {
      for (const [dx, dy] of [[1, 0], [0.6, 0.8], [0.8, -0.6]] as const) {
        eachLook({ points: grid(8, 8, 0.5, (x, y) => 9 - slope * (dx * x + dy * y)) }, (ground, look) => {
          const start = { x: 1.1, y: 1.7 };
          const { points, lowSpot } = flowPath(ground, findLowSpots(ground), look(start));
          expect(lowSpot).toBeNull();
          const reach = Math.min((4 - 1.1) / dx, dy > 0 ? (4 - 1.7) / dy : dy < 0 ? -1.7 / dy : Infinity);
          expect(points.at(-1)).toEqual(near(look({ x: 1.1 + reach * dx, y: 1.7 + reach * dy })));
          const down = look({ x: dx, y: dy });
          const from = look(start);
          points.slice(1).forEach((p, i) => {
            const before = points[i]!;
            expect((p.x - from.x) * down.y - (p.y - from.y) * down.x).toBeCloseTo(0, 9);
            const step = (p.x - before.x) * down.x + (p.y - before.y) * down.y;
            expect(step).toBeGreaterThan(0);
            expect(step).toBeLessThan(0.71);
          });
        });
      }
    }
  });

  it('through the vertices of a raster: each of them once', () => {
    eachLook({ points: grid(4, 4, 1, (x) => 5 - x / 8) }, (ground, look) => {
      const { points } = flowPath(ground, findLowSpots(ground), look({ x: 0.5, y: 2 }));
      // from (4, 2) on it may go along the level edge of the ground
      expect(points.filter(({ x, y }) => x === Math.floor(x) && y === Math.floor(y)).slice(0, 4)).toEqual([1, 2, 3, 4].map((x) => near(look({ x, y: 2 }))));
    });
  });

  it('over a level bench to its edge and down', () => {
    // Level from x = 1 to 2, then down to x = 4: from the bench to a vertex at its lower side, and straight on.
    eachLook({ points: grid(4, 3, 1, (x, y) => (x <= 2 ? 1 : 1 - (x - 2) / 4) + (y === 0 || y === 3 || x === 0 ? 0.5 : 0)) }, (ground, look) => {
      const { points, lowSpot } = flowPath(ground, findLowSpots(ground), look({ x: 1.4, y: 1.6 }));
      expect(lowSpot).toBeNull();
      const [last, right] = [points.at(-1)!, look({ x: 1, y: 0 })];
      expect(last.x * right.x + last.y * right.y).toBeCloseTo(4, 9);
      expect([1, 2].map((y) => look({ x: 2, y })).some((goal) => points.some((p) => Math.abs(goal.x - p.x) + Math.abs(goal.y - p.y) < 1e-9))).toBe(true);
    });
  });

  it('to a wall and along it to its lower end', () => {
    // The plane falls 0.1 to the right and 0.02 up; a wall stands at x = 3.5 from y = 0.5 to 4.5.
    const wall = [{ id: 'W', points: [{ x: 3.5, y: 0.5, level: 4.64 }, { x: 3.5, y: 4.5, level: 4.56 }] }];
    eachLook({ points: grid(6, 6, 1, (x, y) => 5 - x / 10 - y / 50), walls: wall }, (ground, look) => {
      const { points } = flowPath(ground, findLowSpots(ground), look({ x: 1.2, y: 1.3 }));
      // 1.3 + (3.5 - 1.2) x 0.2 = 1.76
      expect(points).toContainEqual(near(look({ x: 3.5, y: 1.76 })));
      expect(points).toContainEqual(near(look({ x: 3.5, y: 4.5 })));
      expect(points.at(-1)).toEqual(near(look({ x: 6, y: 5 })));
    });
  });

  // A channel along y = 1 between banks: a hollow of 2 mm at x = 4 spills over x = 2 into the low spot at x = 0.
  const bed = [1, -1, 0, 0.1, 0.099, 0.098, 0.2, 0.3];
  const channel = { points: grid(7, 2, 1, (x, y) => (y === 1 ? bed[x]! : 2 + x / 100)).map((p) => ({ ...p, x: p.x - 1 })) };
  it('through a hollow too shallow to count: to its bottom, over its rim and on to the low spot', () => {
    eachLook(channel, (ground, look) => {
      const drainage = findLowSpots(ground);
      expect(drainage.lowSpots).toHaveLength(1);
      const { points, lowSpot } = flowPath(ground, drainage, look({ x: 5.5, y: 1 }));
      expect(lowSpot).toBe(0);
      expect(points).toEqual([5.5, 5, 4, 3, 2, 1, 0].map((x) => near(look({ x, y: 1 }))));
      expect([...drainage.drainsTo].filter((goal) => goal === 0).length).toBeGreaterThan(7);
      for (let x = 0; x <= 5; x += 1) expect(drainage.drainsTo[vertexAt(ground, look({ x, y: 1 }))]).toBe(0);
    });
  });

  it('over the rim at the open edge it is off', () => {
    eachLook({ points: grid(4, 2, 1, (x, y) => (y === 1 ? [0.501, 0.5, 0.6, 0.7, 0.8][x]! : 2)) }, (ground, look) => {
      const drainage = findLowSpots(ground);
      expect(drainage.lowSpots).toEqual([]);
      const { points, lowSpot } = flowPath(ground, drainage, look({ x: 2.5, y: 1 }));
      expect([lowSpot, points]).toEqual([null, [2.5, 2, 1, 0].map((x) => near(look({ x, y: 1 })))]);
      expect(new Set(drainage.drainsTo)).toEqual(new Set([-1]));
    });
  });

  it('what is known of a vertex is kept for the next way', () => {
    const ground = triangulateSurface(channel);
    const drainage = findLowSpots(ground);
    const known = new Map<number, number | null>();
    const at = (x: number) => vertexAt(ground, { x, y: 1 });
    const from = (x: number) => ({ at: 'vertex', vertex: at(x), place: { x, y: 1 } }) as const;
    expect(descend(ground, drainage, from(4), known).lowSpot).toBe(0);
    expect([...known].sort(([p], [q]) => p - q)).toEqual([0, 1, 2, 3, 4].map((x) => [at(x), 0]).sort(([p], [q]) => p! - q!).filter(([v]) => known.has(v!)));
    expect([known.get(at(4)), known.get(at(0))]).toEqual([0, 0]);
    const told = new Map<number, number | null>([[at(1), 77]]);
    expect(descend(ground, drainage, from(4), told)).toEqual({ points: [4, 3, 2, 1].map((x) => ({ x, y: 1 })), lowSpot: 77 });
  });
});
