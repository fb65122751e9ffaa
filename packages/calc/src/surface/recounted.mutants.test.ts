import { describe, expect, it, vi } from 'vitest';
import { near, recounted } from '../testing/looks.ts';
import { grid, spots } from '../testing/surveys.ts';
import { stepFromVertex } from './descent.ts';
import { ringArea, waterExtent } from './extent.ts';
import { groundFaces } from './faces.ts';
import { flowPath } from './flowPath.ts';
import { findLowSpots } from './lowSpots.ts';
import { stageAt } from './stage.ts';
import { WALL } from './surface.ts';
import type { Ground, Position, SurfaceInput } from './surface.ts';
import { triangulateSurface } from './triangulate.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 60_000 });

const closed = (rows: readonly (readonly [number, number])[]) => [{ id: 'W', points: [...rows, rows[0]!].map(([x, y]) => ({ x, y })) }];
const row = (levels: readonly number[], rim = 3): SurfaceInput => ({ points: grid(levels.length - 1, 2, 1, (x, y) => (y === 1 ? levels[x]! : rim + (x + 3 * y) / 100)) });
const gully: SurfaceInput = { points: grid(5, 4, 1, (x, y) => (x === 3 && y === 1 ? 4 : 5 - x / 8 - y / 999)) };
const valley: SurfaceInput = { points: grid(6, 4, 1, (x, y) => (x <= 3 ? Math.abs(y - 2) / 4 - x / 8 : -0.4 - (x - 3) * 0.06 - (y - 2) * 0.08)) };
const walled: SurfaceInput = { points: grid(6, 5, 1, (x, y) => 5 - x / 10 - y / 50), walls: [{ id: 'W', points: [{ x: 3.5, y: 0.5, level: 4.64 }, { x: 3.5, y: 3.5, level: 4.58 }] }] };
const twin: SurfaceInput = { points: spots([[0, 0, 3], [5, 0, 3.1], [10, 0, 3.2], [0, 4, 3.3], [5, 4, 3.4], [10, 4, 3.5], [0, 2, 3.6], [5, 2, 1.6], [10, 2, 1.8], [2.5, 2, 1], [7.5, 2, 1.2]]) };
const yard: SurfaceInput = { ...row([1, -1, 0.0995, 0.1, 0.098, 0.2, 0.3], 2), walls: closed([[0, 0], [6, 0], [6, 2], [0, 2]]) };
const yards: SurfaceInput = {
  points: [...grid(4, 4, 1, (x, y) => (x === 2 && y === 2 ? 0 : 2 + (x * 5 + y) / 100)), ...grid(3, 3, 1, (x, y) => (x === 1 && y === 1 ? 0.2 : 2 + (x + y * 4) / 100)).map((p) => ({ ...p, x: p.x + 6 }))],
  walls: [...closed([[0, 0], [4, 0], [4, 4], [0, 4]]), ...closed([[6, 0], [9, 0], [9, 3], [6, 3]])],
};
const halves: SurfaceInput = { points: grid(6, 4, 1, (x, y) => (y === 0 || y === 4 || x === 0 || x === 6 ? 2 : 1 + (x * 5 + y * 3) / 1000)), walls: [{ id: 'W', points: [{ x: 3, y: 0 }, { x: 3, y: 4 }] }] };
const island: SurfaceInput = { points: grid(8, 8, 1, (x, y) => { const away = Math.max(Math.abs(x - 4), Math.abs(y - 4)); return (away > 3 ? 3 : away > 1 ? 1 : 2.5) + (x * 7 + y * 3) / 9999; }) };

