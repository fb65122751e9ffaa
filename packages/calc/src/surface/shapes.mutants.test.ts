import { describe, expect, it, vi } from 'vitest';
import { expectProblems } from '../testing/expectProblems.ts';
import { looks } from '../testing/looks.ts';
import { expectRatio } from '../testing/near.ts';
import { grid, spots } from '../testing/surveys.ts';
import { contourLines, MOST_CONTOUR_LEVELS } from './contours.ts';
import { ringArea, waterExtent } from './extent.ts';
import { groundProfile } from './groundProfile.ts';
import { findLowSpots } from './lowSpots.ts';
import type { GroundLowSpot } from './lowSpots.ts';
import { chainFrom, placesOf, shoreAcross } from './shore.ts';
import { facetArea, facetVolume, stageAt, stagesAt } from './stage.ts';
import { stageAreaOf } from './stageTable.ts';
import type { Ground, Position, SurfaceInput } from './surface.ts';
import { triangulateSurface } from './triangulate.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 60_000 });

const allFaces = (ground: Ground): number[] => Array.from({ length: ground.triangles.length / 3 }, (_, i) => i);
const lengthOf = (points: readonly Position[], closed: boolean): number => points.reduce((sum, p, i) => {
  const q = points[i + 1] ?? (closed ? points[0]! : p);
  return sum + Math.sqrt((q.x - p.x) * (q.x - p.x) + (q.y - p.y) * (q.y - p.y));
}, 0);
const pyramid: SurfaceInput = { points: spots([[0, 0, 3], [4, 0, 3], [4, 6, 3], [0, 6, 3], [2, 3, 0]]) };

describe('a triangle under water', () => {
  it('of area 6 with corners at 1, 2 and 4: by similar triangles at every level', () => {
    const facet = { low: 1, middle: 2, high: 4, area: 6 };
    // Up to the middle corner 6 (h - 1)^2/3 and a third of it times the depth; above it what is left dry is 6 (4 - h)^2/6.
    expect([0, 1, 1.5, 2, 3, 4, 9].map((h) => facetArea(facet, h))).toEqual([0, 0, 0.5, 2, 5, 6, 6]);
    // Prism 6 (h - 7/3) and, above the middle, the dry pyramid (4 - h)^3/3.
    expect([0, 1, 1.5, 2, 3, 4, 9].map((h) => facetVolume(facet, h))).toEqual([0, 0, 0.25 / 3, 2 / 3, 4 + 1 / 3, 10, 40].map((value) => expect.closeTo(value, 12)));
  });

  it('with two corners at one level, or all three', () => {
    const [floor, ridge, level] = [{ low: 1, middle: 1, high: 3, area: 2 }, { low: 1, middle: 3, high: 3, area: 2 }, { low: 1, middle: 1, high: 1, area: 2 }];
    // Floor: dry 2 (3 - h)^2/4. Ridge: wet 2 (h - 1)^2/4.
    expect([1, 2, 3, 4].map((h) => [facetArea(floor, h), facetArea(ridge, h), facetArea(level, h)])).toEqual([[0, 0, 0], [1.5, 0.5, 2], [2, 2, 2], [2, 2, 2]]);
    expect([1, 2, 3, 4].map((h) => [facetVolume(floor, h), facetVolume(ridge, h), facetVolume(level, h)])).toEqual([[0, 0, 0], [5 / 6, 1 / 6, 2], [8 / 3, 4 / 3, 4], [14 / 3, 10 / 3, 6]].map((row) => row.map((value) => expect.closeTo(value, 12))));
  });

  it('levels may repeat, not fall; no triangles hold no water', () => {
    const ground = triangulateSurface(pyramid);
    const [one, same, top] = stagesAt(ground, allFaces(ground), [1.5, 1.5, 3]);
    expect([one!.volume, same, top]).toEqual([expect.closeTo(3, 12), one, { level: 3, area: 24, volume: expect.closeTo(24, 12) }]);
    expect(stagesAt(ground, [], [-1, 5])).toEqual([{ level: -1, area: 0, volume: 0 }, { level: 5, area: 0, volume: 0 }]);
    expectProblems([[() => stagesAt(ground, [0], [1, 0.999]), 'surface.notRising at levels/1'], [() => stagesAt(ground, [0], [1, NaN]), 'surface.notFinite at levels/1']]);
  });
});

