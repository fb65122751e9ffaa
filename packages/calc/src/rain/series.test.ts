import { describe, expect, it } from 'vitest';
import { DAY, HOUR, MINUTE } from '../common/constants.ts';
import { seededRandom } from '../math/random.ts';
import { fixtureCsv, fixtureRow, given } from '../testing/fixtures.ts';
import { expectNear, expectRatio } from '../testing/near.ts';
import { annualExceedance, intensityOf } from './depthAt.ts';
import { chanceInYears, partialFromAnnual, recurrenceInterval } from './exceedance.ts';
import { formulaDepth, formulaIntensity } from './intensityFormula.ts';
import { parseAtlas14 } from './parseAtlas14.ts';
import { SCS_TYPES, scsFraction } from './scsDistribution.ts';
import { scsHyetograph } from './scsHyetograph.ts';
import { userSeries } from './userSeries.ts';

const FILE = 'rain/rainfall.json';
const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

describe('chances', () => {
  it('row 2.8 turned round', () => {
    for (const [ari, aep] of Object.entries(fixtureRow(FILE, '2.8').expected)) {
      expectRatio(recurrenceInterval(annualExceedance(Number(ari))), Number(ari), 1e-9);
      expectRatio(recurrenceInterval(aep), Number(ari), 1e-3);
    }
    for (const value of [0, 1, -0.1, NaN]) expect(() => recurrenceInterval(value)).toThrow('rain.notAChance at exceedance');
    for (const value of [0, -1, NaN]) expect(() => annualExceedance(value)).toThrow('value.notPositive at recurrenceInterval');
  });
  it('row 2.9: annual maxima of "1/2" are partial durations of 1.44 years, so they are less than the 2-year ones; alike at 25', () => {
    const row = fixtureRow(FILE, '2.9');
    expectNear(partialFromAnnual(2), row.expected['ari2'], row.tolerance);
    expectNear(partialFromAnnual(25), row.expected['ari25'], row.tolerance);
    expect(given(row, 'annual2')).toBeLessThan(given(row, 'partial2'));
    for (const value of [1, 0.5, NaN]) expect(() => partialFromAnnual(value)).toThrow('rain.notAChance at period');
  });
  it('over some years', () => {
    expectRatio(chanceInYears(10, 1), annualExceedance(10), 1e-12);
    expectNear(chanceInYears(25, 30), 1 - Math.exp(-1.2), 1e-12);
    expect(chanceInYears(25, 0)).toBe(0);
    expect(() => chanceInYears(0, 1)).toThrow('value.notPositive at interval');
    expect(() => chanceInYears(1, -1)).toThrow('value.negative at years');
  });
});

describe('depth and intensity files of one place', () => {
  it('row 2.7: the two agree to their rounding', () => {
    const row = fixtureRow(FILE, '2.7');
    for (const [minutes, printed] of Object.entries(row.expected)) {
      const intensity = intensityOf(given(row, `d${minutes}`) * 25.4, Number(minutes) * MINUTE);
      expectNear((intensity * HOUR) / 0.0254, printed, row.tolerance);
    }
  });
  it('row 2.7: an intensity file in inches an hour gives the same depths', () => {
    const row = fixtureRow(FILE, '2.7');
    const lines = Object.entries(row.expected).map(([minutes, value]) => `${minutes}-min:, ${value},${value * 1.2}`);
    const text = ['Point precipitation frequency estimates (inches/hour)', 'NOAA Atlas 14 Volume 11 Version 2', 'Data type: Precipitation intensity', 'Time series type: Partial duration', '', 'PRECIPITATION FREQUENCY ESTIMATES', 'by duration for ARI (years):, 1,2', ...lines, ''].join('\n');
    const { table, measure } = parseAtlas14(text);
    expect(measure).toBe('intensity');
    table.durations.forEach((duration, i) => expectRatio((table.depths[i]?.[0] ?? NaN) / 25.4, given(row, `d${duration / MINUTE}`), 0.005));
  });
});

describe('local rainfall formula', () => {
  const denver = { a: 96.6, b: 0.97, c: 13.9 };
  it('row 3b: depths of the Denver formula', () => {
    const printed = [0.693, 1.001, 1.178, 1.296, 1.379, 1.443, 1.492, 1.533, 1.566, 1.594, 1.618, 1.639];
    printed.forEach((depth, i) => expectNear(formulaDepth(denver, (i + 1) * 600) / 25.4, depth, 5.1e-4));
    expectNear((formulaIntensity(denver, 600) * HOUR) / 0.0254, 0.693 * 6, 3.1e-3);
    expect(() => formulaIntensity({ ...denver, a: 0 }, 600)).toThrow('value.notPositive at a');
    expect(() => formulaIntensity({ ...denver, c: -1 }, 600)).toThrow('value.negative at c');
    expect(() => formulaIntensity(denver, 0)).toThrow('value.notPositive at duration');
    expect(() => formulaDepth(denver, -1)).toThrow('value.notPositive at duration');
  });
});

