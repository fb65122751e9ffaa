import { type FoundReport, withAdded } from '@yardfall/contracts';
import type { Prisma } from '../generated/prisma/client.ts';

export const reportParts = {
  reportedBy: { select: { name: true } }, answeredBy: { select: { name: true } }, draft: { select: { id: true, number: true, status: true, design: { select: { name: true } } } },
  foundAdditions_report: { include: { addedBy: { select: { name: true } } }, orderBy: [{ at: 'asc' }, { id: 'asc' }] },
} satisfies Prisma.FoundReportInclude;
export type ReportRecord = Prisma.FoundReportGetPayload<{ include: typeof reportParts }>;

export function presentReport(row: ReportRecord): FoundReport {
  const additions = row.foundAdditions_report.map(({ id, kind, part, measure, note, photoIds, hit, addedBy, at, recordedAt }) => ({
    id, kind: kind as FoundReport['kind'] | null, part, measure, note, photoIds, hit: hit as FoundReport['hit'], by: addedBy.name, at: at.toISOString(), recordedAt: recordedAt.toISOString(),
  }));
  const said = withAdded({ kind: row.kind as FoundReport['kind'], part: row.part, measure: row.measure, note: row.note, photoIds: row.photoIds, hit: row.hit as FoundReport['hit'] }, additions);
  return {
    id: row.id, jobId: row.jobId, ...said, photoIds: [...said.photoIds], additions,
    status: row.status as FoundReport['status'], reportedBy: row.reportedBy.name, reportedById: row.reportedById, reportedAt: row.reportedAt.toISOString(),
    stoppedAt: (row.stoppedAt ?? row.reportedAt).toISOString(), answer: row.answer,
    answeredBy: row.answeredBy?.name ?? null, answeredAt: row.answeredAt?.toISOString() ?? null,
    draft: row.draft === null ? null : { revisionId: row.draft.id, designName: row.draft.design.name, number: row.draft.number, status: row.draft.status as NonNullable<FoundReport['draft']>['status'] },
  };
}
