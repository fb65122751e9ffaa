import { z } from 'zod';
import { CalendarDate, Id, Instant, JobParams, KeptAnswer, text } from './common.ts';
import { endpoint } from './endpoint.ts';
import { privateQuestions, privateStates } from './locate/privateLines.ts';

const Question = z.enum(privateQuestions);
const State = z.enum(privateStates);

/** What the homeowner declared about lines of their own, or whether a private locator has been. Without an answer it is unknown. */
const PrivateLine = z
  .object({ question: Question, state: State, note: z.string(), on: CalendarDate.nullable(), photoId: Id.nullable(), at: Instant.nullable(), by: z.string() })
  .meta({ id: 'PrivateLine' });
export const PrivateLines = z.object({ lines: z.array(PrivateLine) }).meta({ id: 'PrivateLines' });
export type PrivateLines = z.infer<typeof PrivateLines>;

export const privateLines = {
  read: endpoint({
    id: 'privateLines.read', method: 'GET', path: '/jobs/:jobId/private-lines', summary: 'Lines of the homeowner, which 811 does not mark, as declared',
    access: { permission: 'locates.read' }, status: 200, params: JobParams, query: null, body: null, response: PrivateLines, errors: ['notFound'],
  }),
  declare: endpoint({
    id: 'privateLines.declare', method: 'POST', path: '/jobs/:jobId/private-lines', summary: 'Record what the homeowner declares; earlier answers stay on record',
    access: { permission: 'locates.edit' }, status: 200, params: JobParams, query: null,
    body: z.strictObject({ lines: z.array(z.strictObject({ question: Question, state: State, note: text(500), on: CalendarDate.nullable(), photoId: Id.nullable(), kept: KeptAnswer.optional() })).min(1).max(privateQuestions.length) }),
    response: PrivateLines, errors: ['notFound', 'conflict.duplicate'],
  }),
};
