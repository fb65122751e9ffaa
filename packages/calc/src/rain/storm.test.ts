import { describe, expect, it } from 'vitest';
import { fixtureCsv, fixtureRow, fixtureRows, fixtureText, given } from '../testing/fixtures.ts';
import { alternatingBlock, arrangeBlocks } from './alternatingBlock.ts';
import { annualExceedance, depthAt, intensityOf } from './depthAt.ts';
import { parseAtlas14 } from './parseAtlas14.ts';
import { SCS_TYPES, scsFraction } from './scsDistribution.ts';

const FILE = 'rain/rainfall.json';
const { table } = parseAtlas14(fixtureText('rain/pulaskiDepthInches.csv'));
const inch = (mm: number): number => mm / 25.4;

describe('depth and intensity (Pulaski VA, NOAA Atlas 14)', () => {
  it('rows 2.1 and 2.2: the table itself and its intensities', () => {
    for (const id of ['2.1', '2.2']) {
      const row = fixtureRow(FILE, id);
      for (const [minutes, value] of Object.entries(row.expected)) {
        const seconds = Number(minutes) * 60;
        const depth = depthAt(table, seconds, given(row, 'returnPeriod'));
        const own = id === '2.1' ? inch(depth) : intensityOf(depth, seconds) * 3600 / 0.0254;
        expect(Math.abs(own - value)).toBeLessThanOrEqual(row.tolerance);
      }
    }
  });

  it('row 2.3: log-log between durations, not a straight line', () => {
    const row = fixtureRow(FILE, '2.3');
    expect(Math.abs(inch(depthAt(table, 720, 10)) - (row.expected['depth'] ?? 0))).toBeLessThan(row.tolerance);
    expect(inch(depthAt(table, 720, 10))).toBeGreaterThan(0.7994 + 0.003);
  });

  it('between return periods the logarithm of depth is straight', () => {
    const middle = Math.sqrt(10 * 25);
    expect(depthAt(table, 3600, middle)).toBeCloseTo(Math.sqrt(depthAt(table, 3600, 10) * depthAt(table, 3600, 25)), 9);
  });

  it('nothing is extrapolated', () => {
    expect(() => depthAt(table, 299, 10)).toThrow('rain.outsideTable');
    expect(() => depthAt(table, 3600, 1001)).toThrow('rain.outsideTable');
    expect(() => depthAt(table, NaN, 10)).toThrow('rain.outsideTable');
    expect(depthAt(table, 60 * 86400, 1000)).toBeCloseTo(19.9 * 25.4, 9);
  });

  it('row 2.8: chance in a year', () => {
    const row = fixtureRow(FILE, '2.8');
    for (const [ari, value] of Object.entries(row.expected)) expect(Math.abs(annualExceedance(Number(ari)) - value)).toBeLessThan(row.tolerance);
  });
});

describe('alternating block', () => {
  it('row 3b: Denver formula, increments and order', () => {
    const row = fixtureRow(FILE, '3b');
    const cumulative = (seconds: number): number => {
      const minutes = seconds / 60;
      return ((96.6 / (Math.pow(minutes, 0.97) + 13.9)) * minutes) / 60;
    };
    const storm = arrangeBlocks(cumulative, 7200, 600);
    const sorted = Object.values(row.expected);
    expect(storm).toHaveLength(12);
    expect(sorted).toHaveLength(12);
    [...storm].sort((a, b) => b - a).forEach((depth, i) => expect(Math.abs(depth - (sorted[i] ?? NaN))).toBeLessThan(row.tolerance));
    const rank = storm.map((depth) => storm.filter((other) => other > depth).length);
    expect(rank).toEqual([11, 10, 8, 6, 4, 2, 0, 1, 3, 5, 7, 9]);
  });

  it('a day in 5-minute blocks starts its peak at noon, holds the day depth, and nests every duration', () => {
    const storm = alternatingBlock(table, 10, 86400, 300);
    const total = storm.reduce((a, b) => a + b, 0);
    expect(storm).toHaveLength(288);
    expect(storm.indexOf(Math.max(...storm))).toBe(144);
    expect(inch(total)).toBeCloseTo(3.49, 9);
    expect(inch(Math.max(...storm))).toBeCloseTo(0.452, 9);
    const hour = storm.slice(144 - 5, 144 + 7).reduce((a, b) => a + b, 0);
    expect(inch(hour)).toBeGreaterThanOrEqual(1.72 - 1e-9);
    expect(storm[145]).toBeGreaterThanOrEqual(storm[143] ?? 0);
  });

  it('the climate allowance scales every block', () => {
    const plain = alternatingBlock(table, 25, 86400, 300);
    alternatingBlock(table, 25, 86400, 300, 0.2).forEach((depth, i) => expect(depth).toBeCloseTo((plain[i] ?? NaN) * 1.2, 9));
  });

  it('refuses blocks that do not fit', () => {
    expect(() => alternatingBlock(table, 10, 86400, 7000)).toThrow('storm.unevenBlocks');
    expect(() => alternatingBlock(table, 10, 0, 300)).toThrow('value.notPositive');
    expect(() => alternatingBlock(table, 10, 86400, 60)).toThrow('rain.outsideTable');
  });
});

describe('NRCS 24-hour types', () => {
  it('rows 3a: printed fractions and the depth of the wettest hour', () => {
    for (const row of fixtureRows(FILE).filter((r) => /^3a\.(I|IA|II|III)$/.test(r.id))) {
      const type = SCS_TYPES.find((name) => row.id.endsWith(`.${name}`));
      if (type === undefined) throw new Error(row.id);
      for (const [hour, value] of Object.entries(row.expected)) expect(scsFraction(type, Number(hour) * 3600)).toBeCloseTo(value, 9);
    }
    expect(3.49 * (scsFraction('II', 12.5 * 3600) - scsFraction('II', 11.5 * 3600))).toBeCloseTo(1.57748, 4);
  });

  it('all 92 printed numbers', () => {
    const rows = fixtureCsv('rain/scsDistributions.csv');
    expect(rows).toHaveLength(23);
    for (const row of rows) for (const type of SCS_TYPES) expect(scsFraction(type, Number(row['t_h']) * 3600)).toBeCloseTo(Number(row[`Type${type}`]), 12);
  });

  it('rise from 0 to 1 and never fall', () => {
    for (const type of SCS_TYPES) {
      expect([scsFraction(type, 0), scsFraction(type, 86400)]).toEqual([0, 1]);
      for (let t = 900; t <= 86400; t += 900) expect(scsFraction(type, t)).toBeGreaterThanOrEqual(scsFraction(type, t - 900));
    }
  });
});
