import { Injectable } from '@nestjs/common';
import { canonicalBytes, type BodyOf, type Job, type jobs as api, type JobRow, type NewJob, type QueryOf } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { requireVersion } from '../common/etag.ts';
import { emit } from '../common/events.ts';
import { newId } from '../common/ids.ts';
import { CustomersService } from '../customers/customers.service.ts';
import type { Prisma } from '../generated/prisma/client.ts';
import { setHold } from './holds.ts';
import { lockJob, requireJob, visibleJobs } from './jobs.access.ts';
import { jobHistory, jobParts, presentJob, presentRow, type JobRecord } from './jobs.presenter.ts';
import { moveTo, writeStage } from './stages.ts';
import { holdsAll, searchStep, wordsOf } from './search.rules.ts';
import { systemsOf } from './systems.ts';
import { ended, mayMoveByHand } from './stages.rules.ts';
import { urgencyOf, visitBy } from './urgency.rules.ts';

/** A row before its system is read, which only the rows that are shown need. */
type PlainRow = Omit<JobRow, 'system'>;

@Injectable()
export class JobsService {
  private readonly database: Database;
  private readonly customers: CustomersService;

  constructor(database: Database, customers: CustomersService) {
    this.database = database;
    this.customers = customers;
  }

  list(actor: Actor, query: QueryOf<typeof api.list>): Promise<{ items: JobRow[]; next: string | null }> {
    const stage: Prisma.StringFilter | undefined = query.stage !== undefined ? { equals: query.stage } : openness(query.open);
    const where = { AND: [visibleJobs(actor), stage === undefined ? {} : { stage }] };
    return this.database.read(actor, async (tx) => {
      const rows = await this.found(tx, actor, where, query);
      const shown = rows.slice(0, query.limit);
      const systems = await systemsOf(tx, actor, shown.map(({ id }) => id));
      const items = shown.map((row) => ({ ...row, system: systems.get(row.id) ?? null }));
      return { items, next: rows.length > query.limit ? String(items.at(-1)?.number) : null };
    });
  }

  /** One more than asked for where there are more. Names and addresses are sealed in the tables, so words are looked for after opening. */
  private async found(tx: Tx, actor: Actor, where: Prisma.JobWhereInput, { cursor, limit, words }: QueryOf<typeof api.list>): Promise<PlainRow[]> {
    const wanted = wordsOf(words ?? '');
    const kept: PlainRow[] = [];
    let before = cursor === undefined ? null : numberOf(cursor);
    while (kept.length <= limit) {
      const rows = await tx.job.findMany({ where: { AND: [where, before === null ? {} : { number: { lt: before } }] }, include: jobParts, orderBy: { number: 'desc' }, take: searchStep(limit, wanted.length) });
      kept.push(...rows.map((row) => presentRow(row, this.peopleOf(row), actor.language)).filter((row) => holdsAll(row, wanted)));
      const last = rows.at(-1);
      if (last === undefined || rows.length < searchStep(limit, wanted.length)) break;
      before = last.number;
    }
    return kept.slice(0, limit + 1);
  }

  create(actor: Actor, input: NewJob): Promise<Job> {
    return this.database.write(actor, async (tx) => {
      const { at } = actor.request;
      const id = newId();
      const people = await this.customers.create(tx, actor, input.customer, input.property);
      const urgency = urgencyOf(input.complaint);
      const common = { companyId: actor.companyId, complaint: canonicalBytes(input.complaint), urgency, createdAt: at, updatedAt: at };
      await tx.job.create({ data: { id, number: await nextNumber(tx, actor), title: input.title, ...people, stage: 'intake', ...common } });
      await writeStage(tx, actor, id, 'intake');
      await this.holdForVisit(tx, actor, id, input.property.timeZone, urgency);
      await audit(tx, actor, 'job.created', { jobId: id, id }, { urgency });
      await emit(tx, actor, 'job', id, id);
      return this.describe(tx, actor, id);
    });
  }

  read(actor: Actor, jobId: string): Promise<Job> {
    return this.database.read(actor, (tx) => this.describe(tx, actor, jobId));
  }

  update(actor: Actor, jobId: string, change: BodyOf<typeof api.update>): Promise<Job> {
    return this.database.write(actor, async (tx) => {
      const job = await lockJob(tx, actor, jobId);
      requireVersion(actor.request, job.version);
      const { customer, property } = found(await tx.job.findUnique({ where: keyOf(actor, jobId), include: jobParts }));
      if (change.customer !== undefined) await this.customers.updateCustomer(tx, customer, change.customer);
      if (change.property !== undefined) await this.customers.updateProperty(tx, customer, property, change.property);
      const complaint = change.complaint === undefined ? {} : { complaint: canonicalBytes(change.complaint), urgency: urgencyOf(change.complaint) };
      const title = change.title === undefined ? {} : { title: change.title };
      await tx.job.update({ where: keyOf(actor, jobId), data: { ...title, ...complaint, ...touched(actor) } });
      await audit(tx, actor, 'job.updated', { jobId, id: jobId }, { fields: Object.keys(change).sort().join(',') });
      await emit(tx, actor, 'job', jobId, jobId);
      return this.describe(tx, actor, jobId);
    });
  }