describe('from wherever vertices and triangles are counted', () => {
  it('water takes the same ways', () => {
    for (const [input, starts] of [[gully, [[0.5, 2], [1.2, 3.1], [4.2, 3.3]]], [valley, [[0.75, 3.5], [1.3, 0.4], [2, 2]]], [walled, [[1.2, 1.3], [0.4, 4.4]]], [row([0.501, 0.5, 0.6, 0.7, 0.8], 2), [[3.2, 1.3]]], [yard, [[5.5, 1], [4.3, 1.6]]]] as const) {
      const ground = triangulateSurface(input);
      for (const [x, y] of starts) {
        const wanted = flowPath(ground, findLowSpots(ground), { x, y });
        for (const other of recounted(ground)) expect(flowPath(other, findLowSpots(other), { x, y }).points).toEqual(wanted.points.map(near));
      }
    }
  });

  const rough = triangulateSurface({ points: grid(5, 5, 1, (x, y) => ((x * 29 + y * 17 + x * y * 11) % 31) / 10 + x / 100 + y / 1000) });
  const steep = triangulateSurface({ points: grid(6, 4, 1, (x, y) => ((x * 13 + y * 23 + x * y * 7) % 19) / 4 + x / 100 + y / 1000) });
  it('steps down from a vertex are the same, and its neighbors', () => {
    for (const ground of [rough, steep]) {
      const steps = (other: Ground) => {
        const drainage = findLowSpots(other);
        return other.x.map((x, v) => {
          const step = stepFromVertex(other, drainage, v);
          const face = step?.at === 'face' ? [0, 1, 2].map((k) => other.triangles[3 * step.face + k]!).map((c) => `${other.x[c]!} ${other.y[c]!}`).sort().join() : '';
          const around = drainage.neighbors.of[v]!.map((n) => `${other.x[n]!} ${other.y[n]!}`).sort().join();
          return [x, other.y[v], step?.at, step?.place.x, step?.place.y, face, around, drainage.neighbors.open[v]].join(' | ');
        }).sort();
      };
      const wanted = steps(ground);
      for (const other of recounted(ground)) expect(steps(other)).toEqual(wanted);
    }
  });

  const told = (ground: Ground, least?: number) => {
    const { lowSpots, drainsTo } = findLowSpots(ground, least);
    const name = (index: number | null): string => (index === null || index < 0 ? 'off' : `${lowSpots[index]!.bottom.x} ${lowSpots[index]!.bottom.y} ${lowSpots[index]!.topLevel}`);
    return [
      ...lowSpots.map((spot) => [name(spot.index), spot.spillLevel, name(spot.spillsTo), name(spot.parent), spot.children.map(name).sort().join(), spot.volume.toFixed(9)].join(' | ')).sort(),
      ...ground.x.map((x, v) => `${x} ${ground.y[v]!} to ${name(drainsTo[v]!)}`).sort(),
    ];
  };
  it('low spots are the same, and what drains into them', () => {
    for (const input of [row([2.5, 0, 1, 0.2, 1.2, 0.4, 2]), row([0.501, 0.5, 2, 0, 1, 0.2, 2.5]), row([1.3, 0, 1, 0.2, 1.5, 1.2, 2]), twin, yard]) {
      const ground = triangulateSurface(input);
      const wanted = told(ground);
      for (const other of recounted(ground)) expect(told(other)).toEqual(wanted);
    }
    const level = triangulateSurface(row([2, 1, 1, 1, 2]));
    for (const other of recounted(level)) expect(findLowSpots(other, 0).lowSpots).toHaveLength(1);
  });

  it('water covers the same ground: rings without a place twice, holes with an area', () => {
    const ringsOf = (ground: Ground, level: number, most: (spot: { topLevel: number }) => boolean): Position[][] =>
      findLowSpots(ground).lowSpots.filter((spot) => spot.bottom.level <= level && most(spot)).flatMap((spot) => waterExtent(ground, spot, Math.min(level, spot.topLevel)).flatMap(({ outer, holes }) => [[...outer], ...holes.map((hole) => [...hole])]));
    const areas = (ground: Ground, level: number) => ringsOf(ground, level, () => true).map((ring) => {
      const again = ring.some((p, i) => { const q = ring[(i + 1) % ring.length]!; return p.x === q.x && p.y === q.y; });
      return again || Math.abs(ringArea(ring)) < 1e-12 ? 'a place twice, or no area' : ringArea(ring).toFixed(7);
    }).sort();
    for (const [input, levels] of [[twin, [1.1, 1.2, 1.6, 1.7]], [halves, [1.005, 1.02, 1.5]], [island, [1.01, 1.5, 2]], [yard, [-0.5, 0.0995, 0.15, 1]], [yards, [0.5, 1, 1.5]]] as const) {
      const ground = triangulateSurface(input);
      for (const level of levels) {
        const wanted = areas(ground, level);
        expect(wanted).not.toContain('a place twice, or no area');
        for (const other of recounted(ground)) expect(areas(other, level)).toEqual(wanted);
        for (const spot of findLowSpots(ground).lowSpots.filter(({ bottom, topLevel }) => bottom.level <= level && level <= topLevel)) {
          const sum = waterExtent(ground, spot, level).reduce((all, { outer, holes }) => all + ringArea(outer) + holes.reduce((less, hole) => less + ringArea(hole), 0), 0);
          expect(sum).toBeCloseTo(stageAt(ground, spot.faces, level).area, 7);
        }
      }
    }
  });

  it('a building is one, also when its inner edge is the first', () => {
    const mesh = {
      x: [0, 4, 4, 0], y: [0, 0, 3, 3], triangles: Int32Array.from([0, 2, 3, 2, 0, 1]), twins: Int32Array.from([3, -1, -1, 0, -1, -1]),
      lines: Uint8Array.from([0, WALL, WALL, 0, WALL, WALL]), leaving: Int32Array.from([4, 5, 1, 2]),
    };
    expect([...groundFaces(mesh, [1, 1, 1, 1], false)]).toEqual([0, 0]);
  });
});
