import type { FoundReport } from '@yardfall/contracts';
import type { Prisma } from '../generated/prisma/client.ts';

export const reportParts = { reportedBy: { select: { name: true } }, answeredBy: { select: { name: true } }, draft: { select: { id: true, number: true, status: true, design: { select: { name: true } } } } } satisfies Prisma.FoundReportInclude;
export type ReportRecord = Prisma.FoundReportGetPayload<{ include: typeof reportParts }>;

export function presentReport(row: ReportRecord): FoundReport {
  return {
    id: row.id, jobId: row.jobId, kind: row.kind as FoundReport['kind'], part: row.part, measure: row.measure, note: row.note, photoIds: row.photoIds,
    status: row.status as FoundReport['status'], reportedBy: row.reportedBy.name, reportedAt: row.reportedAt.toISOString(), answer: row.answer,
    answeredBy: row.answeredBy?.name ?? null, answeredAt: row.answeredAt?.toISOString() ?? null,
    draft: row.draft === null ? null : { revisionId: row.draft.id, designName: row.draft.design.name, number: row.draft.number, status: row.draft.status as NonNullable<FoundReport['draft']>['status'] },
  };
}
