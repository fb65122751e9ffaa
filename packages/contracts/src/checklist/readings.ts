import type { FieldFact } from '../checklists.ts';
import { heads, type Follows } from './causality.ts';
import { jointAt, levelOn, type LaidLine, reachesDown, reachesUp, shotsOf } from './laidLine.ts';

type Profile = Extract<FieldFact, { kind: 'profile' }>;

/** What one fact says of a measure. */
export interface Reading {
  readonly fact: FieldFact;
  readonly value: number;
}

/**
 * What the inverts of a laid pipe say of a measure [m, -]; null where they say nothing: its ends, what lies near a joint, and the least fall of any segment.
 * Along a known line a shot stands for an end only where the end is, and the fall is known once both are shot. Of several shots near a joint the worst stands
 * for it, as far from the design at the joint as it is where it was shot.
 *
 * @param line the pipe as it was asked for; without it the first and the last shot are its ends
 */
export function profileValue({ shots }: Pick<Profile, 'shots'>, name: string, line: LaidLine | null = null): number | null {
  const [first, last] = [shots[0], shots.at(-1)];
  if (first === undefined || last === undefined) return null;
  const [up, down] = [line === null || reachesUp(line, shots), line === null || reachesDown(line, shots)];
  if (name === 'invertUp') return up ? first.level : null;
  if (name === 'invertDown') return down ? last.level : null;
  if (name === 'slope') return up && down ? leastFall(shots) : null;
  return line === null ? null : nearJoint(line, shots, name);
}

function leastFall(shots: Profile['shots']): number {
  return Math.min(...shots.slice(1).map(({ at, level }, i) => ((shots[i]?.level ?? level) - level) / (at - (shots[i]?.at ?? 0))));
}

function nearJoint(line: LaidLine, shots: Profile['shots'], name: string): number | null {
  const joint = jointAt(line, name);
  if (joint === null) return null;
  const off = shotsOf(shots, joint).map(({ at, level }) => level - levelOn(line, at));
  const worst = off.reduce<number | null>((most, one) => (most === null || Math.abs(one) > Math.abs(most) ? one : most), null);
  return worst === null ? null : levelOn(line, joint) + worst;
}

/** Distances must rise from the upper end down. */
export function shotsRise({ shots }: Pick<Profile, 'shots'>): boolean {
  return shots.every(({ at }, i) => i === 0 || at > (shots[i - 1]?.at ?? at));
}

/** All readings of a measure, also those that a later one stands in the place of. */
export function readingsOf(facts: readonly FieldFact[], name: string, line: LaidLine | null): Reading[] {
  return facts.flatMap((fact) => {
    const value = fact.kind === 'measured' && fact.name === name ? fact.value : fact.kind === 'profile' ? profileValue(fact, name, line) : null;
    return value === null ? [] : [{ fact, value }];
  });
}

/** The readings of a measure that no other of them follows. */
export function headReadings(facts: readonly FieldFact[], name: string, follows: Follows, line: LaidLine | null = null): readonly Reading[] {
  const readings = readingsOf(facts, name, line);
  const last = new Set(heads(readings.map(({ fact }) => fact), follows));
  return readings.filter(({ fact }) => last.has(fact));
}
