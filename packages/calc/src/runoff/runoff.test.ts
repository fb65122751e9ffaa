import { describe, expect, it } from 'vitest';
import { CUBIC_FOOT, FOOT, GALLON_PER_MINUTE, HOUR, INCH, MINUTE } from '../common/constants.ts';
import { seededRandom } from '../math/random.ts';
import { manningVelocity } from '../pipe/manning.ts';
import { fixtureCsv, fixtureRow, given } from '../testing/fixtures.ts';
import { compositeCoefficient } from './compositeCoefficient.ts';
import { curveNumberExcess, curveNumberRunoff } from './curveNumber.ts';
import { kinematicPlane, planeEquilibriumTime } from './kinematicPlane.ts';
import { rationalFlow } from './rational.ts';
import { kirpichTime } from './kirpich.ts';
import { shallowFlowVelocity } from './shallowFlow.ts';
import { sheetFlowTime } from './sheetFlow.ts';
import { travelTime } from './travelTime.ts';
import { volumetricLoss } from './volumetricLoss.ts';

const ACRE = 43560 * FOOT * FOOT;
const inchPerHour = INCH / HOUR;
const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

describe('rational method', () => {
  it('rows 4.1 and 4.2', () => {
    for (const id of ['4.1', '4.2']) {
      const r = fixtureRow('runoff/rational.json', id);
      const own = rationalFlow(given(r, 'c'), given(r, 'inPerHour') * inchPerHour, given(r, 'acres') * ACRE) / CUBIC_FOOT;
      const ratio = own / (r.expected['cfs'] ?? NaN);
      expect(ratio).toBeGreaterThan(1);
      expect(ratio - 1).toBeLessThan(r.tolerance);
    }
  });
  it('rows 4.5 and 4.6: gallons a minute from square feet', () => {
    for (const id of ['4.5', '4.6']) {
      const r = fixtureRow('runoff/rational.json', id);
      const own = rationalFlow(1, given(r, 'inPerHour') * inchPerHour, given(r, 'ft2') * FOOT * FOOT) / GALLON_PER_MINUTE;
      expect(Math.abs(own - (r.expected['gpm'] ?? NaN))).toBeLessThan(r.tolerance);
    }
  });
  it('row 4.3: composite coefficient', () => {
    const r = fixtureRow('runoff/rational.json', '4.3');
    const surfaces = [1, 2].map((i) => ({ area: given(r, `a${i}`), coefficient: given(r, `c${i}`) }));
    expect(compositeCoefficient(surfaces)).toBeCloseTo(r.expected['c'] ?? NaN, 12);
    expect(() => compositeCoefficient([])).toThrow('runoff.noArea');
    expect(() => rationalFlow(1.1, 1, 1)).toThrow('value.aboveOne');
  });
});

describe('losses', () => {
  it('depression storage is filled first, then the share runs off', () => {
    expect(volumetricLoss([1, 2, 4, 0, 3], 0.5, 2)).toEqual([0, 0.5, 2, 0, 1.5]);
    const rain = Array.from({ length: 40 }, seededRandom(5));
    expect(sum(volumetricLoss(rain, 0.3, 2.5))).toBeCloseTo((sum(rain) - 2.5) * 0.3, 12);
    expect(sum(volumetricLoss(rain, 0.3, 1e3))).toBe(0);
  });

  it('row 5.1: TR-55 table 2-1, 285 of 286 entries', () => {
    const missed: string[] = [];
    let count = 0;
    for (const line of fixtureCsv('runoff/curveNumberDepth.csv')) {
      for (const [name, text] of Object.entries(line)) {
        if (!name.startsWith('CN') || text === '') continue;
        count += 1;
        const own = curveNumberRunoff(Number(line['P_in']) * 25.4, Number(name.slice(2))) / 25.4;
        if (Math.abs(own - Number(text)) > 0.0051) missed.push(`${line['P_in']} ${name}`);
      }
    }
    expect(count).toBe(286);
    expect(missed).toEqual(['7 CN50']);
  });

  it('blocks add up to the storm', () => {
    const rain = Array.from({ length: 50 }, seededRandom(9)).map((u) => u * 5);
    expect(sum(curveNumberExcess(rain, 80))).toBeCloseTo(curveNumberRunoff(sum(rain), 80), 9);
    expect(Math.min(...curveNumberExcess(rain, 80))).toBeGreaterThanOrEqual(0);
    expect(() => curveNumberRunoff(10, 0)).toThrow('runoff.curveNumber');
  });
});

