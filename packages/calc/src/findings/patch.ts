import type { DesignDocument, Part } from '../document/document.ts';
import type { Params, Remedy } from '../results/results.ts';
import type { RemedyCode } from './codes.ts';

export type Step = Remedy['patch'][number];

/** JSON pointer of a field of a part; `field` may name a field below it. */
export function partPath(document: DesignDocument, id: string, field: string): string {
  return `/system/parts/${document.system.parts.findIndex((part) => part.id === id)}/${field}`;
}

/** Steps that set several fields of one part. */
export function fieldsOf(document: DesignDocument, part: Part, fields: Readonly<Record<string, Step['value']>>): Step[] {
  return Object.entries(fields).map(([field, value]) => ({ path: partPath(document, part.id, field), value }));
}

export const remedyOf = (code: RemedyCode, params: Params, patch: readonly Step[]): Remedy => ({ code, params, patch });

/** A remedy that sets fields of one part. */
export function setFields(document: DesignDocument, part: Part, fields: Readonly<Record<string, Step['value']>>, code: RemedyCode, params: Params): Remedy {
  return remedyOf(code, params, fieldsOf(document, part, fields));
}

type Json = Record<string, unknown>;

function replaced(holder: unknown, keys: readonly string[], value: Step['value']): unknown {
  const [key, ...rest] = keys;
  if (key === undefined) return value;
  if (Array.isArray(holder)) return holder.map((item: unknown, index) => (String(index) === key ? replaced(item, rest, value) : item));
  const object = holder as Json;
  return { ...object, [key]: replaced(object[key], rest, value) };
}

/** The document with every step of a patch taken; the document itself is left alone. */
export function patched(document: DesignDocument, patch: readonly Step[]): DesignDocument {
  return patch.reduce<DesignDocument>((copy, { path, value }) => replaced(copy, path.slice(1).split('/'), value) as DesignDocument, document);
}

/** The document as a remedy would leave it. */
export function applyRemedy(document: DesignDocument, remedy: Remedy): DesignDocument {
  return patched(document, remedy.patch);
}

/** The first remedy that does what is asked of the document it leaves; null when none does. */
export function firstThat(document: DesignDocument, candidates: readonly Remedy[], cures: (left: DesignDocument) => boolean): Remedy | null {
  return candidates.find((remedy) => cures(applyRemedy(document, remedy))) ?? null;
}
