import { describe, expect, it, vi } from 'vitest';
import { eachLook, near, vertexAt } from '../testing/looks.ts';
import { grid } from '../testing/surveys.ts';
import { lowestCorner, stepFromVertex } from './descent.ts';
import { descend, flowPath } from './flowPath.ts';
import { faceAt, gradientOf, levelAt } from './locate.ts';
import { findLowSpots } from './lowSpots.ts';
import { triangulateSurface } from './triangulate.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 60_000 });

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

  it('from a vertex of rough ground: as steep as any direction round it, by the degree and along every edge', () => {
    eachLook({ points: grid(5, 5, 1, (x, y) => ((x * 29 + y * 17 + x * y * 11) % 31) / 10 + x / 100 + y / 1000) }, (ground, look) => {
      const middle = look({ x: 2.5, y: 2.5 });
      const drainage = findLowSpots(ground);
      let inside = 0;
      ground.x.forEach((x, vertex) => {
        const y = ground.y[vertex]!;
        let steepest = 0;
        const around = Array.from({ length: 360 }, (_, k) => (k * Math.PI) / 180);
        const toOthers = ground.x.map((ox, v) => Math.atan2(ground.y[v]! - y, ox - x));
        for (const angle of [...around, ...toOthers]) {
          const place = { x: x + 0.01 * Math.cos(angle), y: y + 0.01 * Math.sin(angle) };
          const there = levelAt(ground, place);
          if (there !== null && Math.abs(place.x - middle.x) <= 2.5 + 1e-9 && Math.abs(place.y - middle.y) <= 2.5 + 1e-9) steepest = Math.max(steepest, (ground.level[vertex]! - there) / 0.01);
        }
        const step = stepFromVertex(ground, drainage, vertex);
        const rise = step?.at === 'face' ? gradientOf(ground, step.face) : null;
        if (step?.at === 'face') expect([0, 1, 2].map((k) => ground.triangles[3 * step.face + k])).toContain(vertex);
        if (rise) inside += 1;
        const found = step === null || step.at === 'off' ? 0 : rise ? Math.sqrt(rise.x * rise.x + rise.y * rise.y) : (ground.level[vertex]! - levelAt(ground, step.place)!) / Math.sqrt((step.place.x - x) * (step.place.x - x) + (step.place.y - y) * (step.place.y - y));
        expect(Math.abs(found - steepest)).toBeLessThan(0.004 * Math.max(1, steepest));
      });
      expect(inside).toBeGreaterThan(3);
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

  it('from a vertex on it goes as water that begins there: down a gully, or out of a valley onto a plane', () => {
    // A slope of 1/8 to the right with a deep place below it; a valley along y = 2 that opens onto a plane at x = 3.
    const gully = grid(5, 4, 1, (x, y) => (x === 3 && y === 1 ? 4 : 5 - x / 8));
    const valley = grid(8, 4, 1, (x, y) => (x <= 3 ? Math.abs(y - 2) / 4 - x / 8 : -0.4 - (x - 3) * 0.06 - (y - 2) * 0.08));
    for (const [points, from, through] of [[gully, { x: 0.5, y: 2 }, { x: 2, y: 2 }], [valley, { x: 0.75, y: 3.5 }, { x: 3, y: 2 }]] as const) {
      eachLook({ points }, (ground, look) => {
        const drainage = findLowSpots(ground);
        const path = flowPath(ground, drainage, look(from)).points;
        const vertex = vertexAt(ground, look(through));
        const at = path.findIndex((p) => Math.abs(p.x - ground.x[vertex]!) + Math.abs(p.y - ground.y[vertex]!) < 1e-12);
        expect(at).toBeGreaterThan(0);
        const own = descend(ground, drainage, { at: 'vertex', vertex, place: { x: ground.x[vertex]!, y: ground.y[vertex]! } }, new Map()).points;
        expect(path.slice(at)).toEqual(own.map(near));
      });
    }
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

  it('over a gentle rim as well, and into a low spot at a wall', () => {
    // Back into the hollow it falls 2 mm in a meter, on over the rim 0.5 mm.
    const gentle = [1, -1, 0.0995, 0.1, 0.098, 0.2, 0.3, 0.4];
    eachLook({ points: grid(7, 2, 1, (x, y) => (y === 1 ? gentle[x]! : 2 + x / 100)).map((p) => ({ ...p, x: p.x - 1 })) }, (ground, look) => {
      expect(flowPath(ground, findLowSpots(ground), look({ x: 3.5, y: 1 })).points).toEqual([3.5, 3, 2, 1, 0].map((x) => near(look({ x, y: 1 }))));
    });
    const yard = [{ id: 'W', points: [[0, 0], [6, 0], [6, 2], [0, 2], [0, 0]].map(([x, y]) => ({ x: x!, y: y! })) }];
    eachLook({ points: grid(6, 2, 1, (x, y) => (y === 1 ? gentle[x + 1]! : 2 + x / 100)), walls: yard }, (ground, look) => {
      const { drainsTo } = findLowSpots(ground);
      for (let x = 0; x <= 6; x += 1) expect(drainsTo[vertexAt(ground, look({ x, y: 1 }))]).toBe(0);
    });
    const slope = triangulateSurface({ points: grid(3, 3, 1, (x) => 2 - x / 10) });
    for (let face = 0; face < 3; face += 1) {
      const [x, y] = [slope.x, slope.y].map((axis) => [0, 1, 2].reduce((sum, k) => sum + axis[slope.triangles[3 * face + k]!]! / 3, 0)) as [number, number];
      expect(flowPath(slope, findLowSpots(slope), { x, y }).points[0]).toEqual({ x, y });
    }
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
