import type { DesignDocument, Part } from '@yardfall/calc';
import { libraryDifferences, libraryFields, type DraftOperation, type LibraryEntry } from '@yardfall/contracts';

/** What the library can do for a part: entries that fit it, what it took, and what has changed there since. */
export interface LibraryStanding {
  readonly fitting: readonly LibraryEntry[];
  /** Where its figures are from; null when nothing was taken. */
  readonly taken: { readonly at: string; readonly entry: LibraryEntry | null } | null;
  /** The entry holds other figures than when it was taken. */
  readonly isNewer: boolean;
  /** The part holds other figures than the entry that it took, which has stayed the same. */
  readonly isOwn: boolean;
  readonly differences: ReturnType<typeof libraryDifferences>;
}

export function libraryStanding(document: DesignDocument, part: Part, entries: readonly LibraryEntry[]): LibraryStanding {
  const fitting = entries.filter((entry) => entry.active && libraryFields(entry.content, entry.name, part) !== null);
  const stamp = document.sources.library?.find((one) => one.part === part.id);
  if (stamp === undefined) return { fitting, taken: null, isNewer: false, isOwn: false, differences: [] };
  const entry = entries.find(({ id }) => id === stamp.id) ?? null;
  const differences = entry === null ? [] : libraryDifferences(entry.content, entry.name, part);
  const isNewer = entry !== null && entry.sha256 !== stamp.sha256 && differences.length > 0;
  return { fitting, taken: { at: stamp.takenAt, entry }, isNewer, isOwn: !isNewer && differences.length > 0, differences };
}

/** Copies the figures of an entry into a part and says from where; one edit, to be taken back in one step. */
export function takeOperations(document: DesignDocument, part: Part, entry: LibraryEntry, now: Date): DraftOperation[] {
  const others = (document.sources.library ?? []).filter((one) => one.part !== part.id);
  const library = [...others, { id: entry.id, sha256: entry.sha256, takenAt: now.toISOString(), part: part.id }];
  return [
    ...libraryDifferences(entry.content, entry.name, part).map(({ field, after }): DraftOperation => ({ kind: 'replace', path: ['system', 'parts', `@${part.id}`, field], value: after as never })),
    { kind: 'replace', path: ['sources'], value: { ...document.sources, library } as never },
  ];
}
