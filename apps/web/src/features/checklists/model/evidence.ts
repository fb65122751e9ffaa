import { holdPointRules, keepOff, tieFrom, type FieldFact, type Requirement, type Role, type Signer } from '@yardfall/contracts';
import type { ChecklistView, ItemView } from './view.ts';

type FactOf<K extends FieldFact['kind']> = Extract<FieldFact, { kind: K }>;

export function factsOf<K extends FieldFact['kind']>(view: ItemView, kind: K): readonly FactOf<K>[] {
  return view.facts.filter((fact): fact is FactOf<K> => fact.kind === kind);
}

export function lastMeasured(view: ItemView, name: string): number | null {
  return factsOf(view, 'measured').findLast((fact) => fact.name === name)?.value ?? null;
}

/** The inverts of a pipe are shot along its whole length, not at its ends alone. */
export function asksProfile({ template, measures }: Pick<Requirement, 'template' | 'measures'>): boolean {
  return template === 'E1' && measures.some(({ name }) => name === 'invertDown');
}

/** How far off the survey one of its points is when it is shot again. */
export function isCheckShot({ name }: { readonly name: string }): boolean {
  return /^check\d+$/.test(name);
}

/** The ties of the buried parts are asked part by part and not figure by figure. */
export function asksTies({ texts = [] }: Pick<Requirement, 'texts'>): boolean {
  return texts.some((name) => name === tieFrom[0]);
}

/** Who signs by name on this phone: the crew and the office sign by their own tick, but whoever looks again after a correction signs. */
export function signersAsked({ requirement }: { readonly requirement: Requirement }, missing: readonly string[]): readonly Signer[] {
  const asked = requirement.evidence.includes('signature') ? requirement.signers.filter((signer) => signer !== 'crewLead' && signer !== 'owner') : [];
  if (!missing.includes('signature:second')) return asked;
  return [...asked, requirement.signers.includes('crewLead') ? 'crewLead' : 'owner'];
}

/** Owner or estimator ticks what the owner signs for. */
export function mayTick({ signers }: Requirement, roles: readonly Role[]): boolean {
  return !signers.includes('owner') || signers.includes('crewLead') || roles.includes('owner') || roles.includes('estimator');
}

/** Until when nobody sets foot, and no wheel, on concrete that was placed; null for any other step. */
export function keepOffOf(view: ItemView): { readonly foot: string; readonly wheels: string } | null {
  const placed = factsOf(view, 'ticked').at(-1);
  return placed === undefined ? null : keepOff(view.item.requirement, Date.parse(placed.deviceTime));
}

/** Figures that are asked for as things stand: one that stands and falls with another only where that came out high. */
export function measuresAsked(view: ItemView, typed: Readonly<Record<string, number>>): Requirement['measures'] {
  return view.item.requirement.measures.filter(({ when }) => when === undefined || (typed[when.name] ?? lastMeasured(view, when.name) ?? -Infinity) >= when.least);
}

/** A photo is asked for again after a correction even where the item asks for none. */
export function asksPhoto({ item, missing }: ItemView): boolean {
  return item.requirement.evidence.includes('photo') || missing.some((mark) => mark.startsWith('photo:'));
}

/** How many photos count: one from before a correction, before the grate was lifted, of another day or from before the rain does not. */
export function countedPhotos(view: ItemView): number {
  const needed = Math.max(view.item.requirement.minPhotos, 1);
  const lacking = Number(view.missing.find((mark) => mark.startsWith('photo:'))?.split(':')[1] ?? 0);
  const taken = factsOf(view, 'photo').length;
  if (lacking > 0) return needed - lacking;
  return view.askedOn === null ? taken : Math.min(taken, needed);
}

/** What the next fact of a step follows: all that is known of the step, and what opened the hold points before it. Clocks of two phones may differ, what was known does not. */
export function seenOf(view: ItemView, list: Pick<ChecklistView, 'items'>): string[] {
  const before = holdPointRules.filter((rule) => rule.guards.includes(view.item.template));
  const guards = list.items.filter(({ item }) => before.some((rule) => rule.items.includes(item.template) && (!rule.byPart || item.part === view.item.part)));
  const own = [...view.item.facts.map(({ fact }) => fact.id), ...view.waiting.map(({ id }) => id)];
  return [...new Set([...guards.flatMap(({ facts }) => facts.map(({ id }) => id)), ...own])].slice(-mostSeen);
}

const mostSeen = 200;

export type FactBody = FieldFact extends infer F ? (F extends FieldFact ? Omit<F, 'id' | 'deviceId' | 'seq' | 'deviceTime' | 'factVersion' | 'revisionId' | 'itemKey' | 'requirementHash' | 'seen'> : never) : never;
