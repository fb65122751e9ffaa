import { z } from 'zod';
import { CalendarDate, Email, finite, Id, Instant, JobParams, Language, page, PageQuery, text, TextParams, TimeZone } from './common.ts';
import { endpoint } from './endpoint.ts';
import { MemberRoleSchema, StateCode } from './identity.ts';

export const jobStages = [
  'intake', 'visit', 'design', 'pricing', 'offered', 'accepted', 'released', 'installing', 'proving', 'handedOver', 'referred', 'declined',
] as const;
export const JobStage = z.enum(jobStages).meta({ id: 'JobStage' });
export type JobStage = z.infer<typeof JobStage>;

/** What the homeowner tells us on the call, in their words and in numbers. Depths in metres, times in seconds. */
export const Complaint = z
  .strictObject({
    words: text(2000, 1),
    depth: finite(0, 3).nullable(),
    startsAfter: finite(0, 14 * 86_400).nullable(),
    staysFor: finite(0, 60 * 86_400).nullable(),
    door: text(120),
    enteredHouse: z.boolean(),
    onDryDays: z.boolean(),
    timesPerYear: finite(0, 366).nullable(),
    tried: text(1000),
    rainDate: CalendarDate.nullable(),
  })
  .meta({ id: 'Complaint' });
export type Complaint = z.infer<typeof Complaint>;

export const CustomerInput = z
  .strictObject({ name: text(120, 1), email: Email.nullable(), phones: z.array(text(40, 3)).max(4), language: Language })
  .meta({ id: 'CustomerInput' });
export type CustomerInput = z.infer<typeof CustomerInput>;

export const PropertyInput = z
  .strictObject({ address: text(300, 1), state: StateCode, timeZone: TimeZone, gateCode: text(60), notes: text(1000) })
  .meta({ id: 'PropertyInput' });
export type PropertyInput = z.infer<typeof PropertyInput>;

export const NewJob = z
  .strictObject({ title: text(120, 1), customer: CustomerInput, property: PropertyInput, complaint: Complaint })
  .meta({ id: 'NewJob' });
export type NewJob = z.infer<typeof NewJob>;

/** entered the house -> within 3 working days; water on dry days -> leak test first. Ours, an editable setting. */
export const Urgency = z.enum(['houseEntered', 'normal', 'leakTestFirst']).meta({ id: 'Urgency' });

export const waitsFor = ['us', 'customer', 'marks', 'permit', 'crew', 'weather', 'proof'] as const;
export const Hold = z
  .object({ id: Id, waitsFor: z.enum(waitsFor), code: z.string(), params: TextParams, since: Instant })
  .meta({ id: 'Hold' });
export type Hold = z.infer<typeof Hold>;

export const Assignment = z.object({ memberId: Id, name: z.string(), role: MemberRoleSchema }).meta({ id: 'Assignment' });

/** The clock of the ticket that runs longest: it stands on every line of the job. Null moments where no rule is known. */
const LocateDates = z.object({ number: z.string(), legalStartAt: Instant.nullable(), renewByAt: Instant.nullable(), expiresAt: Instant.nullable() }).meta({ id: 'LocateDates' });

const jobCore = {
  id: Id,
  number: z.number().int(),
  title: z.string(),
  stage: JobStage,
  urgency: Urgency,
  customerName: z.string(),
  address: z.string(),
  state: StateCode,
  timeZone: TimeZone,
  assignments: z.array(Assignment),
  holds: z.array(Hold),
  /** Null without a ticket that was submitted and is not closed. */
  locate: LocateDates.nullable(),
  buildRevisionId: Id.nullable(),
  releasedAt: Instant.nullable(),
  createdAt: Instant,
  updatedAt: Instant,
};
/** What the newest design of a job is made of, as far as a small sketch shows it. */
export const systemParts = ['roof', 'drain', 'pipe', 'swale', 'pump'] as const;
export const SystemPart = z.enum(systemParts).meta({ id: 'SystemPart' });
export type SystemPart = z.infer<typeof SystemPart>;

/** `system` is null as long as nothing is designed. */
export const JobRow = z.object({ ...jobCore, system: z.array(SystemPart).nullable() }).meta({ id: 'JobRow' });
export type JobRow = z.infer<typeof JobRow>;

