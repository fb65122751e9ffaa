import type { Complaint, CustomerInput, Hold, Job, JobRow, Language, PropertyInput } from '@yardfall/contracts';
import { render } from '@yardfall/text';
import type { Prisma } from '../generated/prisma/client.ts';

/** What a presented job is made of. */
export const jobParts = {
  customer: { include: { customerKey_customer: true } },
  property: true,
  assignments_job: { include: { member: { select: { name: true } } }, orderBy: { createdAt: 'asc' } },
  locateTickets_job: { where: { status: 'open' }, orderBy: { expiresAt: { sort: 'desc', nulls: 'last' } }, take: 1 },
  jobHolds_job: { where: { clearedAt: null }, orderBy: { since: 'asc' } },
} satisfies Prisma.JobInclude;
export const jobHistory = { jobStages_job: { include: { byMember: { select: { name: true } } }, orderBy: [{ at: 'asc' }, { id: 'asc' }] } } satisfies Prisma.JobInclude;

export type JobRecord = Prisma.JobGetPayload<{ include: typeof jobParts }>;
export type JobWithHistory = Prisma.JobGetPayload<{ include: typeof jobParts & typeof jobHistory }>;

export interface People {
  readonly person: CustomerInput | null;
  readonly place: PropertyInput | null;
}

/** What is shown once a customer was erased. */
function erased(language: Language): string {
  return render(language, 'us', 'jobs.customer.erased');
}

export function presentHold(hold: JobRecord['jobHolds_job'][number]): Hold {
  return { id: hold.id, waitsFor: hold.waitsFor as Hold['waitsFor'], code: hold.code, params: hold.params as Hold['params'], since: hold.since.toISOString() };
}

function locateDates(ticket: JobRecord['locateTickets_job'][number] | undefined): JobRow['locate'] {
  if (ticket === undefined) return null;
  const moment = (at: Date | null) => at?.toISOString() ?? null;
  return { number: ticket.number, legalStartAt: moment(ticket.legalStartAt), renewByAt: moment(ticket.renewByAt), expiresAt: moment(ticket.expiresAt) };
}

export function presentRow(job: JobRecord, { person, place }: People, language: Language): Omit<JobRow, 'system'> {
  return {
    id: job.id, number: job.number, title: job.title, stage: job.stage as JobRow['stage'], urgency: job.urgency as JobRow['urgency'],
    customerName: person?.name ?? erased(language), address: place?.address ?? erased(language), state: job.property.state, timeZone: job.property.timeZone,
    assignments: job.assignments_job.map(({ memberId, member, role }) => ({ memberId, name: member.name, role: role as JobRow['assignments'][number]['role'] })),
    holds: job.jobHolds_job.map(presentHold), locate: locateDates(job.locateTickets_job[0]), buildRevisionId: job.buildRevisionId, releasedAt: job.releasedAt?.toISOString() ?? null,
    createdAt: job.createdAt.toISOString(), updatedAt: job.updatedAt.toISOString(),
  };
}

export function presentJob(job: JobWithHistory, people: People, language: Language): Job {
  const nobody = { name: erased(language), email: null, phones: [], language: job.customer.language as Language };
  const nowhere = { address: erased(language), gateCode: '', notes: '', state: job.property.state, timeZone: job.property.timeZone };
  return {
    ...presentRow(job, people, language),
    customer: { id: job.customerId, ...(people.person ?? nobody) },
    property: { id: job.propertyId, ...(people.place ?? nowhere) },
    complaint: JSON.parse(Buffer.from(job.complaint).toString('utf8')) as Complaint,
    history: job.jobStages_job.map(({ stage, at, byMember }) => ({ stage: stage as Job['stage'], at: at.toISOString(), by: byMember?.name ?? null })),
    version: job.version,
  };
}
