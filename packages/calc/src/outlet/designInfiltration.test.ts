import { describe, expect, it } from 'vitest';
import { INCH, MINUTE } from '../common/constants.ts';
import { DESIGN_INFILTRATION, designInfiltration } from './designInfiltration.ts';

const perHour = INCH / 3600;
/** 6 in hole, 6 in of water at the start of each 30 minutes. */
const hole = (...drops: readonly number[]) => designInfiltration(3 * INCH, drops.map((drop) => ({ interval: 30 * MINUTE, startDepth: 6 * INCH, drop: drop * INCH })));

describe('infiltration to design with', () => {
  it('takes the walls off and halves it', () => {
    // 1 in in half an hour is 2 in/h of drop. Bottom 9 pi, walls 2 pi 3 x 5.5 = 33 pi sq in: f = 2 x 9/42 in/h = 0.42857; half is 0.21429.
    const result = hole(1, 1, 1);
    expect((result?.measured ?? NaN) / perHour).toBeCloseTo(18 / 42, 12);
    expect((result?.design ?? NaN) / perHour).toBeCloseTo(9 / 42, 12);
    expect(result).toMatchObject({ settled: true, usable: false });
  });
  it('the slowest of the last three counts; earlier ones do not', () => {
    const result = hole(5, 3, 2.9, 2.95);
    // 2.9 in: 5.8 in/h x 3/(3 + 2 x 4.55) = 17.4/12.1
    expect((result?.measured ?? NaN) / perHour).toBeCloseTo(17.4 / 12.1, 12);
    expect(result).toMatchObject({ settled: true, usable: true });
  });
  it('has not settled with two readings, or when the last three differ by more than a tenth', () => {
    expect([hole(3, 3)?.settled, hole(3, 2.5, 2)?.settled, hole(9, 3, 3, 3)?.settled]).toEqual([false, false, true]);
  });
  it('the last three may differ by a tenth of their mean, and no more', () => {
    // With the same water on average in each interval the rate goes with the drop.
    const settled = (...drops: readonly number[]) => designInfiltration(3 * INCH, drops.map((drop) => ({ interval: 1800, startDepth: (6 + drop / 2) * INCH, drop: drop * INCH })))?.settled;
    expect([settled(1.9, 2, 2.1), settled(1.9, 2, 2.101), settled(2.12, 2, 1.88)]).toEqual([true, false, false]);
  });
  it('is usable from half an inch to ten inches an hour, ends included', () => {
    // A wide shallow test: walls of no height would be the bottom alone. With r = 3 and h_mean = 1.5 in the share is 1/2.
    const at = (rate: number) => designInfiltration(3 * INCH, [{ interval: 3600, startDepth: 1.5 * INCH + (rate * 4 * INCH) / 2, drop: rate * 4 * INCH }]);
    expect([0.49, 0.5, 10, 10.01].map((rate) => at(rate)?.usable)).toEqual([false, true, true, false]);
    expect((at(0.5)?.design ?? NaN) / DESIGN_INFILTRATION.least).toBeCloseTo(1, 12);
  });
  it('nothing without a reading; refuses a hole that drops nothing', () => {
    expect(hole()).toBeNull();
    expect(() => hole(0)).toThrow('value.notPositive');
    expect(() => designInfiltration(0, [])).toThrow('value.notPositive');
  });
});