describe('kinematic plane', () => {
  const plane = { length: 20, slope: 0.01, roughness: 0.05 };
  const excess = 5e-5;
  const alpha = Math.sqrt(plane.slope) / plane.roughness;

  it('rises as alpha*(i*t)^(5/3) and settles at i*L', () => {
    const time = planeEquilibriumTime(plane, excess);
    expect(time).toBeCloseTo(Math.pow(plane.length / (alpha * Math.pow(excess, 2 / 3)), 0.6), 6);
    const step = time / 2000;
    const { outflow } = kinematicPlane(plane, new Array<number>(4000).fill(excess), step, 400);
    for (const share of [0.25, 0.5, 0.75]) {
      const i = Math.floor(share * 2000);
      const analytic = alpha * Math.pow(excess * (i + 1) * step, 5 / 3);
      expect(Math.abs((outflow[i] ?? 0) / analytic - 1)).toBeLessThan(0.01);
    }
    expect((outflow.at(-1) ?? 0) / (excess * plane.length)).toBeCloseTo(1, 6);
    expect(Math.max(...outflow)).toBeLessThanOrEqual(excess * plane.length * (1 + 1e-9));
  });

  it('a lawn under a nested storm keeps its peak: ten cells and minute steps within 4 % of the minute means of a fine grid', () => {
    const lawn = { length: 20, slope: 0.005, roughness: 0.24 };
    const storm = Array.from({ length: 96 }, (_, i) => 2e-6 + 3e-5 * Math.exp(-Math.abs(i - 48.5) / 3)).flatMap((i) => [i, i, i, i, i]);
    const instants = kinematicPlane(lawn, storm.flatMap((i) => new Array<number>(20).fill(i)), 3, 200).outflow;
    const fine = Math.max(...storm.map((_, i) => sum(instants.slice(20 * i, 20 * i + 20)) / 20));
    expect(Math.abs(Math.max(...kinematicPlane(lawn, storm, 60).outflow) / fine - 1)).toBeLessThan(0.04);
  });

  it('keeps every drop at any step and grid', () => {
    const random = seededRandom(21);
    for (const [step, cells] of [[60, 20], [300, 5], [10, 50], [300, 1]] as const) {
      const rain = Array.from({ length: 200 }, (_, i) => (i % 40 < 12 ? random() * 1e-4 : 0));
      const { outflow, stored } = kinematicPlane(plane, rain, step, cells);
      const inVolume = sum(rain) * step * plane.length;
      expect((sum(outflow) * step + stored) / inVolume).toBeCloseTo(1, 11);
      expect(Math.min(...outflow)).toBeGreaterThanOrEqual(0);
    }
  });

  it('never lowers its runoff when the rain grows', () => {
    const random = seededRandom(4);
    const rain = Array.from({ length: 100 }, () => random() * 1e-4);
    const more = rain.map((i) => i + random() * 1e-5);
    const small = kinematicPlane(plane, rain, 60).outflow;
    kinematicPlane(plane, more, 60).outflow.forEach((q, i) => expect(q).toBeGreaterThanOrEqual((small[i] ?? 0) - 1e-15));
  });

  it('floors the slope at 0.1 % and refuses negative rain', () => {
    const flat = kinematicPlane({ ...plane, slope: 0 }, [excess, excess], 60).outflow;
    expect(flat).toEqual(kinematicPlane({ ...plane, slope: 0.001 }, [excess, excess], 60).outflow);
    expect(() => kinematicPlane(plane, [-1], 60)).toThrow('value.negative');
  });
});

