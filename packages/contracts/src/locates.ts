import { z } from 'zod';
import { finite, Id, Instant, JobParams, text } from './common.ts';
import { endpoint } from './endpoint.ts';
import { StateCode } from './identity.ts';
import { ticketEventKinds } from './locate/stops.ts';

/** Our words for what a utility answered; the center's own code is kept as a note. */
export const LocateAnswer = z
  .enum(['none', 'marked', 'clear', 'needsMoreTime', 'noAccess', 'meetOnSite', 'notResponded'])
  .meta({ id: 'LocateAnswer' });

export const LocateResponse = z
  .object({ id: Id, utility: z.string(), answer: LocateAnswer, code: z.string(), note: z.string(), photoId: Id.nullable(), at: Instant, by: z.string() })
  .meta({ id: 'LocateResponse' });

const EventKind = z.enum(ticketEventKinds).meta({ id: 'TicketEventKind' });

/** What happened to a ticket or its marks; only added. `utility` is empty when it is about all of them. */
const LocateEvent = z
  .object({ id: Id, kind: EventKind, utility: z.string(), hazard: z.boolean(), note: z.string(), photoId: Id.nullable(), at: Instant, recordedAt: Instant, by: z.string() })
  .meta({ id: 'LocateEvent' });

/** What the center wrote on the ticket; of each the stricter counts, its own or what the rule of the state gives: the later start, the earlier end. */
const given = { startAt: Instant.nullable(), expiresAt: Instant.nullable() };
const GivenEntry = z.object({ id: Id, ...given, note: z.string(), at: Instant, by: z.string() }).meta({ id: 'LocateGiven' });
const startsFirst = ({ startAt, expiresAt }: { readonly startAt: string | null; readonly expiresAt: string | null }) => startAt === null || expiresAt === null || Date.parse(startAt) < Date.parse(expiresAt);
const Given = z.strictObject(given).refine(startsFirst, { message: 'ends before it starts', path: ['expiresAt'] });

/** "May dig" or every reason why not, as codes with parameters. */
export const DigVerdict = z
  .object({ mayDig: z.boolean(), reasons: z.array(z.object({ code: z.string(), params: z.record(z.string(), z.union([z.string(), z.number()])) })) })
  .meta({ id: 'DigVerdict' });
export type DigVerdict = z.infer<typeof DigVerdict>;

export const LocateTicket = z
  .object({
    id: Id, jobId: Id, number: z.string(), state: StateCode, area: z.string(), method: z.string(),
    /** How deep it will be dug [m]; null when not told. */
    depth: z.number().nullable(),
    /** Being prepared, not submitted: without number and clock. */
    draft: z.boolean(),
    requestedAt: Instant.nullable(), legalStartAt: Instant.nullable(), expiresAt: Instant.nullable(),
    renewByAt: Instant.nullable(), rule: z.object({ version: z.string(), source: z.string(), asOf: z.string(), undated: z.boolean(), signedBy: z.string().nullable(), tolerance: z.number().nullable(), toleranceFrom: z.enum(['mark', 'edge']) }).nullable(), responses: z.array(LocateResponse),
    /** As the center wrote it, the latest last. */
    given: z.array(GivenEntry),
    events: z.array(LocateEvent), verdict: DigVerdict, closed: z.boolean(), version: z.number().int(), createdAt: Instant,
  })
  .meta({ id: 'LocateTicket' });
export type LocateTicket = z.infer<typeof LocateTicket>;

const TicketParams = z.strictObject({ jobId: Id, ticketId: Id });

/** What is told to the center: the area that was marked in white, how and how deep it will be dug, who has lines there. */
const whiteLined = { area: text(500, 1), method: text(200).optional(), depth: finite(0, 20).nullable().optional(), utilities: z.array(text(80, 1)).min(1).max(30) };

export const locates = {
  list: endpoint({
    id: 'locates.list', method: 'GET', path: '/jobs/:jobId/locate-tickets', summary: 'Locate tickets of a job and whether it may dig now',
    access: { permission: 'locates.read' }, status: 200, params: JobParams, query: null, body: null,
    response: z.object({ items: z.array(LocateTicket), verdict: DigVerdict }), errors: ['notFound'],
  }),
  create: endpoint({
    id: 'locates.create', method: 'POST', path: '/jobs/:jobId/locate-tickets', summary: 'Record a ticket; legal start and expiry follow from the rule set of the state, in the time zone of the property',
    access: { permission: 'locates.edit' }, status: 201, params: JobParams, query: null,
    body: z.strictObject({ number: text(60, 1), requestedAt: Instant, given: Given.optional(), ...whiteLined }), response: LocateTicket,
    errors: ['notFound', 'conflict.duplicate'],
  }),
  prepare: endpoint({
    id: 'locates.prepare', method: 'POST', path: '/jobs/:jobId/locate-tickets/drafts', summary: 'Prepare a ticket: area, method and depth as they will be told to the center',
    access: { permission: 'locates.edit' }, status: 201, params: JobParams, query: null, body: z.strictObject(whiteLined), response: LocateTicket, errors: ['notFound'],
  }),
  submit: endpoint({
    id: 'locates.submit', method: 'POST', path: '/jobs/:jobId/locate-tickets/:ticketId/submit', summary: 'The center took the ticket: number and time; its clock begins',
    access: { permission: 'locates.edit' }, status: 200, params: TicketParams, query: null, body: z.strictObject({ number: text(60, 1), requestedAt: Instant, given: Given.optional() }), response: LocateTicket,
    errors: ['notFound', 'conflict.duplicate', 'conflict.state'],
  }),
  give: endpoint({
    id: 'locates.give', method: 'POST', path: '/jobs/:jobId/locate-tickets/:ticketId/given', summary: 'Enter or correct start and expiry as the center wrote them; a correction that lets dig earlier or longer names its reason',
    access: { permission: 'locates.edit' }, status: 200, params: TicketParams, query: null,
    body: z.strictObject({ ...given, note: text(500) }).refine(startsFirst, { message: 'ends before it starts', path: ['expiresAt'] }), response: LocateTicket, errors: ['notFound', 'conflict.state'],
  }),
  event: endpoint({
    id: 'locates.event', method: 'POST', path: '/jobs/:jobId/locate-tickets/:ticketId/events', summary: 'Put on record what happened to the marks or the ticket; some stop the digging at once',
    access: { permission: 'locates.edit' }, status: 200, params: TicketParams, query: null,
    body: z.strictObject({ kind: EventKind, utility: text(80), hazard: z.boolean(), note: text(500), photoId: Id.nullable(), at: Instant }), response: LocateTicket,
    errors: ['notFound', 'conflict.state'],
  }),
  answer: endpoint({
    id: 'locates.answer', method: 'POST', path: '/jobs/:jobId/locate-tickets/:ticketId/responses', summary: 'Record the answer of one utility, or that one which the ticket did not name has lines there; silence is never clearance',
    access: { permission: 'locates.edit' }, status: 200, params: TicketParams, query: null,
    body: z.strictObject({ utility: text(80, 1), answer: LocateAnswer, code: text(60).optional(), note: text(500), photoId: Id.nullable().optional() }), response: LocateTicket, errors: ['notFound', 'conflict.state'],
  }),
  close: endpoint({
    id: 'locates.close', method: 'POST', path: '/jobs/:jobId/locate-tickets/:ticketId/close', summary: 'Close a ticket that is not dug under any more',
    access: { permission: 'locates.edit' }, status: 200, params: TicketParams, query: null, body: z.strictObject({}), response: LocateTicket, errors: ['notFound', 'conflict.state'],
  }),
};
