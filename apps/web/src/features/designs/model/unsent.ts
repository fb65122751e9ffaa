import { applyOperations, OperationError, type DraftOperation, type Revision } from '@yardfall/contracts';
import { keep, kept } from '../../../lib/keep.ts';

/** Edits that have not arrived in the office, and the version of the draft that they were made on. */
export interface Unsent {
  readonly base: number;
  readonly operations: readonly DraftOperation[];
}

const keptName = (revisionId: string): string => `draft.${revisionId}`;

/** Keeps them on this device, so that closing the page loses nothing. */
export function keepUnsent(revisionId: string, unsent: Unsent | null): void {
  keep(keptName(revisionId), unsent);
}

/** What was on this device when the page was closed; null when there was nothing, or of a version that the draft never had. */
export function keptUnsent({ id, version }: Revision): Unsent | null {
  const found = kept(keptName(id)) as Partial<Unsent> | null;
  if (found === null || typeof found.base !== 'number' || !Array.isArray(found.operations) || found.base > version) return null;
  return { base: found.base, operations: found.operations };
}

export interface OnTop<T> {
  readonly document: T;
  /** Edits that have lost their place: they change what somebody took away, or add what is there. */
  readonly aside: readonly DraftOperation[];
}

/** The document with the edits on top of it, in order; an edit without a place is set aside for the person to see, not thrown away. */
export function onTop<T>(document: T, operations: readonly DraftOperation[]): OnTop<T> {
  const all = applied(document, operations);
  return all === null ? oneByOne(document, operations) : { document: all, aside: [] };
}

function oneByOne<T>(document: T, operations: readonly DraftOperation[]): OnTop<T> {
  let here = document;
  const aside = operations.filter((operation) => {
    const next = applied(here, [operation]);
    here = next ?? here;
    return next === null;
  });
  return { document: here, aside };
}

/** Null when an edit has no place. */
function applied<T>(document: T, operations: readonly DraftOperation[]): T | null {
  try {
    return applyOperations(document, operations);
  } catch (error) {
    if (error instanceof OperationError) return null;
    throw error;
  }
}
