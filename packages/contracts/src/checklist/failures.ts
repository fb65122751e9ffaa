import type { FieldFact, Requirement } from '../checklists.ts';
import type { Follows, JudgedFact } from './causality.ts';
import { isInside, ofKind, type FactOf } from './evidence.ts';
import { lineOf } from './laidLine.ts';
import { sameName } from './names.ts';
import { readingsOf } from './readings.ts';

/** Within this time whoever recorded a figure may say that it was mistyped [ms]. Ours. */
export const slipWithin = 10 * 60_000;

/** What is known of who recorded a fact, and of the clock that it was recorded by. */
export type Recorded = Pick<JudgedFact, 'fact' | 'memberId' | 'clockBehind'>;

/** Whether one fact takes another back as mistyped: a figure of the same person, a few minutes before. What was seen to be wrong later is a failure and no slip. */
export function strikes(slip: Recorded, figure: Recorded): boolean {
  if (slip.fact.kind !== 'struck' || slip.fact.figure !== figure.fact.id || (figure.fact.kind !== 'measured' && figure.fact.kind !== 'profile')) return false;
  const passed = moment(slip) - moment(figure);
  const isSame = slip.memberId === undefined || figure.memberId === undefined || slip.memberId === figure.memberId;
  return isSame && passed >= 0 && passed <= slipWithin;
}

function moment({ fact, clockBehind = 0 }: Recorded): number {
  return Date.parse(fact.deviceTime) + clockBehind * 1000;
}

/** Ids of the figures that were taken back as mistyped. */
export function mistyped(facts: readonly Recorded[]): ReadonlySet<string> {
  const slips = facts.filter(({ fact }) => fact.kind === 'struck');
  return new Set(facts.filter((figure) => slips.some((slip) => strikes(slip, figure))).map(({ fact }) => fact.id));
}

/** The measures that were found outside their limits, by a figure that no correction follows. A good figure after it does not undo what was found. */
export function uncorrected({ measures, ...requirement }: Requirement, kept: readonly FieldFact[], follows: Follows): readonly string[] {
  const line = lineOf({ measures, ...requirement });
  const corrections = ofKind(kept, 'corrected');
  return measures
    .filter((measure) => measure.optional !== true && readingsOf(kept, measure.name, line).some(({ fact, value }) => !isInside(measure, value) && !corrections.some((correction) => follows(correction, fact))))
    .map(({ name }) => name);
}

/** Who has to do with what failed: whoever signed or ticked it before, and whoever put it right. */
function firstNames(judged: readonly JudgedFact[], corrections: readonly FieldFact[], follows: Follows): readonly string[] {
  return judged.flatMap(({ fact, by }) => {
    const own = by === undefined ? [] : [by];
    if (corrections.some(({ id }) => id === fact.id)) return own;
    if (corrections.some((correction) => follows(fact, correction))) return [];
    return fact.kind === 'signed' ? [fact.name] : fact.kind === 'ticked' ? own : [];
  });
}

/** Whether somebody else has looked at what was put right and signed for it; the customer's signature is no second look. */
export function isSeenAgain(judged: readonly JudgedFact[], evidence: readonly FieldFact[], corrections: readonly FactOf<'corrected'>[], follows: Follows): boolean {
  const first = firstNames(judged, corrections, follows);
  return ofKind(evidence, 'signed').some(({ signer, name }) => signer !== 'homeowner' && !first.some((one) => sameName(one, name)));
}
