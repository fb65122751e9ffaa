import type { OptionSpace, Digits } from './space.ts';
import type { Worth } from './measure.ts';

/** A combination that was measured. Plain data: it travels between workers. */
export interface Candidate extends Worth {
  readonly index: number;
  readonly cost: number;
  /** Places of the alternatives of every backup choice. */
  readonly backup: readonly number[];
}

/** A combination that may not be built, with the check that stops it. It was not measured. */
export interface Rejected {
  readonly index: number;
  readonly cost: number;
  readonly check: string;
}

/** What is known of a set of combinations at best: no member costs less, is worth more or stands earlier. */
export type Best = Candidate;

/**
 * Whether a candidate makes another one pointless: nowhere worse, and somewhere better or, all being equal, earlier in the order.
 * Of a set: `other` holds its best values, so that every member is dominated when this holds.
 */
export function dominates(one: Candidate, other: Best): boolean {
  if (one.cost > other.cost || one.lower < other.lower || one.held < other.held) return false;
  let better = one.cost < other.cost || one.lower > other.lower || one.held > other.held || one.index < other.index;
  for (let i = 0; i < one.backup.length; i += 1) {
    if (one.backup[i]! < other.backup[i]!) return false;
    if (one.backup[i]! > other.backup[i]!) better = true;
  }
  return better;
}

/** Candidates that no other one dominates, cheapest first. */
export function frontOf(candidates: readonly Candidate[]): Candidate[] {
  return candidates.filter((one) => !candidates.some((other) => other !== one && dominates(other, one)))
    .sort((a, b) => a.cost - b.cost || a.index - b.index);
}

export function backupOf(space: OptionSpace, digits: Digits): number[] {
  return digits.filter((_, choice) => space.roles[choice] === 'backup');
}