describe('time of concentration', () => {
  const FILE = 'runoff/travelTime.json';
  it('rows 6.1 and 6.4: sheet flow', () => {
    const time = (id: string): number => {
      const r = fixtureRow(FILE, id);
      return sheetFlowTime(given(r, 'n'), given(r, 'length') * FOOT, given(r, 'p2') * 25.4, given(r, 'slope'));
    };
    expect(Math.abs(time('6.1') / HOUR - (fixtureRow(FILE, '6.1').expected['hours'] ?? NaN))).toBeLessThan(6e-6);
    expect(Math.abs(time('6.4') / MINUTE - (fixtureRow(FILE, '6.4').expected['minutes'] ?? NaN))).toBeLessThan(6e-5);
  });
  it('rows 6.2 and 6.3: shallow flow, channel, and the sum of TR-55 example 3-1', () => {
    const shallow = fixtureRow(FILE, '6.2');
    const v = shallowFlowVelocity('unpaved', given(shallow, 'slope'));
    expect(Math.abs(v / FOOT - (shallow.expected['velocity'] ?? NaN))).toBeLessThan(shallow.tolerance);
    expect(Math.abs((given(shallow, 'length') * FOOT) / v / HOUR - (shallow.expected['hours'] ?? NaN))).toBeLessThan(shallow.tolerance);
    const channel = fixtureRow(FILE, '6.3');
    const vc = manningVelocity((given(channel, 'area') / given(channel, 'perimeter')) * FOOT, given(channel, 'slope'), given(channel, 'n'));
    expect(Math.abs(vc / FOOT / (channel.expected['velocity'] ?? NaN) - 1)).toBeLessThan(channel.tolerance);
    const sheet = fixtureRow(FILE, '6.1');
    const time = sheetFlowTime(given(sheet, 'n'), given(sheet, 'length') * FOOT, given(sheet, 'p2') * 25.4, given(sheet, 'slope'))
      + travelTime([{ length: given(shallow, 'length') * FOOT, velocity: v }, { length: given(channel, 'length') * FOOT, velocity: vc }]);
    expect(Math.abs(time / HOUR / (channel.expected['sum'] ?? NaN) - 1)).toBeLessThan(channel.tolerance);
  });
  it('sheet flow ends at 300 ft, a path has stretches, paved is faster than unpaved', () => {
    expect(() => sheetFlowTime(0.24, 300 * FOOT, 80, 0.01)).not.toThrow();
    expect(() => sheetFlowTime(0.24, 300.1 * FOOT, 80, 0.01)).toThrow('runoff.sheetFlowTooLong at length');
    expect(() => sheetFlowTime(0, 10, 80, 0.01)).toThrow('value.notPositive at roughness');
    expect(() => travelTime([])).toThrow('runoff.noStretch at stretches');
    expect(() => travelTime([{ length: 1, velocity: 0 }])).toThrow('value.notPositive at stretches/0/velocity');
    expect(shallowFlowVelocity('paved', 0.01) / FOOT).toBeCloseTo(2.03282, 9);
    expect(() => shallowFlowVelocity('paved', 0)).toThrow('value.notPositive at slope');
    expect(() => kirpichTime(100, 0)).toThrow('value.notPositive at slope');
  });
  it('row 6.6: Kirpich', () => {
    const r = fixtureRow(FILE, '6.6');
    for (const i of [1, 2, 3]) {
      const own = kirpichTime(given(r, `l${i}`) * FOOT, given(r, `s${i}`)) / MINUTE;
      expect(Math.abs(own - (r.expected[`t${i}`] ?? NaN))).toBeLessThan(r.tolerance);
    }
  });
});
