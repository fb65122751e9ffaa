import { z } from 'zod';
import { Id, Instant, JobParams, text } from './common.ts';
import { endpoint } from './endpoint.ts';
import { StateCode } from './identity.ts';

/** Our words for what a utility answered; the center's own code is kept as a note. */
export const LocateAnswer = z
  .enum(['none', 'marked', 'clear', 'needsMoreTime', 'noAccess', 'meetOnSite', 'notResponded'])
  .meta({ id: 'LocateAnswer' });

export const LocateResponse = z
  .object({ id: Id, utility: z.string(), answer: LocateAnswer, note: z.string(), at: Instant, by: z.string() })
  .meta({ id: 'LocateResponse' });

/** "May dig" or every reason why not, as codes with parameters. */
export const DigVerdict = z
  .object({ mayDig: z.boolean(), reasons: z.array(z.object({ code: z.string(), params: z.record(z.string(), z.union([z.string(), z.number()])) })) })
  .meta({ id: 'DigVerdict' });
export type DigVerdict = z.infer<typeof DigVerdict>;

export const LocateTicket = z
  .object({
    id: Id, jobId: Id, number: z.string(), state: StateCode, area: z.string(), requestedAt: Instant, legalStartAt: Instant.nullable(), expiresAt: Instant.nullable(),
    renewByAt: Instant.nullable(), rule: z.object({ version: z.string(), source: z.string(), asOf: z.string(), undated: z.boolean() }).nullable(), responses: z.array(LocateResponse),
    verdict: DigVerdict, closed: z.boolean(), version: z.number().int(), createdAt: Instant,
  })
  .meta({ id: 'LocateTicket' });
export type LocateTicket = z.infer<typeof LocateTicket>;

const TicketParams = z.strictObject({ jobId: Id, ticketId: Id });

export const locates = {
  list: endpoint({
    id: 'locates.list', method: 'GET', path: '/jobs/:jobId/locate-tickets', summary: 'Locate tickets of a job and whether it may dig now',
    access: { permission: 'locates.read' }, status: 200, params: JobParams, query: null, body: null,
    response: z.object({ items: z.array(LocateTicket), verdict: DigVerdict }), errors: ['notFound'],
  }),
  create: endpoint({
    id: 'locates.create', method: 'POST', path: '/jobs/:jobId/locate-tickets', summary: 'Record a ticket; legal start and expiry follow from the rule set of the state, in the time zone of the property',
    access: { permission: 'locates.edit' }, status: 201, params: JobParams, query: null,
    body: z.strictObject({ number: text(60, 1), requestedAt: Instant, area: text(500, 1), utilities: z.array(text(80, 1)).min(1).max(30) }), response: LocateTicket,
    errors: ['notFound', 'conflict.duplicate'],
  }),
  answer: endpoint({
    id: 'locates.answer', method: 'POST', path: '/jobs/:jobId/locate-tickets/:ticketId/responses', summary: 'Record the answer of one utility; silence is never clearance',
    access: { permission: 'locates.edit' }, status: 200, params: TicketParams, query: null,
    body: z.strictObject({ utility: text(80, 1), answer: LocateAnswer, note: text(500) }), response: LocateTicket, errors: ['notFound'],
  }),
  close: endpoint({
    id: 'locates.close', method: 'POST', path: '/jobs/:jobId/locate-tickets/:ticketId/close', summary: 'Close a ticket that is not dug under any more',
    access: { permission: 'locates.edit' }, status: 200, params: TicketParams, query: null, body: z.strictObject({}), response: LocateTicket, errors: ['notFound'],
  }),
};
