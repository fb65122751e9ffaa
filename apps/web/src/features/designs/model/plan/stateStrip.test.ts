import { locateRules, type SignedLocateRule } from '@yardfall/contracts';
import { expect, test } from 'vitest';
import { isNarrower, stateStrip } from './stateStrip.ts';

const builtIn = locateRules as never;
const signed = (tolerance: number, inForce: boolean) => ({ inForce, rule: { state: 'SC', tolerance, toleranceFrom: 'mark' } }) as unknown as SignedLocateRule;

test('the strip is that of the rule by which the tickets of the state are counted', () => {
  // 24 inches from the outside edge, S.C. Code 58-36-20, the section from memory.
  expect(stateStrip({ builtIn, entered: [] }, 'SC')).toEqual({ tolerance: expect.closeTo(24 * 0.0254, 9) as number, from: 'edge' });
  // 18 inches, Ala. Code 37-15-2.
  expect(stateStrip({ builtIn, entered: [] }, 'AL')?.tolerance).toBeCloseTo(0.4572, 9);
  expect(stateStrip({ builtIn, entered: [signed(0.5, false), signed(0.9, true)] }, 'SC')).toEqual({ tolerance: 0.9, from: 'mark' });
  expect(stateStrip({ builtIn, entered: [signed(0.9, true)] }, 'TX')).toBeNull();
});
test('narrower is what a reader would call narrower', () => {
  const strip = stateStrip({ builtIn, entered: [] }, 'SC');
  expect([0.4572, 0.6, 0.608, 0.6096, 1].map((tolerance) => isNarrower(tolerance, strip))).toEqual([true, true, false, false, false]);
  expect(isNarrower(0, null)).toBe(false);
});
