import { describe, expect, it } from 'vitest';
import { expectProblems } from '../testing/expectProblems.ts';
import { grid, spots } from '../testing/surveys.ts';
import { stepFromFace } from './descent.ts';
import { ringArea, waterExtent } from './extent.ts';
import { findLowSpots, type GroundLowSpot } from './lowSpots.ts';
import { stageAt } from './stage.ts';
import { stageAreaOf } from './stageTable.ts';
import type { Ground } from './surface.ts';
import { triangulateSurface } from './triangulate.ts';

/** Two triangles on one bottom edge, which is the first edge of the first one; their far corners stand at 1 m. */
const gutter: Ground = {
  x: [0, 0, -2, 2], y: [0, 2, 1, 1], level: [0, 0, 1, 1], pointId: [null, null, null, null], triangles: [0, 1, 2, 1, 0, 3], twins: [3, -1, -1, 0, -1, -1], lines: [0, 0, 0, 0, 0, 0],
};
const lastSpot = (ground: Ground): GroundLowSpot => findLowSpots(ground, 0).lowSpots.at(-1)!;

describe('the first triangle, edge and corner count as any other', () => {
  it('in a sheet of water: one pond on both sides of the bottom edge, whichever triangle comes first', () => {
    const spot = { bottom: { x: 0, y: 0, level: 0 }, topLevel: 1 } as unknown as GroundLowSpot;
    for (const faces of [[0, 1], [1, 0]]) {
      const polygons = waterExtent(gutter, { ...spot, faces }, 0.5);
      expect(polygons).toHaveLength(1);
      // Each triangle of 2 m2 is wet but for a quarter at its far corner.
      expect(ringArea(polygons[0]!.outer)).toBeCloseTo(3, 12);
    }
  });

  it('at the end of a way straight down into a corner', () => {
    const ramp: Ground = { x: [0, 2, 2], y: [0, -1, 1], level: [0, 2, 2], pointId: [null, null, null], triangles: [0, 1, 2], twins: [-1, -1, -1], lines: [0, 0, 0] };
    const drops = stepFromFace(ramp, undefined as never, { at: 'face', face: 0, place: { x: 1, y: 0 } });
    expect(drops).toEqual([{ at: 'vertex', vertex: 0, place: { x: 0, y: 0 } }]);
  });
});

describe('a shore through surveyed spots', () => {
  it('that stand just at the level of the water: no place twice, not even around the end', () => {
    const ground = triangulateSurface({ points: grid(8, 8, 1, (x, y) => Math.max(Math.abs(x - 4), Math.abs(y - 4))) });
    for (const level of [1, 2, 3]) {
      const spot = lastSpot(ground);
      const [polygon] = waterExtent(ground, spot, level);
      const { outer } = polygon!;
      outer.forEach((place, i) => { expect(place).not.toEqual(outer[(i + 1) % outer.length]); });
      expect(ringArea(outer)).toBeCloseTo(stageAt(ground, spot.faces, level).area, 12);
    }
  });

  it('of which one is the top of an island just under water: no island', () => {
    const ground = triangulateSurface({ points: spots([[0, 0, 2], [8, 0, 2], [8, 8, 2], [0, 8, 2], [2, 2, 0], [6, 2, 0], [6, 6, 0], [2, 6, 0], [4, 4, 1]]) });
    const holes = (level: number) => waterExtent(ground, lastSpot(ground), level).map((polygon) => polygon.holes.length);
    expect([holes(0.9), holes(1), holes(1.1)]).toEqual([[1], [0], [0]]);
  });
});

describe('stage tables, at their ends', () => {
  it('have a row a thousandth of a millimeter under the top, or a hundred thousandth of a small depth', () => {
    const pyramid = (top: number, bottom = 0) => {
      const ground = triangulateSurface({ points: spots([[0, 0, top], [4, 0, top], [4, 6, top], [0, 6, top], [2, 3, bottom]]) });
      return stageAreaOf(ground, lastSpot(ground)).map(({ level }) => level);
    };
    expect(pyramid(3)).toEqual([0, expect.closeTo(3 - 1e-6, 12), 3]);
    expect(pyramid(0.1)).toEqual([0, expect.closeTo(0.1 - 1e-6, 12), 0.1]);
    expect(pyramid(0.01)).toEqual([0, expect.closeTo(0.01 - 1e-7, 12), 0.01]);
    expect(pyramid(10.01, 10)).toEqual([10, expect.closeTo(10.01 - 1e-7, 10), 10.01]);
  });

  it('are refused for a low spot without depth at whatever level it lies', () => {
    const ground = triangulateSurface({ points: spots([[0, 0, 13], [4, 0, 13], [4, 6, 13], [0, 6, 13], [2, 3, 10]]) });
    const spot = lastSpot(ground);
    expectProblems([[() => stageAreaOf(ground, { ...spot, topLevel: 10 }), 'surface.noDepth at lowSpot'], [() => stageAreaOf(ground, { ...spot, topLevel: 10 + 5e-7 }), 'surface.noDepth at lowSpot']]);
  });
});
