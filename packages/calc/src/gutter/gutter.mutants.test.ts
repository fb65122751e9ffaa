import { describe, expect, it } from 'vitest';
import { eavesGutterCapacity, lengthFactor } from './eavesGutter.ts';

describe('length factor of the table', () => {
  // Source: EN 12056-3:2000 table 6, from memory, as the method holds it; every printed entry.
  const falls = [0.003, 0.004, 0.006, 0.008, 0.01];
  const rows: readonly (readonly [number, readonly number[]])[] = [
    [100, [0.93, 1.03, 1.08, 1.13, 1.18]], [150, [0.86, 1.07, 1.17, 1.27, 1.37]], [200, [0.8, 1.1, 1.25, 1.4, 1.55]],
  ];
  it('gives every entry back', () => {
    for (const [ratio, shares] of rows) shares.forEach((share, i) => { expect(lengthFactor(ratio, falls[i] ?? NaN)).toBeCloseTo(share, 12); });
  });
  it('is 1 up to fifty depths and straight from there', () => {
    expect([lengthFactor(50, 0.01), lengthFactor(20, 0)]).toEqual([1, 1]);
    expect(lengthFactor(50.5, 0)).toBeCloseTo(1 - 0.07 / 100, 12);
    falls.forEach((fall, i) => { expect(lengthFactor(75, fall)).toBeCloseTo((1 + (rows[0]?.[1][i] ?? NaN)) / 2, 12); });
    for (const i of [1, 2, 3]) expect(lengthFactor(100, ((falls[i] ?? NaN) + (falls[i + 1] ?? NaN)) / 2)).toBeCloseTo(((rows[0]?.[1][i] ?? NaN) + (rows[0]?.[1][i + 1] ?? NaN)) / 2, 12);
    expect(lengthFactor(125, 0.0035)).toBeCloseTo((0.93 + 0.86 + 1.03 + 1.07) / 4, 12);
  });
  it('a half round of 10,000 mm2 carries 2.5 l/s after the margin', () => {
    // Q = 0.9 * 2.78e-5 * A^1.25, A in mm2, by hand: 10,000^1.25 = 100,000.
    const diameter = Math.sqrt(0.08 / Math.PI);
    expect(eavesGutterCapacity({ shape: 'halfRound', width: diameter, depth: diameter / 2, drainageLength: 1, bendAt: null }) * 1000).toBeCloseTo(2.502, 9);
  });
});
