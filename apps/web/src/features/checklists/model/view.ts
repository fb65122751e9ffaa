import {
  dayIn, foldItem, heldAmong, holdPointRules, holdPointsNow, isCovered, isStopped, mayDigAt, mistyped, type Checklist, type ChecklistItem, type FieldFact, type ItemInState, type ItemState, type JudgedFact, type Moment, type Stop, type StoredFact,
} from '@yardfall/contracts';

export interface FoundStop extends Stop {
  /** When a line was hit; nobody digs from then on. */
  readonly hitAt?: string | null;
}

export interface ItemView {
  readonly item: ChecklistItem;
  readonly state: ItemState;
  readonly missing: readonly string[];
  readonly heldBy: ChecklistItem['heldBy'];
  /** What was found and waits for an answer, with the work of this step stopped until then. */
  readonly stops: readonly Stop[];
  /** Facts that count: kept ones of the office, then those that wait on this phone. */
  readonly facts: readonly FieldFact[];
  readonly waiting: readonly FieldFact[];
  /** Facts on record that do not count, with the reason. */
  readonly notCounted: readonly StoredFact[];
  readonly begun: boolean;
  /** The age of a photo before it matters, so that the moment of its beginning is recorded. */
  readonly asksBegin: boolean;
  /** The moment [ms] on the day for which a step is asked that is asked for each day; null for any other. */
  readonly askedOn: number | null;
  /** From when on [ms] what was glued at this step bears pressure. */
  readonly readyAt: number | null;
  /** It is not ticked before its moment: the contract can still be cancelled. */
  readonly tooEarly: boolean;
}

export interface ChecklistView {
  readonly jobId: string;
  readonly revisionId: string;
  readonly items: readonly ItemView[];
  readonly holdPoints: Checklist['holdPoints'];
}

/** Who records on this phone. */
export type Recorder = Pick<JudgedFact, 'by' | 'memberId'>;

/** The checklist as the office knows it, with what this phone recorded since: the same fold runs on both sides, and both look at the clock. */
export function viewOf(checklist: Checklist, waiting: readonly FieldFact[], now: number, found: readonly FoundStop[] = [], me: Recorder = {}, stoppedHere = false): ChecklistView {
  // A phone alone never turns "do not dig" into "may dig": it goes by the spans that the office gave it, and by what stopped the digging since.
  const moment: Moment = { at: now, mayDig: !stoppedHere && mayDigAt(spansOf(checklist), now) && !found.some((stop) => isNews(checklist, stop)) };
  const lastLooks = checklist.items.map((item) => fold(item, waiting, me, null));
  const asksToday = !isCovered(lastLooks.map(({ inState }) => inState));
  const folded = lastLooks.map((one) => (asksToday && one.item.requirement.daily !== undefined ? fold(one.item, waiting, me, now) : one));
  const states = folded.map(({ inState }) => inState);
  const points = holdPointsNow(states, moment);
  // Work that has begun does not care any more how old a photo has grown.
  const whenBegun = holdPointsNow(states, { ...moment, at: null, now });
  const items = folded.map((one): ItemView => sameAsBefore({
    item: one.item, state: one.inState.state, missing: one.missing, facts: one.facts, waiting: one.pending, begun: one.begun,
    heldBy: heldAmong(one.begun ? whenBegun : points, one.item.key).map(({ holdPoint, items: by }) => ({ holdPoint, items: [...by] })),
    notCounted: one.item.facts.filter(({ verdict }) => verdict !== 'kept'),
    askedOn: one.askedOn, readyAt: one.inState.readyAt ?? null, tooEarly: now < Date.parse(one.item.requirement.tickFrom ?? ''),
    asksBegin: asksBegin(checklist, one.item), stops: found.filter((stop) => isStopped(stop, one.item)),
  }));
  const holdPoints = points.map(({ id, part, open, waived, items: by, guards }) => ({ id, part, open, waived, items: [...by], guards: [...guards] }));
  return { jobId: checklist.jobId, revisionId: checklist.revisionId, items, holdPoints };
}

