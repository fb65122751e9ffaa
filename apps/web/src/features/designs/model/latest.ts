import type { Design, RevisionRow } from '@yardfall/contracts';

/** What a reader opens first: the build revision, else the newest draft, else what was issued last. */
export function latestRevision(designs: readonly Design[]): RevisionRow | null {
  const all = designs.flatMap((design) => design.revisions).toSorted((a, b) => b.updatedAt.localeCompare(a.updatedAt));
  return all.find((revision) => revision.isBuildRevision) ?? all.find((revision) => revision.status === 'draft') ?? all.find((revision) => revision.status === 'issued') ?? all[0] ?? null;
}
