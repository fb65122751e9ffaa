import type { Design, RevisionRow } from '@yardfall/contracts';
import { describe, expect, test } from 'vitest';
import { latestRevision, latestToEdit } from './latest.ts';

const revision = (id: string, status: RevisionRow['status'], day: string, isBuildRevision = false): RevisionRow => ({ id, status, createdAt: day, updatedAt: day, isBuildRevision }) as RevisionRow;
const designs = (...revisions: RevisionRow[]): Design[] => [{ id: 'd', revisions } as unknown as Design];

describe('what is opened first', () => {
  const build = revision('build', 'issued', '2026-03-02', true);
  test('of a job that is built: the build revision to read, a later draft to edit', () => {
    const all = designs(build, revision('later', 'draft', '2026-03-05'), revision('older', 'draft', '2026-03-01'));
    expect(latestRevision(all)?.id).toBe('build');
    expect(latestToEdit(all)?.id).toBe('later');
    expect(latestToEdit(designs(build, revision('older', 'draft', '2026-03-01')))?.id).toBe('build');
  });
  test('before that: the newest draft, for both', () => {
    const all = designs(revision('issued', 'issued', '2026-03-05'), revision('draft', 'draft', '2026-03-01'));
    expect([latestRevision(all)?.id, latestToEdit(all)?.id]).toEqual(['draft', 'draft']);
  });
});