describe('the shore', () => {
  it('runs across a triangle with the water on its left, from edge to edge or not at all', () => {
    for (const look of looks({ points: spots([[0, 0, 0], [3, 0, 1], [0, 3, 2]]) })) {
      const ground = triangulateSurface(look);
      expect([shoreAcross(ground, 0, 0), shoreAcross(ground, 0, 2.5)]).toEqual([null, null]);
      // At 0.5 from (1.5, 0) to (0, 0.75); at 1.5 from (1.5, 1.5) to (0, 2.25).
      for (const level of [0.5, 1.5]) {
        const { from, to } = shoreAcross(ground, 0, level)!;
        const [p, q] = placesOf(ground, [from, to], level, false) as [Position, Position];
        expect(lengthOf([p, q], false)).toBeCloseTo(Math.sqrt(1.5 * 1.5 + 0.75 * 0.75), 12);
        const low = look.points[0]!;
        expect((q.x - p.x) * (low.y - p.y) - (q.y - p.y) * (low.x - p.x)).toBeGreaterThan(0);
      }
    }
  });

  it('places do not repeat, nor does a ring its first one; a chain ends or comes back', () => {
    const ground = triangulateSurface({ points: spots([[0, 0, 0], [3, 0, 1], [0, 3, 2]]) });
    const at = (rows: readonly number[], closed: boolean) => placesOf(ground, rows, 0, closed).map(({ x, y }) => [x, y]);
    const [a, b, c] = [0, 1, 2].map((v) => [ground.x[v]!, ground.y[v]!]) as [number[], number[], number[]];
    expect([at([0, 0, 1, 1, 2, 0], true), at([0, 0, 1, 1, 2, 0], false), at([0, 0], true), at([0], true), at([0, 1], true), at([], true)]).toEqual([[a, b, c], [a, b, c, a], [a], [a], [a, b], []]);
    const links = new Map([[5, 6], [6, 7], [7, 5], [1, 2]]);
    expect([chainFrom(links, 1), chainFrom(links, 6), links.size]).toEqual([{ keys: [1, 2], closed: false }, { keys: [6, 7, 5], closed: true }, 0]);
  });
});

