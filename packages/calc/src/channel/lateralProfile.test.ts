import { describe, expect, it } from 'vitest';
import { FOOT, GRAVITY } from '../common/constants.ts';
import { fixtureCsv } from '../testing/fixtures.ts';
import { expectNear, expectRatio } from '../testing/near.ts';
import { criticalDepthIn } from './criticalDepthIn.ts';
import { lateralProfile, type LateralRun } from './lateralProfile.ts';
import { sectionAt, type ChannelShape } from './section.ts';
import { depthAtStation, spatiallyVariedFlow } from './spatiallyVariedFlow.ts';
import { specificEnergy } from './specificEnergy.ts';

const ditch: ChannelShape = { kind: 'trapezoidal', width: 0.2, sideSlope: 1.5 };
const vee: ChannelShape = { kind: 'trapezoidal', width: 0, sideSlope: 2 };
const round: ChannelShape = { kind: 'roundBottom', width: 0.1 };
const box: ChannelShape = { kind: 'rectangular', width: 0.1 };
const one = (shape: ChannelShape, length: number, slope = 0, roughness = 0): LateralRun =>
  ({ shape, reaches: [{ length, slope, drop: 0 }], roughness, headFlow: 0 });
const moment = (shape: ChannelShape, depth: number): number => sectionAt(shape, depth).moment;

/** The gradually varied form dy/dx = (S0 - Sf - 2qQ/(gA^2))/(1 - Q^2T/(gA^3)), marched up by Runge and Kutta. */
function rungeKutta(shape: ChannelShape, length: number, slope: number, n: number, flow: number, end: number, to: number): number {
  const rise = (x: number, y: number): number => {
    const { area, wettedPerimeter, topWidth } = sectionAt(shape, y);
    const q = (flow * x) / length;
    const friction = (n * n * q * q) / (area * area * Math.pow(area / wettedPerimeter, 4 / 3));
    return (slope - friction - (2 * (flow / length) * q) / (GRAVITY * area * area)) / (1 - (q * q * topWidth) / (GRAVITY * area * area * area));
  };
  const steps = 4000;
  const h = -(length - to) / steps;
  let y = end;
  for (let i = 0; i < steps; i += 1) {
    const x = length + i * h;
    const k1 = rise(x, y);
    const k2 = rise(x + h / 2, y + (h * k1) / 2);
    const k3 = rise(x + h / 2, y + (h * k2) / 2);
    y += (h * (k1 + 2 * k2 + 2 * k3 + rise(x + h, y + h * k3))) / 6;
  }
  return y;
}

