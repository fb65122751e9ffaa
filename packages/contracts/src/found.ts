import { z } from 'zod';
import { finite, Id, Instant, JobParams, text } from './common.ts';
import { Revision, RevisionStatus } from './designs.ts';
import { endpoint } from './endpoint.ts';

/** "Stop work: we found ..." */
export const FoundKind = z.enum(['thickerSlab', 'steel', 'pipeInTheWay', 'water', 'soil', 'utility', 'other']).meta({ id: 'FoundKind' });

export const FoundReport = z
  .object({
    id: Id, jobId: Id, kind: FoundKind, part: z.string().nullable(), measure: z.number().nullable(), note: z.string(), photoIds: z.array(Id),
    status: z.enum(['open', 'answered']), reportedBy: z.string(), reportedAt: Instant, answer: z.string().nullable(), answeredBy: z.string().nullable(), answeredAt: Instant.nullable(),
    /** The draft that was opened for it; once issued, it is the answer. */
    draft: z.object({ revisionId: Id, designName: z.string(), number: z.number().int(), status: RevisionStatus }).nullable(),
  })
  .meta({ id: 'FoundReport' });
export type FoundReport = z.infer<typeof FoundReport>;

export const found = {
  list: endpoint({
    id: 'found.list', method: 'GET', path: '/jobs/:jobId/found', summary: 'What the crew found, newest first', access: { permission: 'findings.read' }, status: 200,
    params: JobParams, query: null, body: null, response: z.object({ items: z.array(FoundReport) }), errors: ['notFound'],
  }),
  report: endpoint({
    id: 'found.report', method: 'POST', path: '/jobs/:jobId/found', summary: 'Stop work: report what was found; the job is held until the estimator answers',
    access: { permission: 'findings.report' }, status: 201, params: JobParams, query: null,
    body: z.strictObject({ kind: FoundKind, part: text(40, 1).nullable(), measure: finite(-1000, 1000).nullable(), note: text(2000, 1), photoIds: z.array(Id).max(20) }),
    response: FoundReport, errors: ['notFound'],
  }),
  draft: endpoint({
    id: 'found.draft', method: 'POST', path: '/jobs/:jobId/found/:reportId/draft',
    summary: 'Open a draft from the build revision for what was found; a second finding joins the draft that is open for the first',
    access: { permission: 'designs.edit' }, status: 201, params: z.strictObject({ jobId: Id, reportId: Id }), query: null, body: z.strictObject({}),
    response: Revision, errors: ['notFound', 'conflict.state', 'design.draftOpen'],
  }),
  answer: endpoint({
    id: 'found.answer', method: 'POST', path: '/jobs/:jobId/found/:reportId/answer', summary: "The estimator's answer, which lifts the hold",
    access: { permission: 'findings.answer' }, status: 200, params: z.strictObject({ jobId: Id, reportId: Id }), query: null, body: z.strictObject({ answer: text(2000, 1) }),
    response: FoundReport, errors: ['notFound', 'conflict.state'],
  }),
};