  assign(actor: Actor, jobId: string, { assignments }: BodyOf<typeof api.assign>): Promise<Job> {
    return this.database.write(actor, async (tx) => {
      await lockJob(tx, actor, jobId);
      await this.checkMembers(tx, actor, assignments);
      await tx.assignment.deleteMany({ where: { companyId: actor.companyId, jobId } });
      const rows = uniqueOf(assignments).map(({ memberId, role }) => ({ id: newId(), companyId: actor.companyId, jobId, memberId, role, createdAt: actor.request.at }));
      await tx.assignment.createMany({ data: rows });
      await tx.job.update({ where: keyOf(actor, jobId), data: touched(actor) });
      await audit(tx, actor, 'job.assigned', { jobId, id: jobId }, { members: rows.map((row) => `${row.role}:${row.memberId}`).join(',') });
      await emit(tx, actor, 'job', jobId, jobId);
      return this.describe(tx, actor, jobId);
    });
  }

  moveStage(actor: Actor, jobId: string, { stage, reason }: BodyOf<typeof api.moveStage>): Promise<Job> {
    return this.database.write(actor, async (tx) => {
      const job = await lockJob(tx, actor, jobId);
      if (!mayMoveByHand(job.stage as Job['stage'], stage)) throw new DomainError('conflict.state', { stage: job.stage });
      await moveTo(tx, actor, job, stage);
      if (reason !== '') await this.keepReason(tx, actor, jobId, reason);
      return this.describe(tx, actor, jobId);
    });
  }

  /** For other features, inside their transaction. */
  async describe(tx: Tx, actor: Actor, jobId: string): Promise<Job> {
    await requireJob(tx, actor, jobId);
    const row = found(await tx.job.findUnique({ where: keyOf(actor, jobId), include: { ...jobParts, ...jobHistory } }));
    return presentJob(row, this.peopleOf(row), actor.language);
  }

  peopleOf(row: Pick<JobRecord, 'customer' | 'property'>) {
    return { person: this.customers.person(row.customer), place: this.customers.place(row.customer, row.property) };
  }

  /** People write names into reasons, so the trail holds them sealed with the key of the customer. */
  private async keepReason(tx: Tx, actor: Actor, jobId: string, reason: string): Promise<void> {
    const { customer } = found(await tx.job.findUnique({ where: keyOf(actor, jobId), include: jobParts }));
    await audit(tx, actor, 'job.moveReason', { jobId, id: jobId }, { sealed: this.customers.sealText(customer, `reason:${jobId}`, reason) });
  }

  private async holdForVisit(tx: Tx, actor: Actor, jobId: string, timeZone: string, urgency: ReturnType<typeof urgencyOf>): Promise<void> {
    if (urgency === 'leakTestFirst') return setHold(tx, actor, jobId, { waitsFor: 'us', code: 'jobs.hold.leakTest' });
    if (urgency === 'normal') return setHold(tx, actor, jobId, { waitsFor: 'us', code: 'jobs.hold.visit' });
    return setHold(tx, actor, jobId, { waitsFor: 'us', code: 'jobs.hold.visitSoon', params: { by: visitBy(actor.request.at, timeZone) } });
  }

  private async checkMembers(tx: Tx, actor: Actor, assignments: BodyOf<typeof api.assign>['assignments']): Promise<void> {
    const members = await tx.member.findMany({ where: { companyId: actor.companyId, id: { in: assignments.map((a) => a.memberId) }, active: true } });
    const holds = (memberId: string, role: string) => members.some((member) => member.id === memberId && member.roles.includes(role));
    const issues = assignments.flatMap(({ memberId, role }, index) => (holds(memberId, role) ? [] : [{ path: `body.assignments.${index}`, message: `no such member with the role ${role}` }]));
    if (issues.length > 0) throw new DomainError('request.invalid', {}, issues);
  }
}

const keyOf = (actor: Actor, id: string) => ({ companyId_id: { companyId: actor.companyId, id } });
const touched = (actor: Actor) => ({ version: { increment: 1 }, updatedAt: actor.request.at });

function openness(open: 'true' | 'false' | undefined): Prisma.StringFilter | undefined {
  if (open === undefined) return undefined;
  return open === 'true' ? { notIn: [...ended] } : { in: [...ended] };
}

function numberOf(cursor: string): number {
  if (!/^\d{1,9}$/.test(cursor)) throw new DomainError('request.invalid', {}, [{ path: 'query.cursor', message: 'is not a cursor of this list' }]);
  return Number(cursor);
}

/** One at a time in a company, so that two calls at once do not take the same number. */
async function nextNumber(tx: Tx, actor: Actor): Promise<number> {
  await tx.$executeRaw`SELECT pg_advisory_xact_lock(hashtextextended(${`job number ${actor.companyId}`}, 0))`;
  const last = await tx.job.aggregate({ where: { companyId: actor.companyId }, _max: { number: true } });
  return (last._max.number ?? 0) + 1;
}

function uniqueOf<T extends { memberId: string; role: string }>(list: readonly T[]): T[] {
  return [...new Map(list.map((item) => [`${item.role} ${item.memberId}`, item])).values()];
}

