import { describe, expect, it } from 'vitest';
import { GRAVITY } from '../common/constants.ts';
import { circleSection } from '../pipe/circleSection.ts';
import { expectNear, expectRatio } from '../testing/near.ts';
import { criticalDepth, criticalDepthInPipe } from './criticalDepth.ts';
import { criticalDepthIn } from './criticalDepthIn.ts';
import { entranceHead, ENTRANCES } from './entranceControl.ts';
import { lateralProfile } from './lateralProfile.ts';
import { outletCapacity, outletDepth } from './outletDepth.ts';
import { sectionAt, type ChannelShape } from './section.ts';
import { depthAtStation, spatiallyVariedFlow } from './spatiallyVariedFlow.ts';
import { depthOfEnergy, leastEnergy, specificEnergy } from './specificEnergy.ts';

const ditch: ChannelShape = { kind: 'trapezoidal', width: 0.2, sideSlope: 1.5 };

describe('critical depth at its edges', () => {
  it('a pipe with more flow than an open one carries is full', () => {
    expect(criticalDepthInPipe(10, 0.1)).toBe(0.1);
    const almost = criticalDepthInPipe(0.02, 0.1);
    expect(almost).toBeGreaterThan(0.09);
    expect(almost).toBeLessThan(0.1);
    const { area, topWidth } = circleSection(0.1, almost / 0.1);
    expectRatio((0.02 * 0.02 * topWidth) / (GRAVITY * area * area * area), 1, 1e-6);
    // A metre across: the sought excess is measured against the flow, not against one.
    const wide = criticalDepthInPipe(0.5, 1);
    const section = circleSection(1, wide);
    expectRatio((0.25 * section.topWidth) / (GRAVITY * Math.pow(section.area, 3)), 1, 1e-8);
  });
  it('large flows in open shapes', () => {
    const depth = criticalDepthIn(ditch, 1);
    const { area, topWidth } = sectionAt(ditch, depth);
    expectRatio(topWidth / (GRAVITY * area * area * area), 1, 1e-8);
    expectRatio(criticalDepthIn({ kind: 'rectangular', width: 0.5 }, 1), Math.cbrt(4 / GRAVITY), 1e-12);
  });
  it('names what is wrong', () => {
    expect(() => criticalDepth(0.1, 0)).toThrow('value.notPositive at width');
    expect(() => criticalDepth(-0.1, 1)).toThrow('value.negative at flow');
    expect(() => criticalDepthInPipe(-1, 0.1)).toThrow('value.negative at flow');
    expect(() => criticalDepthInPipe(0, 0)).toThrow('value.notPositive at diameter');
  });
});

describe('entrances of HDS-5', () => {
  it('table A.1 and the entrance losses', () => {
    const rows = Object.values(ENTRANCES).map(({ k, m, c, y, slope, loss }) => [k, m, c, y, slope, loss]);
    expect(rows).toEqual([
      [0.0098, 2, 0.0398, 0.67, -0.5, 0.5], [0.0018, 2, 0.0292, 0.74, -0.5, 0.2], [0.0045, 2, 0.0317, 0.69, -0.5, 0.2],
      [0.0078, 2, 0.0379, 0.69, -0.5, 0.5], [0.021, 1.33, 0.0463, 0.75, 0.7, 0.7], [0.034, 1.5, 0.0553, 0.54, -0.5, 0.9],
    ]);
  });
});

describe('outlet of a channel at its edges', () => {
  it('a flow of a cubic metre a second is a flow', () => {
    const answer = outletDepth(1, 2, 0.8, null);
    expect(answer.head).toBe(entranceHead(1, 0.8));
    expectNear(specificEnergy({ kind: 'rectangular', width: 2 }, 1, answer.depth), answer.head, 1e-9);
  });
  it('the slope of the outlet pipe counts at its entrance', () => {
    const pipe = { length: 2, slope: 0.05, roughness: 0.01, tailwater: 0 };
    expect(outletDepth(0.006, 0.1, 0.1, pipe).head).toBe(entranceHead(0.006, 0.1, 0.05));
    expectNear(entranceHead(outletCapacity(0.2, 0.1, pipe), 0.1, 0.05), 0.2, 1e-9);
    expectNear(entranceHead(outletCapacity(1, 0.1, null), 0.1), 1, 1e-9);
    expectNear(entranceHead(outletCapacity(2, 3, null), 3), 2, 1e-8);
  });
  it('names what is wrong without a flow too', () => {
    expect(() => outletDepth(0, 0, 0.1, null)).toThrow('value.notPositive at width');
    expect(() => outletDepth(0, 0.1, 0, null)).toThrow('value.notPositive at diameter');
    expect(outletDepth(0, 0.1, 0.1, null)).toEqual({ head: 0, depth: 0, control: 'critical' });
  });
});

