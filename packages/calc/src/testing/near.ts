import { expect } from 'vitest';

/** Own value within a tolerance of a printed one; what is not a number fails. */
export function expectNear(own: number, printed: number | undefined, tolerance: number): void {
  const gap = Math.abs(own - (printed ?? NaN));
  expect(gap, `${own} against ${printed ?? 'nothing'}`).toBeLessThanOrEqual(tolerance);
}

/** Own value within a share of a printed one. */
export function expectRatio(own: number, printed: number | undefined, tolerance: number): void {
  expectNear(own / (printed ?? NaN), 1, tolerance);
}
