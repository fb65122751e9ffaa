import { describe, expect, it } from 'vitest';
import { HOUR } from '../common/constants.ts';
import { fixtureRow, given } from '../testing/fixtures.ts';
import { levelPool } from './levelPool.ts';

describe('level pool by storage indication', () => {
  const row = fixtureRow('routing/linearReservoir.json', '16');
  const series = (values: Readonly<Record<string, number>>, letter: string): number[] => Object.entries(values).filter(([name]) => name.startsWith(letter) && name.length === 3).map(([, value]) => value);
  const inflow = series(row.given, 'i');
  const expected = series(row.expected, 'o');
  const k = given(row, 'k') * HOUR;

  it('linear reservoir, K 2 h, step 1 h: 26 outflows to 0.001', () => {
    expect([inflow.length, expected.length]).toEqual([26, 26]);
    const { outflow } = levelPool([{ storage: 0, outflow: 0 }, { storage: 2000 * k, outflow: 2000 }], inflow, HOUR, given(row, 'first'));
    outflow.forEach((q, i) => expect(Math.abs(q - (expected[i] ?? NaN))).toBeLessThanOrEqual(row.tolerance));
    expect(outflow.indexOf(Math.max(...outflow))).toBe(7);
  });

  it('keeps its volume in every step of a bent curve, and peaks where inflow and outflow cross', () => {
    const pairs = [0, 1, 2, 3, 4, 5].map((y) => ({ storage: 1e6 * y * (1 + y), outflow: 250 * y * Math.sqrt(y) }));
    const { outflow, storage } = levelPool(pairs, inflow, HOUR, 100);
    for (let i = 1; i < outflow.length; i += 1) {
      const net = (((inflow[i] ?? 0) + (inflow[i - 1] ?? 0) - (outflow[i] ?? 0) - (outflow[i - 1] ?? 0)) * HOUR) / 2;
      expect(Math.abs((storage[i] ?? 0) - (storage[i - 1] ?? 0) - net)).toBeLessThan(1e-6);
    }
    const top = outflow.indexOf(Math.max(...outflow));
    expect(inflow[top - 1] ?? 0).toBeGreaterThan(outflow[top - 1] ?? 0);
    expect(inflow[top + 1] ?? 0).toBeLessThan(outflow[top + 1] ?? 0);
  });

  it('refuses a table that does not rise', () => {
    expect(() => levelPool([{ storage: 0, outflow: 0 }], inflow, 1, 0)).toThrow('levelPool.tooFewPairs');
    expect(() => levelPool([{ storage: 1, outflow: 0 }, { storage: 1, outflow: 1 }], inflow, 1, 0)).toThrow('levelPool.notRising');
  });
});
