import type { RainRecordRow, Study } from '@yardfall/contracts';
import type { Prisma } from '../generated/prisma/client.ts';
import { StoredSpan, StoredStudy } from './studies.stored.ts';

export const recordParts = { createdBy: { select: { name: true } } } satisfies Prisma.RainRecordInclude;
/** For lists: without what was asked and what came out. */
export const studyParts = { include: { createdBy: { select: { name: true } } }, omit: { request: true, result: true } } satisfies Prisma.StudyDefaultArgs;

export function presentRecord(row: Prisma.RainRecordGetPayload<{ include: typeof recordParts; omit: { original: true } }>): RainRecordRow {
  const { from, to, years, missingHours } = StoredSpan.parse(row.span);
  return {
    id: row.id, name: row.name, originalName: row.originalName, sha256: row.sha256, step: row.step, from, to, years, missingHours, createdAt: row.createdAt.toISOString(), by: row.createdBy.name,
  };
}

export function presentStudy(row: Prisma.StudyGetPayload<typeof studyParts>): Study {
  const { kind, status, problem } = StoredStudy.parse(row);
  return {
    id: row.id, jobId: row.jobId, revisionId: row.revisionId, kind, status, progress: row.progress, problem, documentSha256: row.documentSha256, calcVersion: row.calcVersion, createdAt: row.createdAt.toISOString(),
    finishedAt: row.finishedAt?.toISOString() ?? null, by: row.createdBy.name,
  };
}

export function jsonOf(bytes: Uint8Array): Record<string, unknown> {
  return JSON.parse(Buffer.from(bytes).toString('utf8')) as Record<string, unknown>;
}
