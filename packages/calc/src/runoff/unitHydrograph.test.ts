import { describe, expect, it } from 'vitest';
import { CUBIC_FOOT, FOOT, HOUR, INCH } from '../common/constants.ts';
import { fixtureCsv, fixtureRow, given } from '../testing/fixtures.ts';
import { expectNear, expectRatio } from '../testing/near.ts';
import { CURVILINEAR, curvilinearOrdinate, gammaOrdinate, logGamma, peakRateFactor, shapeOfPeakRate } from './dimensionlessHydrograph.ts';
import { blockFor, LEAST_AREA, timeToPeak, unitHydrograph, unitHydrographStorm, unitPeak } from './unitHydrograph.ts';

const FILE = 'runoff/unitHydrograph.json';
const MILE = 5280 * FOOT;
const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
const site = { area: 20000, timeOfConcentration: 1800, duration: 180, shape: 'curvilinear' } as const;

/** Area under the printed points up to each of them, by trapezoids. */
const massCurve = CURVILINEAR.reduce<number[]>((area, [x, y], i) => {
  const before = CURVILINEAR[i - 1];
  return [...area, before === undefined ? 0 : (area[i - 1] ?? 0) + ((x - before[0]) * (y + before[1])) / 2];
}, []);
const whole = massCurve.at(-1) ?? NaN;

describe('curvilinear unit hydrograph', () => {
  it('holds the 33 printed points and is straight between them', () => {
    const rows = fixtureCsv('runoff/dimensionlessHydrograph.csv');
    expect(rows).toHaveLength(33);
    for (const row of rows) expectNear(curvilinearOrdinate(Number(row['t_over_Tp'])), Number(row['q_over_qp']), 1e-12);
    expectNear(curvilinearOrdinate(0.05), 0.015, 1e-12);
    expectNear(curvilinearOrdinate(4.75), 0.0025, 1e-12);
    expect([curvilinearOrdinate(5), curvilinearOrdinate(9)]).toEqual([0, 0]);
    expect(() => curvilinearOrdinate(-0.1)).toThrow('value.negative at ratio');
  });

  it('rows 5.8 and 5.12: area, and the peak rate factor that goes with it', () => {
    const row = fixtureRow(FILE, '5.8');
    expectNear(whole, row.expected['area'], 5.1e-6);
    expectNear(645.333 / whole, row.expected['factor'], row.tolerance);
    const swce = fixtureRow(FILE, '5.12');
    expectNear(whole * given(swce, 'peakTime') * given(swce, 'peak'), swce.expected['area'], swce.tolerance);
  });

  it('rows 5.9 and 5.10: the mass curve', () => {
    const row = fixtureRow(FILE, '5.9');
    expectNear((massCurve[10] ?? NaN) / whole, row.expected['share'], row.tolerance);
    const gaps = fixtureCsv('runoff/dimensionlessHydrograph.csv').map((line, i) => Math.abs((massCurve[i] ?? NaN) / whole - Number(line['Qa_over_Q'])));
    expectNear(Math.max(...gaps), fixtureRow(FILE, '5.10').expected['gap'], fixtureRow(FILE, '5.10').tolerance);
  });
});

describe('gamma unit hydrograph', () => {
  it('row 5.11: seven printed peak rate factors, and back to m', () => {
    const rows = fixtureCsv('runoff/gammaHydrograph.csv');
    expect(rows).toHaveLength(7);
    for (const row of rows) expectNear(peakRateFactor(Number(row['m'])), Number(row['PRF']), 0.8);
    const recomputed: readonly [number, number][] = [[0.26, 100.8], [1, 237.4], [2, 349.3], [3, 433.7], [3.7, 484.2], [4, 504.3], [5, 566.2]];
    for (const [m, factor] of recomputed) expectNear(peakRateFactor(m), factor, 0.051);
    for (const m of [0.26, 1, 3.7, 5]) expectNear(shapeOfPeakRate(peakRateFactor(m)), m, 1e-9);
    expect(() => shapeOfPeakRate(5000)).toThrow('root.notBracketed');
    expect(() => peakRateFactor(0)).toThrow('value.notPositive at shape');
  });
  it('peaks at one, and its area is the one of the gamma function', () => {
    expect([gammaOrdinate(3.7, 0), gammaOrdinate(3.7, 1)]).toEqual([0, 1]);
    expectNear(gammaOrdinate(2, 0.5), Math.exp(2) * 0.25 * Math.exp(-1), 1e-12);
    expect(gammaOrdinate(2, 0.99)).toBeLessThan(1);
    for (const m of [1, 3.7]) {
      let area = 0;
      for (let i = 0; i < 20000; i += 1) area += gammaOrdinate(m, (i + 0.5) * 0.001) * 0.001;
      expectRatio(645.333 / area, peakRateFactor(m), 1e-6);
    }
    expect(() => gammaOrdinate(0, 1)).toThrow('value.notPositive at shape');
    expect(() => gammaOrdinate(1, -1)).toThrow('value.negative at ratio');
  });
  it('factorials', () => {
    expectNear(logGamma(1), 0, 1e-13);
    expectNear(logGamma(5), Math.log(24), 1e-12);
    expectNear(logGamma(11), Math.log(3628800), 1e-11);
    expectNear(logGamma(1.5), Math.log(Math.sqrt(Math.PI) / 2), 1e-12);
  });
});

