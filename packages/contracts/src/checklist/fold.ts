import type { FieldFact, ItemState, Requirement } from '../checklists.ts';
import { causality, heads, type Follows, type JudgedFact } from './causality.ts';
import { ofKind, shown, type FactOf } from './evidence.ts';
import { curedAt } from './cure.ts';
import { isLook, lookedUntil, ofToday } from './daily.ts';
import { isSeenAgain, mistyped, uncorrected } from './failures.ts';
import { rulesOf } from './version.ts';

export interface FoldedItem {
  readonly state: ItemState;
  readonly missing: readonly string[];
  /** Until when [ms] the photos are fresh enough for the guarded work; null when the item has no such limit. */
  readonly freshUntil: number | null;
  /** From when on [ms] what was glued bears pressure; null where nothing is, or nothing was written of it. */
  readonly readyAt: number | null;
}

type Decision = FactOf<'failed' | 'corrected' | 'notApplicable' | 'waived'>;

/**
 * The state of an item: the fold of the kept facts that no other names in `seen`.
 * The order in which facts arrive plays no part; facts that disagree leave the item disputed until a person decides with both in view.
 * @param today moment [ms] on the day for which a step is asked that is asked for each day; null takes the last look, whenever it was
 */
export function foldItem(requirement: Requirement, facts: readonly JudgedFact[], today: number | null = null): FoldedItem {
  const follows = causality(facts);
  const slips = mistyped(facts.filter(({ verdict }) => verdict === 'kept'));
  const judged = distinct(facts.filter(({ fact, verdict }) => verdict === 'kept' && !slips.has(fact.id)));
  const kept = judged.map(({ fact }) => fact);
  const decisions = heads(kept.filter(isDecision), follows);
  const behind = clocks(facts);
  const counted = countedEvidence(kept, decisions, follows, behind);
  const timed = counted.map((fact) => ({ fact, at: takenAt(fact, behind) }));
  const evidence = today === null ? counted : ofToday(requirement, timed, today);
  const readyAt = curedAt(requirement, timed);
  const freshUntil = requirement.daily === undefined ? freshLimit(requirement, ofTheTick(requirement, counted, follows, behind), behind) : lookedUntil(requirement, timed, kept.some(({ kind }) => kind === 'ticked'));
  if (disagree(kept, decisions, follows)) return { state: 'disputed', missing: ['choice'], freshUntil, readyAt };
  return { ...settle({ requirement, judged, kept, evidence, follows, behind }, decisions), freshUntil, readyAt };
}

function takenAt(fact: FieldFact, behind: Behind): number {
  return instant(fact.kind === 'photo' ? fact.takenAt : fact.deviceTime) + (behind.get(fact.id) ?? 0);
}

interface Told {
  readonly requirement: Requirement;
  readonly judged: readonly JudgedFact[];
  readonly kept: readonly FieldFact[];
  readonly evidence: readonly FieldFact[];
  readonly follows: Follows;
  readonly behind: Behind;
}

function settle(told: Told, decisions: readonly Decision[]): Pick<FoldedItem, 'state' | 'missing'> {
  const { requirement, kept, evidence, follows } = told;
  const decided = decisions[0]?.kind ?? null;
  if (decided === 'failed') return { state: 'failed', missing: ['correction'] };
  if (decided === 'notApplicable') return { state: 'notApplicable', missing: [] };
  const { missing, outside, disagrees } = shown(requirement, evidence, follows);
  const found = rulesOf(requirement) < 2 || decided === 'waived' ? [] : uncorrected(requirement, kept, follows);
  if (found.length > 0 && !disagrees) return { state: 'failed', missing: [...found.map((name) => `outside:${name}`), 'correction'] };
  const again = [...(decided === 'corrected' ? missingAfterCorrection(told, decisions) : []), ...missingAfterPhotos(told)];
  const lack = [...missing, ...again.filter((what) => !missing.includes(what))];
  if (lack.length === 0) return { state: 'proven', missing: [] };
  if (decided === 'waived') return { state: 'waived', missing: [] };
  if (disagrees) return { state: 'disputed', missing: lack };
  if (outside) return { state: 'failed', missing: lack };
  return { state: evidence.length > 0 || decided !== null ? 'started' : 'open', missing: lack };
}

/** What was put right is shown again, with a photo where the step asks for one, and looked at by somebody else, who signs. */
function missingAfterCorrection({ requirement, judged, evidence, follows }: Told, decisions: readonly Decision[]): readonly string[] {
  if (rulesOf(requirement) < 2) return [...(ofKind(evidence, 'photo').length === 0 ? ['photo:1'] : []), ...(ofKind(evidence, 'signed').length === 0 ? ['signature:second'] : [])];
  return isSeenAgain(judged, evidence, ofKind(decisions, 'corrected'), follows) ? [] : ['signature:second'];
}

/** The tick of a photo that grows old says that nothing was touched since: it is given after the photos. */
function missingAfterPhotos({ requirement, evidence, follows, behind }: Told): readonly string[] {
  if (requirement.freshFor === null || rulesOf(requirement) < 2) return [];
  const covered = new Set(ofKind(ofTheTick(requirement, evidence, follows, behind), 'photo').map(({ photoId }) => photoId));
  return covered.size < requirement.minPhotos && ofKind(evidence, 'ticked').length > 0 ? ['tick'] : [];
}

/** Without the photos that no tick was given after, for a step whose photos grow old. */
function ofTheTick({ freshFor, rules }: Requirement, evidence: readonly FieldFact[], follows: Follows, behind: Behind): readonly FieldFact[] {
  if (freshFor === null || rulesOf({ rules }) < 2) return evidence;
  const at = ({ id }: FieldFact, time: string) => instant(time) + (behind.get(id) ?? 0);
  const ticks = ofKind(evidence, 'ticked');
  return evidence.filter((fact) => fact.kind !== 'photo' || ticks.some((tick) => follows(tick, fact) || (!follows(fact, tick) && at(fact, fact.takenAt) <= at(tick, tick.deviceTime))));
}

/** After a correction only what was recorded in its knowledge counts, and only photos taken after it. */
function countedEvidence(kept: readonly FieldFact[], decisions: readonly Decision[], follows: Follows, behind: Behind): readonly FieldFact[] {
  const corrections = decisions.filter(({ kind }) => kind === 'corrected');
  const at = ({ id }: FieldFact, time: string) => instant(time) + (behind.get(id) ?? 0);
  const lifts = ofKind(kept, 'lifted');
  const rains = ofKind(kept, 'rained');
  const isBefore = (fact: FieldFact, lift: FieldFact) =>
    follows(lift, fact) || (fact.kind === 'photo' ? at(fact, fact.takenAt) < at(lift, lift.deviceTime) : !follows(fact, lift) && at(fact, fact.deviceTime) < at(lift, lift.deviceTime));
  return kept.filter((fact) => {
    if (isDecision(fact) || fact.kind === 'struck' || fact.kind === 'lifted' || fact.kind === 'rained' || lifts.some((lift) => isBefore(fact, lift))) return false;
    if (isLook(fact) && rains.some((rain) => isBefore(fact, rain))) return false;
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

function distinct(facts: readonly JudgedFact[]): readonly JudgedFact[] {
  return [...new Map(facts.map((one) => [one.fact.id, one])).values()];
}

function instant(text: string): number {
  return Date.parse(text);
}
