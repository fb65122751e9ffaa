import type { DesignDocument, Evaluation } from '@yardfall/calc';
import { storedDocument } from '../common/storedDocument.ts';
import type { Design, Revision, RevisionRow } from '@yardfall/contracts';
import type { Prisma } from '../generated/prisma/client.ts';
import type { StoredAcknowledgement } from './verdict.rules.ts';

const names = { design: { select: { name: true } }, createdBy: { select: { name: true } }, issuedBy: { select: { name: true } } } satisfies Prisma.RevisionInclude;

/** For lists: everything but the documents. */
export const rowParts = { include: names, omit: { document: true, evaluation: true, acknowledgements: true } } satisfies Prisma.RevisionDefaultArgs;
export const revisionParts = { include: names } satisfies Prisma.RevisionDefaultArgs;

export type RowRecord = Prisma.RevisionGetPayload<typeof rowParts>;
export type RevisionRecord = Prisma.RevisionGetPayload<typeof revisionParts>;
export type DesignRecord = Prisma.DesignGetPayload<{ include: { revisions_design: typeof rowParts } }>;

export function documentOf(bytes: Uint8Array): DesignDocument {
  return storedDocument(bytes);
}

export function evaluationOf(bytes: Uint8Array | null): Evaluation | null {
  return bytes === null ? null : (JSON.parse(Buffer.from(bytes).toString('utf8')) as Evaluation);
}

export function acknowledgementsOf(value: Prisma.JsonValue): StoredAcknowledgement[] {
  return value as unknown as StoredAcknowledgement[];
}

export function presentRow(row: RowRecord, buildRevisionId: string | null): RevisionRow {
  return {
    id: row.id, jobId: row.jobId, designId: row.designId, designName: row.design.name, number: row.number, status: row.status as RevisionRow['status'],
    documentSha256: row.documentSha256, evaluationSha256: row.evaluationSha256, calcVersion: row.calcVersion, stopCount: row.stopCount, cautionCount: row.cautionCount,
    provisional: row.provisional, version: row.version, createdAt: row.createdAt.toISOString(), updatedAt: row.updatedAt.toISOString(), createdBy: row.createdBy.name,
    issuedAt: row.issuedAt?.toISOString() ?? null, issuedBy: row.issuedBy?.name ?? null, isBuildRevision: row.id === buildRevisionId,
  };
}

/** Whoever may not act on a revision reads the same of it; there is no money in a design. */
export function presentRevision(row: RevisionRecord, buildRevisionId: string | null): Revision {
  return {
    ...presentRow(row, buildRevisionId),
    document: documentOf(row.document) as Revision['document'],
    evaluation: evaluationOf(row.evaluation),
    acknowledgements: acknowledgementsOf(row.acknowledgements),
  };
}

export function presentDesign(row: DesignRecord, buildRevisionId: string | null): Design {
  return {
    id: row.id, jobId: row.jobId, name: row.name, createdAt: row.createdAt.toISOString(),
    revisions: row.revisions_design.map((revision) => presentRow(revision, buildRevisionId)),
  };
}
