import type { Design, RevisionRow } from '@yardfall/contracts';

/** Where the plan of a job stands: the build revision, which phones take along, else what was begun last. */
export function planRevision(designs: readonly Design[]): RevisionRow | null {
  const all = designs.flatMap(({ revisions }) => revisions).toSorted((a, b) => b.createdAt.localeCompare(a.createdAt));
  return all.find(({ isBuildRevision }) => isBuildRevision) ?? all[0] ?? null;
}