describe('profile in a channel of any shape', () => {
  it('rows 8.2, 8.3, 8.4 and 8.6: the ten reference profiles, and the same answer as the rectangular method', () => {
    for (const row of fixtureCsv('channel/lateralInflow.csv')) {
      const foot = row['units'] === 'US' ? FOOT : 1;
      const flow = Number(row['Q_total']) * foot * foot * foot;
      const length = Number(row['L']) * foot;
      const width = Number(row['B']) * foot;
      const run = one({ kind: 'rectangular', width }, length, Number(row['S0']), Number(row['manning_n']));
      const own = lateralProfile(run, flow, null, 400);
      for (const [column, share] of [['y_x0', 0], ['y_x0.25L', 0.25], ['y_x0.50L', 0.5], ['y_x0.75L', 0.75], ['y_x0.90L', 0.9]] as const) {
        expectRatio(depthAtStation(own, share * length) / foot, Number(row[column]), 0.005);
      }
      expectRatio(own.depthMax / foot, Number(row['y_max']), 0.005);
      const fast = spatiallyVariedFlow({ width, length, slope: Number(row['S0']), roughness: Number(row['manning_n']) }, flow, null, 400);
      own.profile.forEach((point, i) => expectNear(point.depth, fast.profile[i]?.depth, 1e-8));
      expect(own.criticalDepth).toBe(fast.criticalDepth);
    }
  });

  it('level and frictionless: V 2.5^(1/3)*y_c, shallow round bottom (8/3)^(2/5)*y_c, any shape by its momentum', () => {
    for (const flow of [1e-4, 5e-3, 0.1]) {
      const surface = lateralProfile(one(vee, 6), flow, null);
      expectRatio(surface.depthUpstream, Math.cbrt(2.5) * surface.criticalDepth, 1e-6);
    }
    const film = lateralProfile(one({ kind: 'roundBottom', width: 10 }, 6), 1e-4, null);
    expectRatio(film.depthUpstream, Math.pow(8 / 3, 0.4) * film.criticalDepth, 1e-3);
    for (const shape of [ditch, round]) {
      for (const flow of [0.001, 0.004]) {
        const surface = lateralProfile(one(shape, 6), flow, null);
        const { area } = sectionAt(shape, surface.criticalDepth);
        expectRatio(moment(shape, surface.depthUpstream), (flow * flow) / (GRAVITY * area) + moment(shape, surface.criticalDepth), 1e-6);
        expectRatio(surface.depthAtOutlet, criticalDepthIn(shape, flow), 1e-12);
        expect([surface.depthMax, surface.xOfDepthMax]).toEqual([surface.depthUpstream, 0]);
      }
    }
  });

  it('with friction, fall and a deep end: Runge and Kutta within 0.05 %', () => {
    for (const [shape, length, slope, n, flow, end] of [[ditch, 20, 0.004, 0.025, 0.02, 0.2], [round, 8, 0.005, 0.011, 0.003, 0.09], [vee, 15, 0, 0.02, 0.01, 0.15], [box, 8, -0.002, 0.012, 0.003, 0.1]] as const) {
      const surface = lateralProfile(one(shape, length, slope, n), flow, end, 400);
      for (const share of [0.1, 0.5, 0.8]) expectRatio(depthAtStation(surface, share * length), rungeKutta(shape, length, slope, n, flow, end, share * length), 5e-4);
    }
  });

  it('one reach or the same reach in two pieces', () => {
    const whole = lateralProfile(one(round, 8, 0.004, 0.012), 0.003, 0.09, 400);
    const pieces = lateralProfile({ ...one(round, 8, 0, 0.012), reaches: [{ length: 5, slope: 0.004, drop: 0 }, { length: 3, slope: 0.004, drop: 0 }] }, 0.003, 0.09, 400);
    expectRatio(pieces.depthUpstream, whole.depthUpstream, 1e-5);
    expectRatio(depthAtStation(pieces, 5), depthAtStation(whole, 5), 1e-5);
    expect(pieces.profile).toHaveLength(801);
    expect(pieces.profile[0]?.x).toBe(0);
    expectNear(pieces.profile.at(-1)?.x ?? NaN, 8, 0);
  });

  it('a step keeps the energy head while the water below stands over it, else the upper reach ends free', () => {
    const stepped = (drop: number): LateralRun => ({ ...one(box, 4, 0, 0.01), reaches: [{ length: 4, slope: 0, drop }, { length: 4, slope: 0, drop: 0 }] });
    const low = lateralProfile(stepped(0.02), 0.003, 0.12, 200);
    const [above, below] = low.profile.filter(({ x }) => Math.abs(x - 4) < 1e-12);
    expectNear(specificEnergy(box, 0.0015, above?.depth ?? NaN), specificEnergy(box, 0.0015, below?.depth ?? NaN) - 0.02, 1e-9);
    const high = lateralProfile(stepped(0.3), 0.003, 0.12, 200);
    const edge = high.profile.filter(({ x }) => Math.abs(x - 4) < 1e-12)[0];
    expect(edge?.depth).toBe(criticalDepthIn(box, 0.0015));
    const alone = lateralProfile(one(box, 4, 0, 0.01), 0.0015, null, 200);
    expectRatio(high.depthUpstream, alone.depthUpstream, 1e-9);
    expect(lateralProfile(stepped(0), 0.003, 0.12, 200).profile).toHaveLength(401);
  });

  it('flow that enters at the upper end is not thrown away: without inflow the channel is a plain backwater', () => {
    const run = { ...one(box, 8, 0.005, 0.012), headFlow: 0.003 };
    const surface = lateralProfile(run, 0.003, 0.11, 400);
    const slope = (y: number): number => {
      const { area, wettedPerimeter, topWidth } = sectionAt(box, y);
      return (0.005 - (0.012 * 0.012 * 9e-6) / (area * area * Math.pow(area / wettedPerimeter, 4 / 3))) / (1 - (9e-6 * topWidth) / (GRAVITY * area * area * area));
    };
    let y = 0.11;
    for (let i = 0; i < 8000; i += 1) y -= 0.001 * slope(y - 0.0005 * slope(y));
    expectRatio(surface.depthUpstream, y, 1e-4);
    expect(() => lateralProfile(run, 0.002, 0.11)).toThrow('value.negative at inflow');
  });

  it('still water is level, and a dry upper end is dry', () => {
    const still = lateralProfile(one(round, 8, 0.01, 0.012), 0, 0.1);
    expectNear(still.depthUpstream, 0.02, 1e-5);
    const dry = lateralProfile({ ...one(box, 4, 0, 0.012), reaches: [{ length: 4, slope: 0, drop: 0.2 }, { length: 4, slope: 0.05, drop: 0 }] }, 0, 0.1);
    expect(dry.depthUpstream).toBe(0);
    expect([dry.depthAtOutlet, dry.criticalDepth]).toEqual([0.1, 0]);
  });

  it('an end below critical depth is free, and steep reaches stand at critical depth', () => {
    expect(lateralProfile(one(ditch, 5), 0.01, 0.001).depthUpstream).toBe(lateralProfile(one(ditch, 5), 0.01, null).depthUpstream);
    const steep = lateralProfile(one(ditch, 6, 0.1, 0.02), 0.01, null);
    for (const { x, depth } of steep.profile) expect(depth).toBeGreaterThanOrEqual(criticalDepthIn(ditch, (0.01 * x) / 6) * (1 - 1e-9));
  });

  it('names what is wrong', () => {
    const bad = (change: Partial<LateralRun>, flow = 0.01, end: number | null = null, steps = 10): (() => unknown) => () => lateralProfile({ ...one(ditch, 5), ...change }, flow, end, steps);
    expect(bad({ reaches: [] })).toThrow('channel.noReach at reaches');
    expect(bad({ reaches: [{ length: 0, slope: 0, drop: 0 }] })).toThrow('value.notPositive at reaches/0/length');
    expect(bad({ reaches: [{ length: 1, slope: NaN, drop: 0 }] })).toThrow('value.notFinite at reaches/0/slope');
    expect(bad({ reaches: [{ length: 1, slope: 0, drop: -1 }] })).toThrow('value.negative at reaches/0/drop');
    expect(bad({ roughness: -1 })).toThrow('value.negative at roughness');
    expect(bad({ headFlow: -1 })).toThrow('value.negative at headFlow');
    expect(bad({}, -1)).toThrow('value.negative at flow');
    expect(bad({}, 0.01, -1)).toThrow('value.negative at endDepth');
    expect(bad({}, 0.01, null, 0)).toThrow('value.notPositive at steps');
  });
});