describe('specific energy at its edges', () => {
  it('is depth and velocity head in every shape', () => {
    for (const shape of [ditch, { kind: 'roundBottom', width: 0.1 }, { kind: 'rectangular', width: 0.15 }] as const) {
      const { area } = sectionAt(shape, 0.08);
      expectNear(specificEnergy(shape, 0.004, 0.08), 0.08 + 0.000016 / (2 * GRAVITY * area * area), 1e-12);
      const critical = criticalDepthIn(shape, 0.004);
      expectNear(leastEnergy(shape, 0.004, critical), specificEnergy(shape, 0.004, critical), 1e-9);
      expect(() => depthOfEnergy(shape, -1, 0.1)).toThrow('value.negative at flow');
    }
    expect(leastEnergy({ kind: 'rectangular', width: 0.15 }, 0.004, 0.2)).toBeCloseTo(0.3, 12);
  });
});

describe('march up a rectangular channel at its edges', () => {
  const channel = { width: 0.1, length: 6, slope: 0.005, roughness: 0.012 };
  it('names what is wrong', () => {
    const bad = (change: Partial<typeof channel>, flow = 0.003, end: number | null = null, steps = 10): (() => unknown) => () => spatiallyVariedFlow({ ...channel, ...change }, flow, end, steps);
    expect(bad({ width: 0 })).toThrow('value.notPositive at width');
    expect(bad({ length: 0 })).toThrow('value.notPositive at length');
    expect(bad({}, 0.003, null, 0)).toThrow('value.notPositive at steps');
    expect(bad({ roughness: -1 })).toThrow('value.negative at roughness');
    expect(bad({}, -1)).toThrow('value.negative at flow');
    expect(bad({ slope: NaN })).toThrow('value.notFinite at slope');
    expect(bad({}, 0.003, -1)).toThrow('value.negative at endDepth');
    expect(bad({}, 0, -1)).toThrow('value.negative at endDepth');
    expect(bad({}, 1e200)).toThrow('channel.noProfile');
  });
  it('still water: level, and dry where the floor stands over it', () => {
    expect(spatiallyVariedFlow({ ...channel, slope: 0.05 }, 0, 0.1)).toMatchObject({ depthUpstream: 0, depthAtOutlet: 0.1, depthMax: 0.1, xOfDepthMax: 6, criticalDepth: 0 });
    expect(spatiallyVariedFlow(channel, 0, null)).toMatchObject({ depthUpstream: 0, depthAtOutlet: 0, depthMax: 0, xOfDepthMax: 0 });
    expect(spatiallyVariedFlow(channel, 0, null).profile).toEqual([{ x: 0, depth: 0 }, { x: 6, depth: 0 }]);
  });
  it('a roughness of one is a roughness', () => {
    const up = (roughness: number): number => spatiallyVariedFlow({ ...channel, slope: 0, roughness }, 0.003, null).depthUpstream;
    expect(up(1)).toBeGreaterThan(up(0.9));
  });
  it('has as many points as steps, the first at the closed end', () => {
    const surface = spatiallyVariedFlow(channel, 0.003, null);
    expect(surface.profile).toHaveLength(101);
    expect([surface.profile[0]?.x, surface.profile[100]?.x]).toEqual([0, 6]);
    expect(surface.depthUpstream).toBe(surface.profile[0]?.depth);
    expect(lateralProfile({ shape: ditch, reaches: [{ length: 6, slope: 0, drop: 0 }], roughness: 0, headFlow: 0 }, 0.003, null).profile).toHaveLength(101);
  });
  it('depth at a place is straight between the points, and the outlet\'s beyond the end', () => {
    const surface = { profile: [{ x: 0, depth: 0.2 }, { x: 1, depth: 0.4 }, { x: 3, depth: 0.1 }], depthUpstream: 0.2, depthAtOutlet: 0.1, depthMax: 0.4, xOfDepthMax: 1, criticalDepth: 0.1 };
    expect([0, 0.5, 1, 2, 3, 9].map((x) => Number(depthAtStation(surface, x).toFixed(12)))).toEqual([0.2, 0.3, 0.4, 0.25, 0.1, 0.1]);
  });
  it('of two equal depths the upper one is the greatest', () => {
    const flat = spatiallyVariedFlow({ ...channel, slope: 0 }, 0, 0.1);
    expect([flat.depthMax, flat.xOfDepthMax]).toEqual([0.1, 0]);
  });
});

describe('march up any channel at its edges', () => {
  const run = { shape: ditch, reaches: [{ length: 6, slope: 0.002, drop: 0 }], roughness: 0.02, headFlow: 0 };
  it('refuses a shape and a profile that are none', () => {
    expect(() => lateralProfile({ ...run, shape: { kind: 'roundBottom', width: 0 } }, 0, 0.1)).toThrow('value.notPositive at width');
    expect(() => lateralProfile(run, 1e200, null)).toThrow('channel.noProfile');
  });
  it('of two equal depths the upper one is the greatest; a dry channel is dry', () => {
    const flat = lateralProfile({ ...run, reaches: [{ length: 6, slope: 0, drop: 0 }] }, 0, 0.1, 4);
    expect(flat.xOfDepthMax).toBe(0);
    const dry = lateralProfile(run, 0, null, 4);
    expect(dry.profile.every(({ depth }) => depth === 0)).toBe(true);
  });
});
