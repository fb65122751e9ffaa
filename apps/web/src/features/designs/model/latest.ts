import type { Design, RevisionRow } from '@yardfall/contracts';

/** What a reader opens first: the build revision, else the newest draft, else what was issued last. */
export function latestRevision(designs: readonly Design[]): RevisionRow | null {
  const all = designs.flatMap((design) => design.revisions).toSorted((a, b) => b.updatedAt.localeCompare(a.updatedAt));
  return all.find((revision) => revision.isBuildRevision) ?? all.find((revision) => revision.status === 'draft') ?? all.find((revision) => revision.status === 'issued') ?? all[0] ?? null;
}

/** What an editor opens first: a draft that was begun after the build revision is work in hand, such as the answer to what the crew found. */
export function latestToEdit(designs: readonly Design[]): RevisionRow | null {
  const all = designs.flatMap((design) => design.revisions);
  const build = all.find((revision) => revision.isBuildRevision);
  const drafts = all.filter(({ status, createdAt }) => status === 'draft' && build !== undefined && createdAt > build.createdAt).toSorted((a, b) => b.updatedAt.localeCompare(a.updatedAt));
  return drafts[0] ?? latestRevision(designs);
}
