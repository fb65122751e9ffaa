import { describe, expect, it } from 'vitest';
import { FOOT, HOUR, INCH, MINUTE } from '../common/constants.ts';
import { expectNear, expectRatio } from '../testing/near.ts';
import { izzardDetention, izzardTime, RETARDANCE } from './izzard.ts';
import { kinematicPlane, planeEquilibriumTime } from './kinematicPlane.ts';

const rain = (inches: number): number => (inches * INCH) / HOUR;

describe("Izzard's plots", () => {
  it('is the short form 41.025*(0.0007*i + c)*L^(1/3)/(S^(1/3)*i^(2/3)) in minutes', () => {
    for (const [c, feet, slope, inches] of [[0.007, 100, 0.01, 3], [0.012, 50, 0.005, 2], [0.06, 70, 0.04, 1.5]] as const) {
      const minutes = (41.025 * (0.0007 * inches + c) * Math.cbrt(feet)) / (Math.cbrt(slope) * Math.pow(inches, 2 / 3));
      expectRatio(izzardTime(c, feet * FOOT, slope, rain(inches)) / MINUTE, minutes, 1e-3);
    }
  });
  it('holds half of what falls in its time', () => {
    const time = izzardTime(0.012, 20, 0.01, rain(2));
    expectRatio(izzardDetention(0.012, 20, 0.01, rain(2)), (time * rain(2) * 20) / 2, 1e-12);
  });
  it('the kinematic plane agrees with the plots: asphalt between n 0.010 and 0.035, clipped sod between n 0.08 and 0.4', () => {
    for (const [c, low, high, feet, slope, inches] of [[RETARDANCE.smoothAsphalt, 0.01, 0.035, 72, 0.01, 3.6], [RETARDANCE.clippedSod, 0.08, 0.4, 72, 0.02, 3.6]] as const) {
      const plot = izzardTime(c, feet * FOOT, slope, rain(inches));
      const plane = (roughness: number): number => planeEquilibriumTime({ length: feet * FOOT, slope, roughness }, rain(inches));
      expect(plane(low)).toBeLessThan(plot);
      expect(plane(high)).toBeGreaterThan(plot);
    }
  });
  it('what the plane holds at equilibrium is 5/8 of what fell in its own time', () => {
    const plane = { length: 20, slope: 0.01, roughness: 0.015 };
    const time = planeEquilibriumTime(plane, rain(2));
    const { stored } = kinematicPlane(plane, new Array<number>(4000).fill(rain(2)), time / 1000, 400);
    expectRatio(stored, (5 / 8) * rain(2) * time * 20, 0.01);
  });
  it('keeps to the tests, and knows the surfaces', () => {
    expect(() => izzardTime(0.012, 250 * FOOT, 0.01, rain(2))).not.toThrow();
    expect(() => izzardTime(0.012, 251 * FOOT, 0.01, rain(2))).toThrow('runoff.outsideTests at length');
    expect(() => izzardTime(-1, 10, 0.01, rain(2))).toThrow('value.negative at retardance');
    expect(() => izzardTime(0.01, 10, 0, rain(2))).toThrow('value.notPositive at slope');
    expect(Object.values(RETARDANCE)).toEqual([0.007, 0.0075, 0.012, 0.017, 0.046, 0.06]);
    expectNear(izzardTime(0, 10, 0.01, rain(2)), izzardTime(0.0014, 10, 0.01, rain(2)) / 2, 1e-9);
  });
});
