import type { ProofTest } from '@yardfall/contracts';
import type { Prisma } from '../generated/prisma/client.ts';

export const proofParts = { recordedBy: { select: { name: true } } } satisfies Prisma.ProofTestInclude;
export type ProofRecord = Prisma.ProofTestGetPayload<{ include: typeof proofParts }>;

/** What is hashed: the readings, and what they were judged to be. */
export type ProofContent = Omit<ProofTest, 'id' | 'jobId' | 'sha256' | 'recordedBy' | 'recordedAt'> & { readonly version: 1; readonly calcVersion: string };

export function contentOf(bytes: Uint8Array): ProofContent {
  return JSON.parse(Buffer.from(bytes).toString('utf8')) as ProofContent;
}

export function presentProof(row: ProofRecord): ProofTest {
  return { ...contentOf(row.content), id: row.id, jobId: row.jobId, sha256: row.sha256, recordedBy: row.recordedBy.name, recordedAt: row.recordedAt.toISOString() };
}
