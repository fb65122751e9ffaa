import { z } from 'zod';
import { CalendarDate, Id, Instant, JobParams, KeptAnswer, text } from './common.ts';
import { endpoint } from './endpoint.ts';
import { outletQuestionIds, permitKinds } from './permit/kinds.ts';
import { evidenceLacking, permitStates } from './permit/standing.ts';

const PermitStateWord = z.enum(permitStates).meta({ id: 'PermitState' });
const stated = { state: PermitStateWord, number: z.string(), note: z.string(), on: CalendarDate.nullable(), expiresOn: CalendarDate.nullable(), photoId: Id.nullable() };

const PermitAnswer = z.object({ ...stated, at: Instant, by: z.string() }).meta({ id: 'PermitAnswer' });
export type PermitAnswer = z.infer<typeof PermitAnswer>;

const Gap = z.enum(['unknown', 'applied', 'refused', 'expired']).nullable();

/** `gap` says why it holds the release to dig; null when it does not. */
const Permit = z.object({ kind: z.enum(permitKinds), usual: z.boolean(), answer: PermitAnswer.nullable(), gap: Gap }).meta({ id: 'Permit' });
export type Permit = z.infer<typeof Permit>;

/** An outlet question as the design answers it, and what was answered after the design was issued: the later word counts, for this outlet as it is. */
const OutletQuestion = z
  .object({ question: z.enum(outletQuestionIds), design: z.enum(['yes', 'no', 'unknown', 'notApplicable']), answer: PermitAnswer.nullable(), gap: Gap })
  .meta({ id: 'OutletQuestion' });
export type OutletQuestion = z.infer<typeof OutletQuestion>;

export const Permits = z
  .object({
    permits: z.array(Permit),
    /** The issued revision whose outlets are asked about: the accepted one, else the newest. */
    revisionId: Id.nullable(),
    outlets: z.array(z.object({ outlet: z.string(), name: z.string(), questions: z.array(OutletQuestion) })),
  })
  .meta({ id: 'Permits' });
export type Permits = z.infer<typeof Permits>;

const said = { state: PermitStateWord, number: text(60), note: text(500), on: CalendarDate.nullable(), expiresOn: CalendarDate.nullable(), photoId: Id.nullable(), kept: KeptAnswer.optional() };
const isShown = (answer: Parameters<typeof evidenceLacking>[0]) => evidenceLacking(answer).length === 0;
const unshown = { message: 'lacks its number, date, reason or evidence' };

export const permits = {
  read: endpoint({
    id: 'permits.read', method: 'GET', path: '/jobs/:jobId/permits', summary: 'Permits, approvals and outlet questions of a job, each with what holds the release to dig',
    access: { permission: 'permits.read' }, status: 200, params: JobParams, query: null, body: null, response: Permits, errors: ['notFound'],
  }),
  answer: endpoint({
    id: 'permits.answer', method: 'POST', path: '/jobs/:jobId/permits', summary: 'Say where approvals stand; earlier answers stay on record',
    access: { permission: 'permits.edit' }, status: 200, params: JobParams, query: null,
    body: z.strictObject({ answers: z.array(z.strictObject({ kind: z.enum(permitKinds), ...said }).refine(isShown, unshown)).min(1).max(permitKinds.length) }),
    response: Permits, errors: ['notFound', 'conflict.duplicate'],
  }),
  answerOutlet: endpoint({
    id: 'permits.answerOutlet', method: 'POST', path: '/jobs/:jobId/permits/outlets', summary: 'Answer an outlet question that an issued design left open; it counts for this outlet as long as nothing about it changes',
    access: { permission: 'permits.edit' }, status: 200, params: JobParams, query: null,
    body: z.strictObject({ revisionId: Id, outlet: text(60, 1), question: z.enum(outletQuestionIds), ...said }).refine(isShown, unshown),
    response: Permits, errors: ['notFound', 'conflict.state', 'conflict.duplicate'],
  }),
};
