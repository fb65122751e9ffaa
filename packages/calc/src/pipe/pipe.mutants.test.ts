import { describe, expect, it } from 'vitest';
import { expectProblems } from '../testing/expectProblems.ts';
import { circleSection } from './circleSection.ts';
import { partFullPipe } from './manning.ts';
import { insideDiameter } from './pipeSizes.ts';
import { sealedLineCapacity, sealedRoofLine, type SealedRoofLine } from './sealedRoofLine.ts';
import { selfCleansingSlope } from './selfCleansing.ts';

const line: SealedRoofLine = {
  diameter: 0.1, length: 20, roughness: 0.01, bendLoss: 1.5, exitLoss: 1, lidLevel: 10, openingHead: 0.03, lowestOpenJoint: 10.5, lowestInvert: 9.6, weepLevel: null,
};

describe('pipes, corner by corner', () => {
  it('refuse what no pipe is', () => {
    expectProblems([
      [() => circleSection(0, 0.5), 'value.notPositive at diameter'],
      [() => circleSection(0.1, 1.01), 'value.aboveOne at depthRatio'],
      [() => partFullPipe({ diameter: 0.1, slope: 0.01, roughness: 0.01 }, -1), 'value.negative at flow'],
      [() => sealedRoofLine(line, -1), 'value.negative at flow'],
      [() => sealedLineCapacity({ ...line, exitLoss: -1 }), 'value.negative at exitLoss'],
      [() => selfCleansingSlope(0, 0.6, 0.01), 'value.notPositive at diameter'],
      [() => insideDiameter(1, 0.5), 'pipe.wallTooThick at wall'],
    ]);
    expect(insideDiameter(1, 0.4)).toBeCloseTo(0.2, 12);
  });

  it('are empty at depth 0, full at depth 1, widest in the middle', () => {
    expect(circleSection(2, 0)).toEqual({ area: 0, wettedPerimeter: 0, hydraulicRadius: 0, topWidth: 0 });
    const full = circleSection(2, 1);
    expect([full.area, full.wettedPerimeter, full.hydraulicRadius, full.topWidth]).toEqual([Math.PI, 2 * Math.PI, 0.5, 0]);
    expect(circleSection(3, 0.5).topWidth).toBe(3);
    expect(partFullPipe({ diameter: 0.1, slope: 0.01, roughness: 0.01 }, 0)).toEqual({ depthRatio: 0, depth: 0, area: 0, velocity: 0, tractiveStress: 0, surcharged: false });
    const half = partFullPipe({ diameter: 0.2, slope: 0.01, roughness: 0.01 }, 0.005);
    expect(half.depth).toBeCloseTo(half.depthRatio * 0.2, 15);
  });

  it('carry on a sealed line just what brings the water to the open joint', () => {
    const most = sealedLineCapacity(line);
    expect(sealedRoofLine(line, most).margin).toBeCloseTo(0, 9);
    expect(sealedLineCapacity({ ...line, lidLevel: 0, lowestOpenJoint: 0.5 })).toBeCloseTo(most, 9);
    for (const lowestOpenJoint of [10.03, 10.02, 9]) expect(sealedLineCapacity({ ...line, lowestOpenJoint })).toBe(0);
    // A wide, short line under a high house: the search for an upper end goes far.
    const wide = { ...line, diameter: 0.4, length: 0.5, lowestOpenJoint: 16 };
    expect(sealedRoofLine(wide, sealedLineCapacity(wide)).margin).toBeCloseTo(0, 9);
  });
});
