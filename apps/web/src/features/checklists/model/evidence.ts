import type { FieldFact, Requirement, Role, Signer } from '@yardfall/contracts';
import type { ItemView } from './view.ts';

type FactOf<K extends FieldFact['kind']> = Extract<FieldFact, { kind: K }>;

export function factsOf<K extends FieldFact['kind']>(view: ItemView, kind: K): readonly FactOf<K>[] {
  return view.facts.filter((fact): fact is FactOf<K> => fact.kind === kind);
}

export function lastMeasured(view: ItemView, name: string): number | null {
  return factsOf(view, 'measured').findLast((fact) => fact.name === name)?.value ?? null;
}

/** Who signs by name on this phone: the crew and the office sign by their own tick, but anybody may give the second signature after a correction. */
export function signersAsked({ requirement }: { readonly requirement: Requirement }, missing: readonly string[]): readonly Signer[] {
  const asked = requirement.evidence.includes('signature') ? requirement.signers.filter((signer) => signer !== 'crewLead' && signer !== 'owner') : [];
  const [first] = requirement.signers;
  return missing.includes('signature:second') && asked.length === 0 && first !== undefined ? [first] : asked;
}

/** Owner or estimator ticks what the owner signs for. */
export function mayTick({ signers }: Requirement, roles: readonly Role[]): boolean {
  return !signers.includes('owner') || signers.includes('crewLead') || roles.includes('owner') || roles.includes('estimator');
}

/** A photo is asked for again after a correction even where the item asks for none. */
export function asksPhoto({ item, missing }: ItemView): boolean {
  return item.requirement.evidence.includes('photo') || missing.some((mark) => mark.startsWith('photo:'));
}

/** What was recorded of the item so far, for `seen` of the next fact. */
export function seenOf({ item, waiting }: ItemView): string[] {
  return [...item.facts.map(({ fact }) => fact.id), ...waiting.map(({ id }) => id)].slice(-200);
}

export type FactBody = FieldFact extends infer F ? (F extends FieldFact ? Omit<F, 'id' | 'deviceId' | 'seq' | 'deviceTime' | 'factVersion' | 'revisionId' | 'itemKey' | 'requirementHash' | 'seen'> : never) : never;