describe('water in plan', () => {
  const total = (ground: Ground, spot: GroundLowSpot, level: number): number => {
    let sum = 0;
    for (const { outer, holes } of waterExtent(ground, spot, level)) {
      for (const ring of [outer, ...holes]) {
        // no place twice in a row, nor the first one at the end; no hole without area
        if (ring.some((p, i) => { const q = ring[(i + 1) % ring.length]!; return p.x === q.x && p.y === q.y; })) return NaN;
        if (Math.abs(ringArea(ring)) < 1e-12) return NaN;
        sum += ringArea(ring);
      }
    }
    return sum;
  };
  const deepest = (ground: Ground) => findLowSpots(ground).lowSpots.at(-1)!;

  it('rings have areas by the shoelace formula', () => {
    expect([ringArea([]), ringArea([{ x: 1, y: 1 }]), ringArea([{ x: 5, y: 5 }, { x: 8, y: 5 }, { x: 8, y: 9 }]), ringArea([{ x: 8, y: 9 }, { x: 8, y: 5 }, { x: 5, y: 5 }])]).toEqual([0, 0, 6, -6]);
  });

  it('in a pyramid, a ring round an island, a yard within walls, and half a yard', () => {
    for (const look of looks(pyramid)) {
      const ground = triangulateSurface(look);
      expect([0.5, 1.5, 3].map((level) => total(ground, deepest(ground), level))).toEqual([24 / 36, 6, 24].map((area) => expect.closeTo(area, 9)));
      expect(waterExtent(ground, deepest(ground), 3)[0]!.outer).toHaveLength(4);
    }
    const ring = { points: grid(8, 8, 1, (x, y) => { const away = Math.max(Math.abs(x - 4), Math.abs(y - 4)); return away > 3 ? 3 : away > 1 ? 1 : 2.5; }) };
    for (const look of looks(ring)) {
      const ground = triangulateSurface(look);
      const [{ outer, holes }, ...others] = waterExtent(ground, deepest(ground), 2) as [{ outer: Position[]; holes: Position[][] }];
      expect([others.length, holes.length]).toEqual([0, 1]);
      // The level ring at 1 is 6 m wide; up to 3 one meter away the shore stands half of the way, and cuts the corners.
      expect(Math.abs(ringArea(outer) - 49)).toBeLessThan(4 * 0.25);
      expect(ringArea(outer) + ringArea(holes[0]!)).toBeCloseTo(stageAt(ground, deepest(ground).faces, 2).area, 9);
      expect(ringArea(holes[0]!)).toBeLessThan(-2);
      expect(lengthOf(outer, true)).toBeGreaterThan(24);
    }
    const yard = [{ id: 'W', points: [[0, 0], [4, 0], [4, 3], [0, 3], [0, 0]].map(([x, y]) => ({ x: x!, y: y! })) }];
    for (const look of looks({ points: spots([[0, 0, 1.2], [4, 0, 1.2], [4, 3, 1.2], [0, 3, 1.2], [1, 1, 1]]), walls: yard })) {
      const ground = triangulateSurface(look);
      expect([1.1, 1.2].map((level) => total(ground, deepest(ground), level))).toEqual([3, 12].map((area) => expect.closeTo(area, 9)));
    }
    // Water between a wall at x = 3 and banks: the wall is its edge.
    const half = { points: grid(6, 4, 1, (x, y) => (y === 0 || y === 4 || x === 0 || x === 6 ? 2 : 1)), walls: [{ id: 'W', points: [{ x: 3, y: 0 }, { x: 3, y: 4 }] }] };
    for (const look of looks(half)) {
      const ground = triangulateSurface(look);
      for (const spot of findLowSpots(ground).lowSpots) {
        const polygons = waterExtent(ground, spot, 1.5);
        expect(polygons.map(({ holes }) => holes.length)).toEqual([0]);
        expect(total(ground, spot, 1.5)).toBeCloseTo(stageAt(ground, spot.faces, 1.5).area, 9);
      }
    }
  });

  it('two ponds of one low spot, and none at its very bottom', () => {
    for (const look of looks({ points: spots([[0, 0, 3], [5, 0, 3], [10, 0, 3], [0, 4, 3], [5, 4, 3], [10, 4, 3], [0, 2, 3], [5, 2, 1.6], [10, 2, 1.8], [2.5, 2, 1], [7.5, 2, 1.2]]) })) {
      const ground = triangulateSurface(look);
      const both = deepest(ground);
      for (const level of [1.1, 1.2, 1.5, 1.6, 1.7, 1.8]) expect(total(ground, both, level)).toBeCloseTo(stageAt(ground, both.faces, level).area, 9);
      expect([1, 1.1, 1.2, 1.5, 1.7].map((level) => waterExtent(ground, both, level).length)).toEqual([0, 1, 1, 2, 1]);
      expect(() => waterExtent(ground, both, 0.99)).toThrow('surface.outsideLowSpot at level');
    }
  });
});

