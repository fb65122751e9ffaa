import type { FieldFact } from '../checklists.ts';
import { heads, type Follows } from './causality.ts';

type Profile = Extract<FieldFact, { kind: 'profile' }>;

/** What one fact says of a measure. */
export interface Reading {
  readonly fact: FieldFact;
  readonly value: number;
}

/** What the inverts of a laid pipe say of a measure: its ends, and the least fall of any segment [m, -]; null for any other measure. */
export function profileValue({ shots }: Pick<Profile, 'shots'>, name: string): number | null {
  const [first, last] = [shots[0], shots.at(-1)];
  if (first === undefined || last === undefined) return null;
  if (name === 'invertUp') return first.level;
  if (name === 'invertDown') return last.level;
  if (name !== 'slope') return null;
  return Math.min(...shots.slice(1).map(({ at, level }, i) => ((shots[i]?.level ?? level) - level) / (at - (shots[i]?.at ?? 0))));
}

/** Distances must rise from the upper end down. */
export function shotsRise({ shots }: Pick<Profile, 'shots'>): boolean {
  return shots.every(({ at }, i) => i === 0 || at > (shots[i - 1]?.at ?? at));
}

function readingsOf(facts: readonly FieldFact[], name: string): Reading[] {
  return facts.flatMap((fact) => {
    const value = fact.kind === 'measured' && fact.name === name ? fact.value : fact.kind === 'profile' ? profileValue(fact, name) : null;
    return value === null ? [] : [{ fact, value }];
  });
}

/** The readings of a measure that no other of them follows. */
export function headReadings(facts: readonly FieldFact[], name: string, follows: Follows): readonly Reading[] {
  const readings = readingsOf(facts, name);
  const last = new Set(heads(readings.map(({ fact }) => fact), follows));
  return readings.filter(({ fact }) => last.has(fact));
}
