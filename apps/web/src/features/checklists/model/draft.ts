import { foldItem, type FieldFact, type JudgedFact, type Role } from '@yardfall/contracts';
import { asksProfile, factsOf, lastMeasured, mayTick, seenOf, type FactBody } from './evidence.ts';
import { readRows, type ShotRow } from './profile.ts';
import { toldOf } from './sentences.ts';
import type { ChecklistView, ItemView, Recorder } from './view.ts';

/** What is typed at a step and not on record yet. */
export interface StepDraft {
  /** Measures by name, SI. */
  readonly values: Readonly<Record<string, number>>;
  readonly texts: Readonly<Record<string, string>>;
  readonly reference: string;
  readonly validOn: string;
  /** Shots of a pipe; null until one is typed. */
  readonly rows: readonly ShotRow[] | null;
}

export const nothingTyped: StepDraft = { values: {}, texts: {}, reference: '', validOn: '', rows: null };

export function isUntyped({ values, texts, reference, validOn, rows }: StepDraft): boolean {
  return rows === null && reference === '' && validOn === '' && Object.keys(values).length === 0 && Object.values(texts).every((text) => text === '');
}

/** What the phone kept of a step; anything else is nothing. */
export function draftFrom(kept: unknown): StepDraft {
  return typeof kept === 'object' && kept !== null ? { ...nothingTyped, ...(kept as Partial<StepDraft>) } : nothingTyped;
}

/** What stands there and would be recorded: only what is new and asked for. */
export function bodiesOf({ values, texts, reference, validOn, rows }: StepDraft, view: ItemView): FactBody[] {
  const { measures, texts: asked = [], evidence } = view.item.requirement;
  const profile = asksProfile(view.item.requirement);
  const measured = profile || !evidence.includes('value') ? [] : measures.flatMap(({ name }): FactBody[] => {
    const value = values[name];
    return value === undefined || value === lastMeasured(view, name) ? [] : [{ kind: 'measured', name, value }];
  });
  const read = profile && rows !== null ? readRows(rows) : null;
  const shots: FactBody[] = read?.state === 'whole' ? [{ kind: 'profile', shots: read.shots.map(({ at, level }) => ({ at, level })) }] : [];
  const written = asked.flatMap((name): FactBody[] => ((texts[name] ?? '').trim() === '' ? [] : [{ kind: 'written', name, text: (texts[name] ?? '').trim() }]));
  const document: FactBody[] = evidence.includes('document') && reference.trim() !== '' ? [{ kind: 'document', reference: reference.trim(), validOn: validOn === '' ? null : validOn }] : [];
  return [...measured, ...shots, ...written, ...document];
}

export interface Readiness {
  /** What one press records. */
  readonly bodies: readonly FactBody[];
  /** What the step needs besides that. */
  readonly needs: readonly string[];
  /** The press proves the step. */
  readonly finishes: boolean;
  /** A figure that stands there is outside its limits. */
  readonly isOff: boolean;
  /** The tick is all that is missing, and somebody else's. */
  readonly waitsForOffice: boolean;
}

const tick: FactBody = { kind: 'ticked', note: '' };

/** What a press at this moment would do, told by the fold that judges it afterwards. */
export function readiness(draft: StepDraft, view: ItemView, list: Pick<ChecklistView, 'items'>, roles: readonly Role[], me: Recorder = {}): Readiness {
  const typed = bodiesOf(draft, view);
  const without = foldWith(view, list, typed, me);
  const lacksTick = without.missing.includes('tick') || isTickedBefore(view);
  const may = lacksTick && mayTick(view.item.requirement, roles) && !view.tooEarly;
  const whole = may ? foldWith(view, list, [...typed, tick], me) : without;
  const finishes = whole.missing.length === 0 && whole.state === 'proven' && (may || typed.length > 0);
  const needs = toldOf(without.missing).filter((mark) => mark !== 'tick');
  return {
    bodies: finishes && may ? [...typed, tick] : typed, needs, finishes, isOff: without.missing.some((mark) => mark.startsWith('outside:')),
    waitsForOffice: lacksTick && !may && needs.length === 0 && !mayTick(view.item.requirement, roles),
  };
}

/** A photo that grows old was taken again after the tick: the tick says that nothing was touched since, and is given again. */
function isTickedBefore(view: ItemView): boolean {
  const ticks = factsOf(view, 'ticked');
  return view.item.requirement.freshFor !== null && ticks.length > 0 && factsOf(view, 'photo').some(({ seen }) => ticks.every(({ id }) => seen.includes(id)));
}

function foldWith(view: ItemView, list: Pick<ChecklistView, 'items'>, bodies: readonly FactBody[], me: Recorder) {
  const seen = seenOf(view, list);
  const { key, requirement, requirementHash, facts } = view.item;
  const deviceTime = new Date().toISOString();
  const known = facts.filter(({ fact }) => fact.requirementHash === requirementHash);
  const here = [...view.waiting, ...bodies.map((body, n) => ({ ...body, id: `typed-${String(n)}`, deviceId: '', seq: n + 1, deviceTime, factVersion: 1, revisionId: '', itemKey: key, requirementHash, seen }) as FieldFact)];
  return foldItem(requirement, [...known, ...here.map((fact): JudgedFact => ({ fact, verdict: 'kept', ...me }))], view.askedOn);
}