describe('NRCS storm in blocks', () => {
  it('row 3a.depth: the hour round noon', () => {
    const row = fixtureRow(FILE, '3a.depth');
    const { depths } = scsHyetograph('II', given(row, 'p24'), 1800);
    expectNear(sum(depths.slice(23, 25)), row.expected['hour'], row.tolerance);
  });
  it('holds the day at any block length, also one that does not divide it', () => {
    for (const type of SCS_TYPES) {
      for (const block of [60, 300, 420, 1800, 7 * HOUR, DAY]) {
        const { depths } = scsHyetograph(type, 100, block);
        expectNear(sum(depths), 100, 1e-10);
        expect(depths).toHaveLength(Math.ceil(DAY / block));
        expect(Math.min(...depths)).toBeGreaterThanOrEqual(0);
        expectNear(depths[0] ?? NaN, 100 * scsFraction(type, block), 1e-12);
      }
    }
    expect(scsHyetograph('II', 0, 3600).depths.every((depth) => depth === 0)).toBe(true);
  });
  it('row 3a.austin: the five-minute table of type III', () => {
    const row = fixtureRow(FILE, '3a.austin');
    const gap = (from: number, to: number): number => Math.max(...fixtureCsv('rain/scsTypeThreeFineExtract.csv')
      .map((line) => ({ hours: Number(line['time_h_mm']?.split(':')[0]) + Number(line['time_h_mm']?.split(':')[1]) / 60, fraction: Number(line['cumulative']) }))
      .filter(({ hours }) => hours >= from && hours <= to)
      .map(({ hours, fraction }) => fraction - scsFraction('III', hours * HOUR)));
    expect(gap(8, 9.5)).toBeLessThanOrEqual((row.expected['early'] ?? NaN) + row.tolerance);
    expect(gap(16, 16.2)).toBeLessThanOrEqual((row.expected['early'] ?? NaN) + row.tolerance);
    expectNear(gap(16.9, 17.1), row.expected['late'], row.tolerance);
    expect(gap(0, 1.5)).toBeLessThan(1e-4);
  });
  it('says when it is too coarse, and what it cannot do', () => {
    const coarse = (response: number | null): boolean => scsHyetograph('II', 100, 300, response).tooCoarse;
    expect([coarse(null), coarse(15 * MINUTE - 1), coarse(15 * MINUTE)]).toEqual([false, true, false]);
    expect(() => scsHyetograph('II', 100, DAY + 1)).toThrow('storm.unevenBlocks at block');
    expect(() => scsHyetograph('II', 100, 4)).toThrow('storm.unevenBlocks at block');
    expect(scsHyetograph('II', 100, 4.32).depths).toHaveLength(20000);
    expect(() => scsHyetograph('II', -1, 300)).toThrow('value.negative at rain');
    expect(() => scsHyetograph('II', 1, 300, -1)).toThrow('value.negative at response');
    expect(() => scsHyetograph('II', 1, 0)).toThrow('value.notPositive at block');
    for (const time of [-1, DAY + 1, NaN]) expect(() => scsFraction('II', time)).toThrow('storm.outsideDay at time');
  });
});

describe('series of a gauge', () => {
  it('readings at block ends are the blocks; longer ones are spread, shorter ones added', () => {
    expect(userSeries([{ time: 0, depth: 9 }, { time: 300, depth: 1 }, { time: 600, depth: 2 }], 300)).toEqual([1, 2]);
    expect(userSeries([{ time: 100, depth: 0 }, { time: 1000, depth: 3 }], 300)).toEqual([1, 1, 1]);
    expect(userSeries([{ time: 0, depth: 0 }, { time: 100, depth: 1 }, { time: 200, depth: 1 }, { time: 300, depth: 2 }], 300)).toEqual([4]);
    const uneven = userSeries([{ time: 0, depth: 0 }, { time: 200, depth: 2 }, { time: 500, depth: 6 }], 300);
    [2 + 2, 4].forEach((depth, i) => expectNear(uneven[i] ?? NaN, depth, 1e-12));
    expect(uneven).toHaveLength(2);
  });
  it('loses nothing, whatever the times', () => {
    const random = seededRandom(31);
    for (const block of [60, 300, 777]) {
      let time = 0;
      const readings = Array.from({ length: 60 }, () => ({ time: (time += 1 + random() * 900), depth: random() * 4 }));
      const depths = userSeries(readings, block);
      expectRatio(sum(depths), sum(readings.slice(1).map(({ depth }) => depth)), 1e-12);
      expect(Math.min(...depths)).toBeGreaterThanOrEqual(0);
      expect(depths).toHaveLength(Math.ceil(((readings.at(-1)?.time ?? NaN) - (readings[0]?.time ?? NaN)) / block));
    }
  });
  it('names what is wrong', () => {
    const two = [{ time: 0, depth: 0 }, { time: 300, depth: 1 }];
    expect(() => userSeries(two.slice(0, 1), 300)).toThrow('storm.tooFewReadings at readings');
    expect(() => userSeries([...two, { time: 300, depth: 1 }], 300)).toThrow('storm.notForward at readings/2/time');
    expect(() => userSeries([{ time: NaN, depth: 0 }, { time: 1, depth: 1 }], 300)).toThrow('value.notFinite at readings/0/time');
    expect(() => userSeries([{ time: 0, depth: 0 }, { time: 1, depth: -1 }], 300)).toThrow('value.negative at readings/1/depth');
    expect(() => userSeries(two, 0)).toThrow('value.notPositive at block');
    expect(() => userSeries(two, 1e-3)).toThrow('storm.unevenBlocks at block');
  });
});