describe('contours', () => {
  it('of a pyramid with a notch: rings and open lines in rising order, lower ground on their left', () => {
    for (const look of looks({ points: spots([[0, 0, 3], [4, 0, 3], [4, 6, 1.2], [0, 6, 3], [2, 3, 0.2]]) })) {
      const ground = triangulateSurface(look);
      const lines = contourLines(ground, 0.5);
      expect(lines.map(({ level, closed }) => [level, closed])).toEqual([[0.5, true], [1, true], [1.5, false], [2, false], [2.5, false], [3, false]]);
      for (const line of lines.slice(0, 2)) expect(ringArea(line.points)).toBeGreaterThan(0);
      // On the ring at 1: the center is 0.2 and the corners 3, 3, 1.2 and 3.
      const shares = [3, 3, 1.2, 3].map((level) => (1 - 0.2) / (level - 0.2));
      const corners = [[0, 0], [4, 0], [4, 6], [0, 6]].map(([x, y], k) => ({ x: 2 + shares[k]! * (x! - 2), y: 3 + shares[k]! * (y! - 3) }));
      expect(ringArea(lines[1]!.points)).toBeCloseTo(ringArea(corners), 9);
      expect(lengthOf(lines[1]!.points, true)).toBeCloseTo(lengthOf(corners, true), 9);
    }
  });

  it('of an even slope below zero, at every whole multiple and no more, far from zero as well', () => {
    for (const look of looks({ points: grid(4, 3, 1, (x) => 700 + x / 4) })) expect(contourLines(triangulateSurface(look), 0.25).map(({ level }) => level)).toEqual([700.25, 700.5, 700.75, 701]);
    const ground = triangulateSurface({ points: grid(4, 3, 1, (x) => x / 4 - 0.65) });
    expect(contourLines(ground, 0.2).map(({ level, points }) => [level, lengthOf(points, false)])).toEqual([-3, -2, -1, 0, 1].map((k) => [k * 0.2, 3]).map(([level, length]) => [expect.closeTo(level!, 12), expect.closeTo(length!, 9)]));
    for (const { level, points } of contourLines(ground, 0.2)) for (const point of points) expect(point.x).toBeCloseTo(4 * (level + 0.65), 9);
  });

  it('a thousand of them and no more', () => {
    const ground = triangulateSurface({ points: spots([[0, 0, 0], [1, 0, 1000], [0, 1, 1000], [1, 1, 1000]]) });
    expect(MOST_CONTOUR_LEVELS).toBe(1000);
    expect(contourLines(ground, 1).length).toBeGreaterThan(998);
    expectProblems([[() => contourLines(ground, 0.9995), 'surface.tooManyContours at interval'], [() => contourLines(ground, -1), 'surface.badInterval at interval'], [() => contourLines(ground, Infinity), 'surface.badInterval at interval']]);
  });

  it('a single spot at its own level is no line', () => {
    const ground = triangulateSurface({ points: spots([[0, 0, 0.5], [4, 0, 0.5], [4, 4, 0.5], [0, 4, 0.5], [2, 2, 1]]) });
    expect(contourLines(ground, 1)).toEqual([]);
    expect(contourLines(ground, 0.9).map(({ closed, points }) => [closed, points.length])).toEqual([[true, 4]]);
  });
});

describe('section over the ground', () => {
  it('from anywhere to anywhere, each piece by its own place', () => {
    const ground = triangulateSurface({ points: spots([[10, 20, 3], [14, 20, 3], [14, 24, 3], [10, 24, 3], [12, 22, 1]]) });
    for (const [a, b, wanted] of [
      [[10, 21], [14, 21], [[0, 3], [1, 2], [3, 2], [4, 3]]], [[14, 21], [10, 21], [[0, 3], [1, 2], [3, 2], [4, 3]]], [[12, 20], [12, 24], [[0, 3], [2, 1], [4, 3]]],
      [[11, 21], [13, 23], [[0, 2], [Math.sqrt(2), 1], [Math.sqrt(8), 2]]], [[11.5, 20.5], [12.5, 20.5], [[0, 2.5], [1, 2.5]]], [[10, 20], [14, 20], [[0, 3], [4, 3]]],
      [[12.1, 22], [10, 22], [[0, 1.1], [0.1, 1], [2.1, 3]]], [[12, 21.95], [12, 24], [[0, 1.05], [0.05, 1], [2.05, 3]]],
    ] as const) {
      const stretches = groundProfile(ground, [{ x: a[0], y: a[1] }, { x: b[0], y: b[1] }]);
      expect(stretches.map((stretch) => stretch.map(({ station, level }) => [station, level]))).toEqual([wanted.map(([station, level]) => [expect.closeTo(station, 9), expect.closeTo(level, 9)])]);
      const [first, last] = [stretches[0]![0]!, stretches[0]!.at(-1)!];
      expect([first.x, first.y, last.x, last.y]).toEqual([...a, ...b].map((value) => expect.closeTo(value, 9)));
    }
  });

  it('steps down and up at walls, gaps, and lines with a repeated place', () => {
    const sides = [...grid(6, 1, 1, () => 1), ...grid(6, 1, 1, () => 2).map((p) => ({ ...p, y: p.y + 4 }))];
    const stepped = triangulateSurface({ points: sides, walls: [{ id: 'W', points: [{ x: 0, y: 2 }, { x: 6, y: 2 }] }] });
    for (const [from, to, levels] of [[0, 5, [1, 2]], [5, 0, [2, 1]]] as const) {
      const [step] = groundProfile(stepped, [{ x: 2.5, y: from }, { x: 2.5, y: to }, { x: 2.5, y: to }]);
      expect(step!.filter(({ y }) => Math.abs(y - 2) < 1e-9).map(({ level }) => level)).toEqual(levels);
      expect(step!.at(-1)!.station).toBeCloseTo(5, 12);
    }
    expectProblems([
      [() => groundProfile(stepped, [{ x: 0, y: 0 }, { x: NaN, y: 1 }]), 'surface.notFinite at line/1'], [() => groundProfile(stepped, [{ x: 0, y: Infinity }, { x: 0, y: 1 }]), 'surface.notFinite at line/0'],
      [() => groundProfile(stepped, []), 'surface.lineTooShort at line'],
    ]);
  });
});

