import type { FieldFact, ItemState, Requirement } from '../checklists.ts';
import { causality, heads, type Follows, type JudgedFact } from './causality.ts';
import { ofKind, shown, type FactOf } from './evidence.ts';

export interface FoldedItem {
  readonly state: ItemState;
  readonly missing: readonly string[];
  /** Until when [ms] the photos are fresh enough for the guarded work; null when the item has no such limit. */
  readonly freshUntil: number | null;
}

type Decision = FactOf<'failed' | 'corrected' | 'notApplicable' | 'waived'>;

/**
 * The state of an item: the fold of the kept facts that no other names in `seen`.
 * The order in which facts arrive plays no part; facts that disagree leave the item disputed until a person decides with both in view.
 */
export function foldItem(requirement: Requirement, facts: readonly JudgedFact[]): FoldedItem {
  const follows = causality(facts);
  const kept = distinct(facts.filter(({ verdict }) => verdict === 'kept').map(({ fact }) => fact));
  const decisions = heads(kept.filter(isDecision), follows);
  const behind = clocks(facts);
  const evidence = countedEvidence(kept, decisions, follows, behind);
  const freshUntil = freshLimit(requirement, evidence, behind);
  if (disagree(kept, decisions, follows)) return { state: 'disputed', missing: ['choice'], freshUntil };
  return { ...settle(requirement, evidence, decisions[0]?.kind ?? null, follows), freshUntil };
}

function settle(requirement: Requirement, evidence: readonly FieldFact[], decided: Decision['kind'] | null, follows: Follows): Omit<FoldedItem, 'freshUntil'> {
  if (decided === 'failed') return { state: 'failed', missing: ['correction'] };
  if (decided === 'notApplicable') return { state: 'notApplicable', missing: [] };
  const { missing, outside, disagrees } = shown(requirement, evidence, follows);
  const again = decided === 'corrected' ? missingAfterCorrection(evidence) : [];
  const lack = [...missing, ...again.filter((what) => !missing.includes(what))];
  if (lack.length === 0) return { state: 'proven', missing: [] };
  if (decided === 'waived') return { state: 'waived', missing: [] };
  if (disagrees) return { state: 'disputed', missing: lack };
  if (outside) return { state: 'failed', missing: lack };
  return { state: evidence.length > 0 || decided !== null ? 'started' : 'open', missing: lack };
}

/** What was put right is shown again, with a photo and a second signature. */
function missingAfterCorrection(evidence: readonly FieldFact[]): readonly string[] {
  return [
    ...(ofKind(evidence, 'photo').length === 0 ? ['photo:1'] : []),
    ...(ofKind(evidence, 'signed').length === 0 ? ['signature:second'] : []),
  ];
}

/** After a correction only what was recorded in its knowledge counts, and only photos taken after it. */
function countedEvidence(kept: readonly FieldFact[], decisions: readonly Decision[], follows: Follows, behind: Behind): readonly FieldFact[] {
  const corrections = decisions.filter(({ kind }) => kind === 'corrected');
  const at = ({ id }: FieldFact, time: string) => instant(time) + (behind.get(id) ?? 0);
  return kept.filter((fact) => {
    if (isDecision(fact)) return false;
    return corrections.every((correction) => follows(fact, correction) && !(fact.kind === 'photo' && at(fact, fact.takenAt) < at(correction, correction.deviceTime)));
  });
}

/** Decisions of different kinds, or a tick or signature that did not know of a failure or of "not applicable". */
function disagree(kept: readonly FieldFact[], decisions: readonly Decision[], follows: Follows): boolean {
  if (new Set(decisions.map(({ kind }) => kind)).size > 1) return true;
  const against = decisions.filter(({ kind }) => kind === 'failed' || kind === 'notApplicable');
  const claims = kept.filter(({ kind }) => kind === 'ticked' || kind === 'signed');
  return against.some((decision) => claims.some((claim) => !follows(decision, claim) && !follows(claim, decision)));
}

/** How far the clock of each fact's phone was behind the office's [ms], so that what two phones recorded is told by one clock. */
type Behind = ReadonlyMap<string, number>;

function clocks(facts: readonly JudgedFact[]): Behind {
  return new Map(facts.map(({ fact, clockBehind }) => [fact.id, (clockBehind ?? 0) * 1000]));
}

/** The moment at which the oldest of the newest `minPhotos` photos grows stale. */
function freshLimit({ freshFor, minPhotos }: Requirement, evidence: readonly FieldFact[], behind: Behind): number | null {
  if (freshFor === null) return null;
  const newest = new Map<string, number>();
  for (const { id, photoId, takenAt } of ofKind(evidence, 'photo')) newest.set(photoId, Math.max(newest.get(photoId) ?? -Infinity, instant(takenAt) + (behind.get(id) ?? 0)));
  const taken = [...newest.values()].sort((a, b) => b - a)[Math.max(minPhotos, 1) - 1];
  return taken === undefined ? -Infinity : taken + freshFor * 1000;
}

function isDecision(fact: FieldFact): fact is Decision {
  return fact.kind === 'failed' || fact.kind === 'corrected' || fact.kind === 'notApplicable' || fact.kind === 'waived';
}

function distinct(facts: readonly FieldFact[]): readonly FieldFact[] {
  return [...new Map(facts.map((fact) => [fact.id, fact])).values()];
}

function instant(text: string): number {
  return Date.parse(text);
}