describe('unit hydrograph of a site', () => {
  it('row 5.13: peaks of two watersheds', () => {
    const row = fixtureRow(FILE, '5.13');
    for (const i of [1, 2]) {
      const peak = unitPeak(given(row, `a${i}`) * MILE * MILE, given(row, `t${i}`) * HOUR, INCH);
      expectNear(peak / CUBIC_FOOT, row.expected[`q${i}`], row.tolerance);
    }
    expectRatio(unitPeak(1e6, 3600, 0.02, 300), (unitPeak(1e6, 3600, 0.01) * 2 * 300) / 484, 1e-12);
    expect(unitPeak(1, 1, 0)).toBe(0);
    expect(() => unitPeak(0, 1, 1)).toThrow('value.notPositive at area');
    expect(() => unitPeak(1, 1, -1)).toThrow('value.negative at depth');
  });

  it('volume to 1e-4 and the peak near the factor, for both forms', () => {
    for (const [shape, factor] of [['curvilinear', 484], [3.7, 484.2], [2, 349.3], [5, 566.2]] as const) {
      const unit = unitHydrograph({ ...site, shape });
      expectRatio(sum(unit) * site.duration, site.area, 1e-12);
      expectRatio(Math.max(...unit), unitPeak(site.area, timeToPeak(1800, 180), 1, factor), 0.02);
      const peakAt = unit.indexOf(Math.max(...unit)) * site.duration;
      expect(Math.abs(peakAt - timeToPeak(1800, 180))).toBeLessThanOrEqual(site.duration);
      expect(unit[0]).toBe(0);
      expect(Math.min(...unit)).toBeGreaterThanOrEqual(0);
    }
    // With fine blocks the scaling has nothing left to do: the peak is that of 483.05.
    const fine = unitHydrograph({ ...site, duration: 6 });
    expectRatio(Math.max(...fine), unitPeak(site.area, timeToPeak(1800, 6), 1, 483.05), 5e-4);
    expect(timeToPeak(1800, 180)).toBe(90 + 1080);
    expect(unitHydrograph(site)).toHaveLength(33);
  });

  it('only above one acre and with blocks up to 0.133 of the time of concentration', () => {
    expect(() => unitHydrograph({ ...site, area: LEAST_AREA })).not.toThrow();
    expect(() => unitHydrograph({ ...site, area: LEAST_AREA * 0.999 })).toThrow('runoff.areaTooSmall at area');
    expect(() => unitHydrograph({ ...site, duration: 0.133 * 1800 })).not.toThrow();
    expect(() => unitHydrograph({ ...site, duration: 0.134 * 1800 })).toThrow('runoff.blockTooLong at duration');
    expect(() => unitHydrograph({ ...site, timeOfConcentration: 0 })).toThrow('value.notPositive at timeOfConcentration');
    expect([blockFor(1800), blockFor(HOUR), blockFor(452), blockFor(450), blockFor(60 / 0.133)]).toEqual([180, 420, 60, null, 60]);
    expect(() => blockFor(0)).toThrow('value.notPositive');
    expect(() => timeToPeak(0, 1)).toThrow('value.notPositive at timeOfConcentration');
  });

  it('a storm is the sum of its blocks', () => {
    const unit = unitHydrograph(site);
    expect(unitHydrographStorm(site, [1])).toEqual(unit);
    const storm = unitHydrographStorm(site, [0.002, 0, 0.01]);
    expect(storm).toHaveLength(unit.length + 2);
    expectRatio(sum(storm) * site.duration, 0.012 * site.area, 1e-12);
    expectNear(storm[3] ?? NaN, 0.002 * (unit[3] ?? NaN) + 0.01 * (unit[1] ?? NaN), 1e-15);
    expect(() => unitHydrographStorm(site, [0.1, -1])).toThrow('value.negative at excess/1');
  });
});
