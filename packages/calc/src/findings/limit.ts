/** What a limit is measured in: decides how its SI value is written for a reader. */
export type LimitQuantity =
  | 'height' | 'length' | 'tape' | 'slope' | 'number' | 'percent' | 'count' | 'velocity' | 'stress' | 'seconds' | 'minutes' | 'hours' | 'area' | 'flow' | 'intensity';

/**
 * A limit as data: `pass` is met, between the two a caution, beyond `fail` a stop. SI units.
 * `atLeast`: more is better; `atMost`: less is better.
 */
export interface Limit {
  readonly sense: 'atLeast' | 'atMost';
  readonly quantity: LimitQuantity;
  readonly pass: number;
  readonly fail: number;
  readonly source: string;
}

export type Verdict = 'pass' | 'warn' | 'fail';

/** A `fail` that nothing reaches: what breaks such a limit is a caution, never a stop. */
export const unreached = 1e7;

export const isReached = (limit: Limit): boolean => Math.abs(limit.fail) < unreached;

/** Rounding of typed sizes must not turn a limit that is just met into one that is missed; a hundredth of a small limit is more than rounding. */
const nearly = 1e-6;
const slackOf = (pass: number): number => (pass === 0 ? nearly : Math.min(nearly * Math.max(1, Math.abs(pass)), 0.01 * Math.abs(pass)));

/** Holds a value against a limit. */
export function judge(value: number, limit: Pick<Limit, 'sense' | 'pass' | 'fail'>): Verdict {
  const slack = slackOf(limit.pass);
  if (limit.sense === 'atLeast') return value >= limit.pass - slack ? 'pass' : value >= limit.fail - slack ? 'warn' : 'fail';
  return value <= limit.pass + slack ? 'pass' : value <= limit.fail + slack ? 'warn' : 'fail';
}
