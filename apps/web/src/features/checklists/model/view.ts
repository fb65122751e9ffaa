import {
  foldItem, heldBy, holdPointRules, holdPointsNow, type Checklist, type ChecklistItem, type FieldFact, type ItemInState, type ItemState, type JudgedFact, type Moment, type StoredFact,
} from '@yardfall/contracts';

export interface ItemView {
  readonly item: ChecklistItem;
  readonly state: ItemState;
  readonly missing: readonly string[];
  readonly heldBy: ChecklistItem['heldBy'];
  /** Facts that count: kept ones of the office, then those that wait on this phone. */
  readonly facts: readonly FieldFact[];
  readonly waiting: readonly FieldFact[];
  /** Facts on record that do not count, with the reason. */
  readonly notCounted: readonly StoredFact[];
  readonly begun: boolean;
  /** The age of a photo before it matters, so that the moment of its beginning is recorded. */
  readonly asksBegin: boolean;
}

export interface ChecklistView {
  readonly jobId: string;
  readonly revisionId: string;
  readonly items: readonly ItemView[];
  readonly holdPoints: Checklist['holdPoints'];
}

/** The checklist as the office knows it, with what this phone recorded since: the same fold runs on both sides. */
export function viewOf(checklist: Checklist, waiting: readonly FieldFact[], now: number): ChecklistView {
  const moment: Moment = { at: now, mayDig: mayDig(checklist) };
  const folded = checklist.items.map((item) => fold(item, waiting));
  const touched = folded.some(({ pending }) => pending.length > 0);
  const states = folded.map(({ inState }) => inState);
  const items = folded.map((one): ItemView => ({
    item: one.item, state: one.inState.state, missing: one.missing, facts: one.facts, waiting: one.pending, begun: one.begun,
    heldBy: touched ? heldBy(states, one.item.key, one.begun ? { ...moment, at: null } : moment).map(({ holdPoint, items: by }) => ({ holdPoint, items: [...by] })) : one.item.heldBy,
    notCounted: one.item.facts.filter(({ verdict }) => verdict !== 'kept'),
    asksBegin: asksBegin(checklist, one.item),
  }));
  const holdPoints = touched ? holdPointsNow(states, moment).map(({ id, part, open, waived, items: by, guards }) => ({ id, part, open, waived, items: [...by], guards: [...guards] })) : checklist.holdPoints;
  return { jobId: checklist.jobId, revisionId: checklist.revisionId, items, holdPoints };
}

interface Folded {
  readonly item: ChecklistItem;
  readonly inState: ItemInState;
  readonly missing: readonly string[];
  readonly facts: readonly FieldFact[];
  readonly pending: readonly FieldFact[];
  readonly begun: boolean;
}

function fold(item: ChecklistItem, waiting: readonly FieldFact[]): Folded {
  const known = new Set(item.facts.map(({ fact }) => fact.id));
  const pending = waiting.filter((fact) => fact.itemKey === item.key && fact.requirementHash === item.requirementHash && !known.has(fact.id));
  const judged: JudgedFact[] = [...item.facts, ...pending.map((fact) => ({ fact, verdict: 'kept' as const }))];
  const { state, missing, freshUntil } = foldItem(item.requirement, judged);
  const facts = judged.filter(({ verdict }) => verdict === 'kept').map(({ fact }) => fact);
  // Without news from this phone the office's own word stands.
  const shown = pending.length > 0 ? { state, missing } : { state: item.state, missing: item.missing };
  return { item, pending, facts, missing: shown.missing, inState: { key: item.key, template: item.template, part: item.part, state: shown.state, freshUntil }, begun: facts.some(({ kind }) => kind === 'begun') };
}

/** What the office last said of the locate tickets; a phone alone never turns "do not dig" into "may dig". */
function mayDig({ holdPoints }: Checklist): boolean {
  return holdPoints.every((point) => point.id !== 'HP-1' || point.open);
}

function asksBegin({ items }: Checklist, item: ChecklistItem): boolean {
  const before = holdPointRules.filter((rule) => rule.guards.includes(item.template)).flatMap((rule) => rule.items);
  return items.some((other) => before.includes(other.template) && other.requirement.freshFor !== null);
}

const settled: readonly ItemState[] = ['proven', 'notApplicable', 'waived'];

export function isSettled({ state }: Pick<ItemView, 'state'>): boolean {
  return settled.includes(state);
}

/** The next thing to do in the order of the work; when all that is left is held, the first of those. */
export function nextOf({ items }: ChecklistView, except: string | null = null): ItemView | null {
  const left = items.filter((view) => !isSettled(view) && view.item.key !== except);
  return left.find((view) => view.heldBy.length === 0) ?? left[0] ?? null;
}

/** Steps that are not settled yet. */
export function leftCount(items: readonly ItemView[]): number {
  return items.filter((view) => !isSettled(view)).length;
}