/** A line that was hit, of which these spans do not know yet: the office ends them where it was. */
function isNews(checklist: Checklist, { hitAt = null }: FoundStop): boolean {
  return hitAt !== null && mayDigAt(spansOf(checklist), Date.parse(hitAt));
}

/** An answer that was kept by an earlier version of the page does not know the spans: then nothing is dug before the office is asked. */
function spansOf(checklist: Partial<Pick<Checklist, 'digging'>>): Checklist['digging'] {
  return checklist.digging ?? [];
}

const lastViews = new WeakMap<ChecklistItem, { readonly mark: string; readonly facts: ItemView['facts']; readonly view: ItemView }>();

/** A step of which nothing has changed is the one that is on the page already, so that a press draws its own step and no other. */
function sameAsBefore(view: ItemView): ItemView {
  const mark = JSON.stringify([view.heldBy, view.stops, view.asksBegin, view.tooEarly]);
  const last = lastViews.get(view.item);
  // The facts are those of the last fold as long as nothing was recorded.
  if (last !== undefined && last.mark === mark && last.facts === view.facts) return last.view;
  lastViews.set(view.item, { mark, facts: view.facts, view });
  return view;
}

interface Folded {
  readonly item: ChecklistItem;
  readonly inState: ItemInState;
  readonly missing: readonly string[];
  readonly facts: readonly FieldFact[];
  readonly pending: readonly FieldFact[];
  readonly begun: boolean;
  readonly askedOn: number | null;
}

/** The last fold of each item with the ids that waited then: a press changes one item, and the phone need not fold them all. */
const lastFolds = new WeakMap<ChecklistItem, { readonly waited: string; readonly folded: Folded }>();

function fold(item: ChecklistItem, waiting: readonly FieldFact[], me: Recorder, today: number | null): Folded {
  const own = waiting.filter((fact) => fact.itemKey === item.key && fact.requirementHash === item.requirementHash);
  const waited = [...own.map(({ id }) => id), today === null ? '' : dayIn(item.requirement.daily ?? 'UTC', today)].join(' ');
  const last = lastFolds.get(item);
  if (last?.waited === waited) return last.folded;
  const folded = foldAnew(item, own, me, today);
  lastFolds.set(item, { waited, folded });
  return folded;
}

function foldAnew(item: ChecklistItem, own: readonly FieldFact[], me: Recorder, askedOn: number | null): Folded {
  const known = new Set(item.facts.map(({ fact }) => fact.id));
  const pending = own.filter(({ id }) => !known.has(id));
  // What was recorded for an earlier design of the step stays on record and shows nothing of this one.
  const judged: JudgedFact[] = [...item.facts.filter(({ fact }) => fact.requirementHash === item.requirementHash), ...pending.map((fact) => ({ fact, verdict: 'kept' as const, ...me }))];
  const { state, missing, freshUntil, readyAt } = foldItem(item.requirement, judged, askedOn);
  const kept = judged.filter(({ verdict }) => verdict === 'kept');
  const slips = mistyped(kept);
  const facts = kept.map(({ fact }) => fact).filter(({ id }) => !slips.has(id));
  const inState = { key: item.key, template: item.template, part: item.part, holdPoint: item.holdPoint, state, freshUntil, readyAt };
  return { item, pending, facts, missing, askedOn, inState, begun: facts.some(({ kind }) => kind === 'begun') };
}

function asksBegin({ items }: Checklist, item: ChecklistItem): boolean {
  const before = holdPointRules.filter((rule) => rule.guards.includes(item.template)).flatMap((rule) => rule.items);
  return items.some((other) => before.includes(other.template) && other.requirement.freshFor !== null);
}

const settled: readonly ItemState[] = ['proven', 'notApplicable', 'waived'];

export function isSettled({ state }: Pick<ItemView, 'state'>): boolean {
  return settled.includes(state);
}

/** The step whose look of today counts, for as long as a trench is open: rain ends it. */
export function lookedAtToday(items: readonly ItemView[]): ItemView | null {
  return items.find(({ askedOn, state }) => askedOn !== null && state === 'proven') ?? null;
}

/** Steps that are not settled yet. */
export function leftCount(items: readonly ItemView[]): number {
  return items.filter((view) => !isSettled(view)).length;
}
