import { describe, expect, it } from 'vitest';
import { GALLON_PER_MINUTE, INCH } from '../common/constants.ts';
import { fixtureCsv, fixtureRow, given } from '../testing/fixtures.ts';
import { eavesGutterCapacity } from './eavesGutter.ts';
import { leaderCapacity } from './verticalLeader.ts';

describe('vertical leader', () => {
  it('row 11.1: nine sizes of the plumbing code, printed whole', () => {
    const rows = fixtureCsv('gutter/verticalLeaders.csv');
    expect(rows).toHaveLength(9);
    for (const row of rows) expect(Math.abs(leaderCapacity(Number(row['diam_in']) * INCH) / GALLON_PER_MINUTE - Number(row['gpm']))).toBeLessThanOrEqual(0.5);
  });
  it('a fuller leader carries more; nonsense is refused', () => {
    expect(leaderCapacity(0.1, 1 / 3)).toBeGreaterThan(leaderCapacity(0.1, 0.25));
    expect(() => leaderCapacity(0)).toThrow('value.notPositive');
    expect(() => leaderCapacity(0.1, 1.5)).toThrow('value.aboveOne');
  });
});

describe('eaves gutter', () => {
  const FILE = 'gutter/eavesGutter.json';
  it('EN 12056-3 at 10 000 mm2', () => {
    const row = fixtureRow(FILE, 'en.10000');
    const own = eavesGutterCapacity({ shape: 'rectangular', width: given(row, 'width'), depth: given(row, 'depth'), drainageLength: given(row, 'length'), bendAt: null });
    expect(own * 1000).toBeCloseTo(row.expected['litres'] ?? NaN, 9);
    // The frictionless level channel of that size: B*sqrt(g)*(W/sqrt(3))^1.5 = 4.344 L/s; the standard gives 0.80 of it, times 0.9.
    expect((own * 1000) / 0.9 / 4.344).toBeCloseTo(0.8, 2);
  });
  it('a 5 in half-round gutter carries 21 to 26 gpm', () => {
    const row = fixtureRow(FILE, 'en.half');
    const gpm = eavesGutterCapacity({ shape: 'halfRound', width: given(row, 'widthInches') * INCH, depth: given(row, 'depthInches') * INCH, drainageLength: given(row, 'length'), bendAt: null }) / GALLON_PER_MINUTE;
    expect(gpm).toBeGreaterThan(row.expected['gpmFrom'] ?? NaN);
    expect(gpm).toBeLessThan(row.expected['gpmTo'] ?? NaN);
  });
  it('length and bends take their share', () => {
    const row = fixtureRow(FILE, 'en.length');
    const base = { shape: 'rectangular', width: 0.1, depth: 0.1, bendAt: null } as const;
    const short = eavesGutterCapacity({ ...base, drainageLength: 1 });
    for (const [ratio, share] of Object.entries(row.expected)) expect(eavesGutterCapacity({ ...base, drainageLength: Number(ratio) * 0.1 }) / short).toBeCloseTo(share, 9);
    expect(eavesGutterCapacity({ ...base, drainageLength: 100 }) / short).toBeCloseTo(0.8, 9);
    expect([1, 3, 5].map((bendAt) => Number((eavesGutterCapacity({ ...base, drainageLength: 1, bendAt }) / short).toFixed(6)))).toEqual([0.8, 0.9, 1]);
  });
  it('follows the frictionless channel in how depth counts', () => {
    const flow = (width: number, depth: number): number => eavesGutterCapacity({ shape: 'rectangular', width, depth, drainageLength: 1, bendAt: null });
    expect(flow(0.2, 0.05) / flow(0.1, 0.1)).toBeCloseTo(Math.pow(0.25, 0.25), 9);
    expect(flow(0.05, 0.2)).toBeCloseTo(flow(0.1, 0.1), 12);
  });
});