export const Job = z
  .object({
    ...jobCore,
    customer: CustomerInput.extend({ id: Id }),
    property: PropertyInput.extend({ id: Id }),
    complaint: Complaint,
    history: z.array(z.object({ stage: JobStage, at: Instant, by: z.string().nullable() })),
    version: z.number().int(),
  })
  .meta({ id: 'Job' });
export type Job = z.infer<typeof Job>;

export const jobs = {
  list: endpoint({
    id: 'jobs.list', method: 'GET', path: '/jobs', summary: 'Jobs that the reader may see, newest first, with what holds each',
    access: { permission: 'jobs.read' }, status: 200, params: null,
    query: PageQuery.extend({
      stage: JobStage.optional(), open: z.enum(['true', 'false']).optional(),
      /** Words that all stand in the number, title, customer or address, whatever their case and accents. */
      words: text(120).optional(),
    }), body: null, response: page(JobRow),
  }),
  create: endpoint({
    id: 'jobs.create', method: 'POST', path: '/jobs', summary: 'Take a call: customer, property and complaint become a job',
    access: { permission: 'jobs.create' }, status: 201, params: null, query: null, body: NewJob, response: Job,
  }),
  read: endpoint({
    id: 'jobs.read', method: 'GET', path: '/jobs/:jobId', summary: 'One job', access: { permission: 'jobs.read' }, status: 200,
    params: JobParams, query: null, body: null, response: Job, concurrency: 'etag', errors: ['notFound'],
  }),
  update: endpoint({
    id: 'jobs.update', method: 'PATCH', path: '/jobs/:jobId', summary: 'Correct title, customer, property or complaint',
    access: { permission: 'jobs.edit' }, status: 200, params: JobParams, query: null,
    body: z.strictObject({ title: text(120, 1).optional(), customer: CustomerInput.optional(), property: PropertyInput.optional(), complaint: Complaint.optional() }),
    response: Job, concurrency: 'ifMatch', errors: ['notFound', 'conflict.stale', 'conflict.preconditionRequired'],
  }),
  assign: endpoint({
    id: 'jobs.assign', method: 'PUT', path: '/jobs/:jobId/assignments', summary: 'Say who estimates and who digs',
    access: { permission: 'jobs.assign' }, status: 200, params: JobParams, query: null,
    body: z.strictObject({ assignments: z.array(z.strictObject({ memberId: Id, role: MemberRoleSchema })).max(20) }), response: Job, errors: ['notFound'],
  }),
  moveStage: endpoint({
    id: 'jobs.moveStage', method: 'POST', path: '/jobs/:jobId/stage', summary: 'Move the job by hand: visited, declined or referred',
    access: { permission: 'jobs.edit' }, status: 200, params: JobParams, query: null,
    body: z.strictObject({ stage: z.enum(['visit', 'design', 'referred', 'declined']), reason: text(500) }), response: Job, errors: ['notFound', 'conflict.state'],
  }),
  releaseCheck: endpoint({
    id: 'jobs.releaseCheck', method: 'GET', path: '/jobs/:jobId/release', summary: 'Everything that still keeps an offer from being released to dig, as codes with parameters',
    access: { permission: 'offers.read' }, status: 200, params: JobParams, query: z.strictObject({ offerId: Id }), body: null,
    response: z.object({ reasons: z.array(z.object({ code: z.string(), params: TextParams })) }), errors: ['notFound'],
  }),
  release: endpoint({
    id: 'jobs.release', method: 'POST', path: '/jobs/:jobId/release', summary: "The owner's release to dig: with the accepted offer it sets the build revision",
    access: { permission: 'jobs.release' }, status: 200, params: JobParams, query: null, body: z.strictObject({ offerId: Id }), response: Job,
    errors: ['notFound', 'release.held'],
  }),
  referralLetter: endpoint({
    id: 'jobs.referralLetter', method: 'GET', path: '/jobs/:jobId/referral-letter', summary: 'For a site that needs an engineer: what was seen, who to call, what to keep away from',
    access: { permission: 'jobs.read' }, status: 200, params: JobParams, query: null, body: null,
    response: z.object({ observations: z.array(z.object({ code: z.string(), note: z.string() })), referTo: z.array(z.string()), cautions: z.array(z.string()), writtenAt: Instant }),
    errors: ['notFound', 'conflict.state'],
  }),
};
