import type { OptionSpace, Digits } from './space.ts';
import type { Worth } from './measure.ts';

/** A combination that was measured. Plain data: it travels between workers. */
export interface Candidate extends Worth {
  readonly index: number;
  readonly cost: number;
  /** Places of the alternatives of every backup choice. */
  readonly backup: readonly number[];
}

/** What is known of a set of combinations: no member costs less or stands earlier, and all have this backup. */
export type Best = Pick<Candidate, 'index' | 'cost' | 'backup'>;

/** Whether a candidate costs no more than any member of a set and has no lesser backup. */
export const isNoWorse = (one: Candidate, set: Best): boolean => one.cost <= set.cost && one.backup.every((digit, i) => digit >= set.backup[i]!);

/** Freeboards are weighed in whole millimetres [m]: nobody lays closer. Source: ours. */
export const weighed = 0.001;

export const steps = (lower: number): number => Math.floor(lower / weighed);

/** Freeboard from which on one weighs more than this one [m]. */
export const nextStep = (lower: number): number => (steps(lower) + 1) * weighed;

/** Whether a candidate makes another one pointless: nowhere worse, and somewhere better or, all being equal, earlier in the order. */
export function dominates(one: Candidate, other: Candidate): boolean {
  const height = steps(one.lower) - steps(other.lower);
  if (height < 0 || one.held < other.held || !isNoWorse(one, other)) return false;
  return one.cost < other.cost || height > 0 || one.held > other.held || one.index < other.index || one.backup.some((digit, i) => digit > other.backup[i]!);
}

/** Candidates that no other one dominates, cheapest first. */
export function frontOf(candidates: readonly Candidate[]): Candidate[] {
  return candidates.filter((one) => !candidates.some((other) => other !== one && dominates(other, one)))
    .sort((a, b) => a.cost - b.cost || a.index - b.index);
}

export function backupOf(space: OptionSpace, digits: Digits): number[] {
  return digits.filter((_, choice) => space.roles[choice] === 'backup');
}
