import { describe, expect, it } from 'vitest';
import { GRAVITY } from '../common/constants.ts';
import { circleSection } from '../pipe/circleSection.ts';
import { expectNear, expectRatio } from '../testing/near.ts';
import { criticalDepth } from './criticalDepth.ts';
import { criticalDepthIn, criticalFlow } from './criticalDepthIn.ts';
import { requireShape, sectionAt, type ChannelShape } from './section.ts';
import { depthOfEnergy, specificEnergy } from './specificEnergy.ts';

const box: ChannelShape = { kind: 'rectangular', width: 0.1 };
const ditch: ChannelShape = { kind: 'trapezoidal', width: 0.2, sideSlope: 1.5 };
const vee: ChannelShape = { kind: 'trapezoidal', width: 0, sideSlope: 2 };
const round: ChannelShape = { kind: 'roundBottom', width: 0.1 };

describe('section of a channel', () => {
  it('rectangle, trapezoid and V by hand', () => {
    expect(sectionAt(box, 0.05)).toEqual({ area: 0.1 * 0.05, wettedPerimeter: 0.2, topWidth: 0.1, moment: 0.05 * 0.05 * 0.05 });
    const t = sectionAt(ditch, 0.4);
    expectNear(t.area, 0.32, 1e-15);
    expectNear(t.wettedPerimeter, 0.2 + 0.8 * Math.sqrt(3.25), 1e-15);
    expectNear(t.topWidth, 1.4, 1e-15);
    expectNear(t.moment, 0.16 * (0.1 + 0.2), 1e-15);
    expectNear(sectionAt(vee, 0.3).area, 0.18, 1e-15);
    expectNear(sectionAt(vee, 0.3).moment, 0.018, 1e-15);
  });

  it('round bottom: below the middle a part-full circle, at it a half circle, above it upright walls', () => {
    for (const share of [0.05, 0.2, 0.45]) {
      const circle = circleSection(0.1, share);
      const own = sectionAt(round, 0.1 * share);
      expectRatio(own.area, circle.area, 1e-12);
      expectRatio(own.wettedPerimeter, circle.wettedPerimeter, 1e-12);
      expectRatio(own.topWidth, circle.topWidth, 1e-12);
    }
    const half = sectionAt(round, 0.05);
    expectRatio(half.area, (Math.PI * 0.0025) / 2, 1e-12);
    expectRatio(half.wettedPerimeter, Math.PI * 0.05, 1e-12);
    expectRatio(half.moment, (2 / 3) * 0.000125, 1e-12);
    const deep = sectionAt(round, 0.08);
    expectRatio(deep.area, (Math.PI * 0.0025) / 2 + 0.003, 1e-12);
    expectRatio(deep.wettedPerimeter, Math.PI * 0.05 + 0.06, 1e-12);
    expect(deep.topWidth).toBe(0.1);
  });

  it('the moment is the integral of the area, for every shape', () => {
    for (const shape of [box, ditch, vee, round]) {
      for (const depth of [0.03, 0.05, 0.09]) {
        const steps = 4000;
        let sum = 0;
        for (let i = 0; i < steps; i += 1) sum += (sectionAt(shape, ((i + 0.5) * depth) / steps).area * depth) / steps;
        expectRatio(sectionAt(shape, depth).moment, sum, 1e-6);
      }
    }
  });

  it('nothing at no depth, and shapes that are none', () => {
    for (const shape of [box, ditch, vee, round]) expect(sectionAt(shape, 0)).toEqual({ area: 0, wettedPerimeter: 0, topWidth: 0, moment: 0 });
    expect(() => requireShape({ kind: 'rectangular', width: 0 })).toThrow('value.notPositive at width');
    expect(() => requireShape({ kind: 'roundBottom', width: -1 })).toThrow('value.notPositive at width');
    expect(() => requireShape({ kind: 'trapezoidal', width: 0, sideSlope: 0 })).toThrow('channel.noWidth at width');
    expect(() => requireShape({ kind: 'trapezoidal', width: 0.1, sideSlope: -1 })).toThrow('value.negative at sideSlope');
    expect(() => requireShape(vee)).not.toThrow();
    expect(() => requireShape({ kind: 'trapezoidal', width: 0.1, sideSlope: 0 })).not.toThrow();
  });
});

describe('critical depth in any shape', () => {
  it('rectangle and triangle by their closed forms', () => {
    expect(criticalDepthIn(box, 0.003)).toBe(criticalDepth(0.003, 0.1));
    // A = z*y^2, T = 2*z*y: Q^2 = g*z^2*y^5/2
    for (const flow of [1e-6, 0.002, 0.5]) expectRatio(criticalDepthIn(vee, flow), Math.pow((flow * flow) / (2 * GRAVITY), 0.2), 1e-9);
  });
  it('meets Q^2*T = g*A^3 in every shape', () => {
    for (const shape of [ditch, round]) {
      for (const flow of [1e-5, 2e-3, 0.02]) {
        const depth = criticalDepthIn(shape, flow);
        const { area, topWidth } = sectionAt(shape, depth);
        expectRatio((flow * flow * topWidth) / (GRAVITY * area * area * area), 1, 1e-8);
        expectRatio(criticalFlow(shape, depth), flow, 1e-8);
      }
    }
    expect([criticalDepthIn(round, 0), criticalFlow(round, 0)]).toEqual([0, 0]);
    expect(() => criticalDepthIn(round, -1)).toThrow('value.negative at flow');
    expect(() => criticalDepthIn({ kind: 'roundBottom', width: 0 }, 0.1)).toThrow('value.notPositive');
  });
});

describe('specific energy', () => {
  it('is 1.5 critical depths in a rectangle, and the depth alone without flow', () => {
    const critical = criticalDepth(0.003, 0.1);
    expectRatio(specificEnergy(box, 0.003, critical), 1.5 * critical, 1e-12);
    expect(specificEnergy(box, 0, 0.2)).toBe(0.2);
    expectNear(specificEnergy(box, 0.003, 0.1), 0.1 + 0.09 / (2 * GRAVITY), 1e-15);
  });
  it('is turned round on the slow side; too little of it leaves critical depth', () => {
    for (const shape of [box, ditch, round]) {
      for (const energy of [0.12, 0.3]) {
        const { depth, critical } = depthOfEnergy(shape, 0.003, energy);
        expect(critical).toBe(false);
        expectNear(specificEnergy(shape, 0.003, depth), energy, 1e-9);
        expect(depth).toBeGreaterThan(criticalDepthIn(shape, 0.003));
      }
      expect(depthOfEnergy(shape, 0.003, 0.001)).toEqual({ depth: criticalDepthIn(shape, 0.003), critical: true });
      const least = specificEnergy(shape, 0.003, criticalDepthIn(shape, 0.003));
      expect(depthOfEnergy(shape, 0.003, least).critical).toBe(true);
      expect(depthOfEnergy(shape, 0.003, least * 1.001).critical).toBe(false);
    }
    expect(depthOfEnergy(box, 0, 0.2)).toEqual({ depth: 0.2, critical: false });
    expect(() => depthOfEnergy(box, 0.003, -0.1)).toThrow('value.negative at energy');
  });
});