describe('stage-area pairs', () => {
  const made = (input: SurfaceInput, most?: number) => {
    const ground = triangulateSurface(input);
    const spot = findLowSpots(ground, 0).lowSpots.at(-1)!;
    return { ground, spot, pairs: stageAreaOf(ground, spot, most) };
  };
  it('of a dish with a level floor: the floor at once, then the square of each level', () => {
    const { pairs } = made({ points: spots([[0, 0, 1], [6, 0, 1], [6, 6, 1], [0, 6, 1], [2, 2, 0], [4, 2, 0], [4, 4, 0], [2, 4, 0]]) });
    expect(pairs[0]).toEqual({ level: 0, area: 4 });
    expect(pairs.at(-1)).toEqual({ level: 1, area: 36 });
    for (const { level, area } of pairs) expect(area).toBeCloseTo((2 + 4 * level) * (2 + 4 * level), 4);
  });

  it('of a bench half way up: its area within a thousandth of a millimeter', () => {
    // Floor 2 x 2 at 0, bench from 4 x 4 to 6 x 6 at 1, rim 8 x 8 at 2.
    const square = (half: number, level: number) => [[4 - half, 4 - half, level], [4 + half, 4 - half, level], [4 + half, 4 + half, level], [4 - half, 4 + half, level]] as [number, number, number][];
    const { pairs } = made({ points: spots([...square(1, 0), ...square(2, 1), ...square(3, 1), ...square(4, 2)]) });
    const step = pairs.findIndex(({ level }) => level > 1 - 1e-9);
    expect([pairs[step]!.level, pairs[step + 1]!.level]).toEqual([1, expect.closeTo(1 + 1e-6, 9)]);
    expect([pairs[step]!.area, pairs[step + 1]!.area]).toEqual([expect.closeTo(16, 3), expect.closeTo(36, 3)]);
  });

  it('of a pyramid: a point is a billionth of the top, few rows are as many as were asked for', () => {
    const { pairs, spot } = made(pyramid);
    expect(pairs[0]).toEqual({ level: 0, area: expect.closeTo(24e-9, 20) });
    expect([spot.area, pairs.at(-1)]).toEqual([expect.closeTo(24, 12), { level: 3, area: expect.closeTo(24, 9) }]);
    for (const { level, area } of pairs.slice(1)) expectRatio(area, 24 * (level / 3) * (level / 3), 1e-9);
    for (const most of [2, 3, 7]) {
      const short = made({ points: grid(10, 10, 0.6, (x, y) => ((x - 3) * (x - 3) + (y - 2.5) * (y - 2.5)) / 40) }, most).pairs;
      expect(short).toHaveLength(most);
      expect([short[0]!.level < short.at(-1)!.level, short.every((pair, i) => i === 0 || pair.level > short[i - 1]!.level)]).toEqual([true, true]);
    }
    const { ground } = made(pyramid);
    expectProblems([
      [() => stageAreaOf(ground, spot, 1.9), 'surface.tooFewRows at most'], [() => stageAreaOf(ground, spot, NaN), 'surface.tooFewRows at most'],
      [() => stageAreaOf(ground, { ...spot, topLevel: spot.bottom.level + 1e-6 }), 'surface.noDepth at lowSpot'], [() => stageAreaOf(ground, { ...spot, area: 0 }), 'surface.noDepth at lowSpot'],
    ]);
  });
});
