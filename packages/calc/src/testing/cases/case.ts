import type { DesignDocument, Outlet, OutletQuestions, Part, PartKind } from '../../document/document.ts';
import type { Results, Severity } from '../../results/results.ts';
import { dryWellLawn, gravityLawn, underdrainedSite } from '../lawnSites.ts';
import { changed, demoSite, withPart, type Changeable } from '../sites.ts';

/** A document built to raise one finding, and what its remedy does. */
export interface FindingCase {
  /** What is changed on a sound site, in words. */
  readonly what: string;
  readonly severity: Severity;
  readonly base: BaseName;
  readonly document: DesignDocument;
  /** Changes what the routing gave, for the checks that read it. */
  readonly routed: (results: Results) => Results;
  /** Whether a patch comes with it; it then clears the finding. */
  readonly cured: boolean;
  /** Stops that the cure cannot avoid. */
  readonly raises: readonly string[];
}

const bases = { tern: demoSite('tern-hollow'), ridge: demoSite('ridgeback'), lawn: gravityLawn(), dry: dryWellLawn(), under: underdrainedSite() } as const;

export type BaseName = keyof typeof bases;
export const baseDocuments: Readonly<Record<BaseName, DesignDocument>> = bases;

const same = (results: Results): Results => results;

export type Change = (copy: Changeable<DesignDocument>) => void;

const made = (base: BaseName, what: string, severity: Severity, document: DesignDocument, cured: boolean): FindingCase =>
  ({ what, severity, base, document, routed: same, cured, raises: [] });

/** A note that a sound site gives without any change. */
export const sound = (base: BaseName): FindingCase => made(base, 'as it is', 'note', bases[base], false);

/** A change anywhere in the document. */
export const site = (base: BaseName, what: string, severity: Severity, change: Change, cured = false): FindingCase => made(base, what, severity, changed(bases[base], change), cured);

/** Other fields on one part. */
export function part<K extends PartKind>(kind: K, base: BaseName, id: string, fields: Partial<Extract<Part, { readonly kind: K }>>, severity: Severity, cured = false): FindingCase {
  const found = bases[base].system.parts.find((item) => item.id === id);
  if (found?.kind !== kind) throw new Error(`${id} is no ${kind}`);
  const what = Object.entries(fields).map(([field, value]) => `${field} ${typeof value === 'object' ? 'changed' : String(value)}`).join(', ');
  return made(base, `${found.name}: ${what}`, severity, withPart<K>(bases[base], id, fields), cured);
}

/** Another answer of the routing. */
export const routedAs = (what: string, severity: Severity, routed: (results: Results) => Results, cured = false, base: BaseName = 'tern'): FindingCase =>
  ({ ...made(base, what, severity, bases[base], cured), routed });

/** Another answer to one of the outlet's questions. */
export function answer(key: keyof OutletQuestions, value: 'no' | 'unknown'): FindingCase {
  const outlet = bases.tern.system.parts.find((item): item is Outlet => item.id === 'O1' && item.kind === 'outlet')!;
  return part('outlet', 'tern', 'O1', { questions: { ...outlet.questions, [key]: value } }, value === 'no' ? 'stop' : 'caution');
}
