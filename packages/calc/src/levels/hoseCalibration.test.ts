import { describe, expect, it } from 'vitest';
import { GALLON, GALLON_PER_MINUTE } from '../common/constants.ts';
import { hoseCalibration } from './hoseCalibration.ts';

const fill = (...seconds: readonly number[]) => hoseCalibration(5 * GALLON, seconds);

describe('flow of a hose', () => {
  it('5 gallons in 40 seconds are 7.5 gpm', () => {
    expect((fill(40)?.flow ?? NaN) / GALLON_PER_MINUTE).toBeCloseTo(7.5, 12);
    expect(fill(40)).toMatchObject({ spread: 0, good: false });
  });
  it('is good after three fills within one twentieth', () => {
    // 7.5, 7.3171 and 7.5 gpm: spread 0.1829/7.439 = 2.46 %; with 43 s, 6.9767 gpm: 0.5233/7.3256 = 7.1 %.
    expect([fill(40, 41, 40)?.good, fill(40, 40)?.good, fill(40, 43, 40)?.good]).toEqual([true, false, false]);
    expect(fill(40, 43, 40)?.spread).toBeCloseTo(0.07143, 4);
    expect(((fill(40, 50)?.flow ?? NaN) / GALLON_PER_MINUTE)).toBeCloseTo((7.5 + 6) / 2, 12);
  });
  it('nothing without a fill; refuses no time and no bucket', () => {
    expect(fill()).toBeNull();
    expect(() => fill(0)).toThrow('value.notPositive');
    expect(() => hoseCalibration(0, [])).toThrow('value.notPositive');
  });
});
