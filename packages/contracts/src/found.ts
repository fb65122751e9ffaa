import { z } from 'zod';
import { finite, Id, Instant, JobParams, text } from './common.ts';
import { Revision, RevisionStatus } from './designs.ts';
import { endpoint } from './endpoint.ts';

/** "Stop work: we found ..." */
export const FoundKind = z.enum(['thickerSlab', 'steel', 'pipeInTheWay', 'water', 'soil', 'utility', 'other']).meta({ id: 'FoundKind' });

/** Whether a line was hit; `danger` is gas, power, or a line that nobody can name. */
export const LineHit = z.enum(['no', 'line', 'danger']).meta({ id: 'LineHit' });
export type LineHit = z.infer<typeof LineHit>;

const said = { kind: FoundKind, part: z.string().nullable(), measure: z.number().nullable(), note: z.string(), photoIds: z.array(Id), hit: LineHit.nullable() };

/** What its reporter added to a report later; only added. What is null is not spoken of. */
const FoundAddition = z.object({ ...said, kind: FoundKind.nullable(), id: Id, by: z.string(), at: Instant, recordedAt: Instant }).meta({ id: 'FoundAddition' });

export const FoundReport = z
  .object({
    id: Id, jobId: Id,
    /** As it stands with all that was added. */
    ...said, additions: z.array(FoundAddition),
    status: z.enum(['open', 'answered']), reportedBy: z.string(), reportedById: Id, reportedAt: Instant,
    /** When the work stopped, by the phone; never later than `reportedAt`, when the office heard of it. */
    stoppedAt: Instant, answer: z.string().nullable(), answeredBy: z.string().nullable(), answeredAt: Instant.nullable(),
    /** The draft that was opened for it; once issued, it is the answer. */
    draft: z.object({ revisionId: Id, designName: z.string(), number: z.number().int(), status: RevisionStatus }).nullable(),
  })
  .meta({ id: 'FoundReport' });
export type FoundReport = z.infer<typeof FoundReport>;

const ReportParams = z.strictObject({ jobId: Id, reportId: Id });
const told = { part: text(40, 1).nullable(), measure: finite(-1000, 1000).nullable(), note: text(2000), photoIds: z.array(Id).max(20), hit: LineHit.nullable().optional() };

export const found = {
  list: endpoint({
    id: 'found.list', method: 'GET', path: '/jobs/:jobId/found', summary: 'What the crew found, newest first', access: { permission: 'findings.read' }, status: 200,
    params: JobParams, query: null, body: null, response: z.object({ items: z.array(FoundReport) }), errors: ['notFound'],
  }),
  report: endpoint({
    id: 'found.report', method: 'POST', path: '/jobs/:jobId/found', summary: 'Stop work: report what was found; the job is held until the estimator answers',
    access: { permission: 'findings.report' }, status: 201, params: JobParams, query: null,
    body: z.strictObject({ id: Id.optional(), at: Instant.optional(), kind: FoundKind, ...told }),
    response: FoundReport, errors: ['notFound', 'conflict.duplicate'],
  }),
  amend: endpoint({
    id: 'found.amend', method: 'POST', path: '/jobs/:jobId/found/:reportId/additions', summary: 'Its reporter adds to a report: a measure, a photo, the part, that a line was hit, or that it is something else',
    access: { permission: 'findings.report' }, status: 200, params: ReportParams, query: null,
    body: z.strictObject({ id: Id, at: Instant, kind: FoundKind.nullable(), ...told }), response: FoundReport, errors: ['notFound', 'conflict.duplicate'],
  }),
  draft: endpoint({
    id: 'found.draft', method: 'POST', path: '/jobs/:jobId/found/:reportId/draft',
    summary: 'Open a draft from the build revision for what was found; a second finding joins the draft that is open for the first',
    access: { permission: 'designs.edit' }, status: 201, params: ReportParams, query: null, body: z.strictObject({}),
    response: Revision, errors: ['notFound', 'conflict.state', 'design.draftOpen'],
  }),
  answer: endpoint({
    id: 'found.answer', method: 'POST', path: '/jobs/:jobId/found/:reportId/answer', summary: "The estimator's answer, which lifts the hold",
    access: { permission: 'findings.answer' }, status: 200, params: ReportParams, query: null, body: z.strictObject({ answer: text(2000, 1) }),
    response: FoundReport, errors: ['notFound', 'conflict.state'],
  }),
};
