import { describe, expect, test } from 'vitest';
import { FOOT, GALLON_PER_MINUTE } from '../common/constants.ts';
import { fixtureRows, given } from '../testing/fixtures.ts';
import { vSwale } from './vSwale.ts';

describe('swale of V section', () => {
  test.each(fixtureRows('swale/vSwale.json').map((row) => [row.id, row] as const))('%s', (_, row) => {
    const swale = { sideSlope: given(row, 'sideSlope'), slope: given(row, 'slope'), roughness: given(row, 'roughness') };
    const own = vSwale(swale, given(row, 'gpm') * GALLON_PER_MINUTE);
    expect(Math.abs(own.depth / FOOT - row.expected['feet']!)).toBeLessThanOrEqual(row.tolerance);
    const speed = row.expected['feetPerSecond'];
    // Speeds are printed to the first or second figure.
    if (speed !== undefined) expect(Math.abs(own.velocity / FOOT / speed - 1)).toBeLessThanOrEqual(0.03);
  });

  test('gives Manning its flow back', () => {
    const swale = { sideSlope: 4, slope: 0.02, roughness: 0.06 };
    const { depth, velocity, topWidth } = vSwale(swale, 0.03);
    const radius = (4 * depth) / (2 * Math.sqrt(17));
    expect(velocity).toBeCloseTo((Math.cbrt(radius) ** 2 * Math.sqrt(0.02)) / 0.06, 12);
    expect(topWidth).toBeCloseTo(8 * depth, 12);
    expect(4 * depth * depth * velocity).toBeCloseTo(0.03, 12);
  });

  test('is dry without flow and refuses a level floor', () => {
    expect(vSwale({ sideSlope: 6, slope: 0.01, roughness: 0.1 }, 0)).toEqual({ depth: 0, velocity: 0, topWidth: 0 });
    expect(() => vSwale({ sideSlope: 6, slope: 0, roughness: 0.1 }, 0.01)).toThrow('value.notPositive');
  });
});
