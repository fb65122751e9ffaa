import { describe, expect, it } from 'vitest';
import { PI } from '../math/constants.ts';
import { fixtureRows, given } from '../testing/fixtures.ts';
import { gaugeDistance } from './gaugeDistance.ts';
import { poissonAtMost, poissonLimits } from './poissonLimits.ts';

describe('limits of a count', () => {
  it('are the published ones', () => {
    const rows = fixtureRows('record/poissonLimits.json');
    expect(rows.length).toBeGreaterThan(10);
    for (const row of rows) {
      const { lower, upper } = poissonLimits(given(row, 'count'), given(row, 'confidence'));
      expect(Math.abs(lower - (row.expected['lower'] ?? NaN)), row.id).toBeLessThanOrEqual(row.tolerance);
      expect(Math.abs(upper - (row.expected['upper'] ?? NaN)), row.id).toBeLessThanOrEqual(row.tolerance);
    }
  });

  it('leave the tails that they promise, for small counts and large ones', () => {
    for (const count of [1, 7, 63, 64, 65, 200, 5000]) {
      const { lower, upper } = poissonLimits(count, 0.9);
      expect(1 - poissonAtMost(count - 1, lower)).toBeCloseTo(0.05, 8);
      expect(poissonAtMost(count, upper)).toBeCloseTo(0.05, 8);
    }
  });

  it('add up the chances of all counts', () => {
    let sum = 0;
    for (let n = 0; n <= 40; n += 1) sum += poissonAtMost(n, 3.5) - (n === 0 ? 0 : poissonAtMost(n - 1, 3.5));
    expect(sum).toBeCloseTo(1, 12);
    expect(poissonAtMost(2, 1)).toBeCloseTo(2.5 * Math.exp(-1), 14);
  });

  it('refuse what is no count', () => {
    expect(() => poissonLimits(1.5)).toThrow('record.count');
    expect(() => poissonLimits(-1)).toThrow('value.negative');
    expect(() => poissonLimits(Number.NaN)).toThrow('value.notFinite');
    expect(() => poissonLimits(3, 1)).toThrow('record.confidence');
  });
});

describe('distance of a gauge', () => {
  it('one degree of a meridian is R pi/180, and half the way round is the longest', () => {
    expect(gaugeDistance({ latitude: 39, longitude: -77 }, { latitude: 40, longitude: -77 })).toBeCloseTo((6371008.8 * PI) / 180, 4);
    expect(gaugeDistance({ latitude: 60, longitude: 10 }, { latitude: 60, longitude: 10 })).toBe(0);
    expect(gaugeDistance({ latitude: 0, longitude: 0 }, { latitude: 0, longitude: 180 })).toBeCloseTo(6371008.8 * PI, 3);
  });

  it('refuses places that are nowhere', () => {
    expect(() => gaugeDistance({ latitude: 91, longitude: 0 }, { latitude: 0, longitude: 0 })).toThrow('record.place');
    expect(() => gaugeDistance({ latitude: 0, longitude: 0 }, { latitude: Number.NaN, longitude: 0 })).toThrow('record.place');
  });
});
