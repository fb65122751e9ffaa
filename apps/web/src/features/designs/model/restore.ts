import type { DesignDocument } from '@yardfall/calc';
import type { DraftOperation } from '@yardfall/contracts';

/** The edits that bring a draft back to a moment: one for each group of the document that differs. Nothing of the log is lost by it. */
export function restoreOperations(now: DesignDocument, then: DesignDocument): DraftOperation[] {
  const keys = ['title', 'seed', 'site', 'rain', 'system', 'construction'] as const;
  return keys.filter((key) => JSON.stringify(now[key]) !== JSON.stringify(then[key])).map((key) => ({ kind: 'replace', path: [key], value: then[key] as never }));
}
