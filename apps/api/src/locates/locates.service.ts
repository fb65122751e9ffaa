import { Injectable } from '@nestjs/common';
import { type BodyOf, type DigVerdict, jobVerdict, type LocateTicket, locateRule, type locates as api, type LocateTimes, locateTimes, UnknownDay } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { emit } from '../common/events.ts';
import { newId } from '../common/ids.ts';
import { lockJob, requireJob } from '../jobs/jobs.access.ts';
import { dayAt } from '../jobs/propertyDay.ts';
import { forVerdict, presentTicket, ticketParts } from './locates.presenter.ts';
import { holdForMarks, ticketsOf } from './tickets.ts';

@Injectable()
export class LocatesService {
  private readonly database: Database;

  constructor(database: Database) {
    this.database = database;
  }

  list(actor: Actor, jobId: string): Promise<{ items: LocateTicket[]; verdict: DigVerdict }> {
    return this.database.read(actor, async (tx) => {
      await requireJob(tx, actor, jobId);
      const tickets = await ticketsOf(tx, actor, jobId);
      const { at } = actor.request;
      return { items: tickets.map((ticket) => presentTicket(ticket, at)), verdict: jobVerdict(tickets.map(forVerdict), at.toISOString()) };
    });
  }

  create(actor: Actor, jobId: string, body: BodyOf<typeof api.create>): Promise<LocateTicket> {
    return this.database.write(actor, async (tx) => {
      const job = await lockJob(tx, actor, jobId);
      const { companyId } = actor;
      if (await tx.locateTicket.findFirst({ where: { companyId, jobId, number: body.number } })) throw new DomainError('conflict.duplicate');
      const property = found(await tx.property.findUnique({ where: { companyId_id: { companyId, id: job.propertyId } } }));
      const id = newId();
      const { at } = actor.request;
      const clock = clockOf(property.state, body.requestedAt, property.timeZone);
      await tx.locateTicket.create({
        data: {
          id, companyId, jobId, number: body.number, state: property.state, area: body.area, requestedAt: new Date(body.requestedAt), status: 'open', ...clock,
          createdById: actor.id, createdAt: at,
        },
      });
      const utilities = [...new Set(body.utilities)];
      await tx.locateResponse.createMany({
        data: utilities.map((utility) => ({ id: newId(), companyId, ticketId: id, utility, answer: 'none', note: '', recordedById: actor.id, at })),
      });
      return this.changed(tx, actor, job, id, 'locate.created', { utilities: utilities.length, rule: clock.ruleVersion });
    });
  }

  answer(actor: Actor, jobId: string, ticketId: string, { utility, answer, note }: BodyOf<typeof api.answer>): Promise<LocateTicket> {
    return this.database.write(actor, async (tx) => {
      const job = await lockJob(tx, actor, jobId);
      const ticket = await this.ticket(tx, actor, jobId, ticketId);
      if (ticket.status === 'closed') throw new DomainError('conflict.state', { stage: 'closed' });
      await tx.locateResponse.create({
        data: { id: newId(), companyId: actor.companyId, ticketId, utility, answer, note, recordedById: actor.id, at: actor.request.at },
      });
      return this.changed(tx, actor, job, ticketId, 'locate.answered', { answer });
    });
  }

  close(actor: Actor, jobId: string, ticketId: string): Promise<LocateTicket> {
    return this.database.write(actor, async (tx) => {
      const job = await lockJob(tx, actor, jobId);
      await this.ticket(tx, actor, jobId, ticketId);
      await tx.locateTicket.update({ where: { companyId_id: { companyId: actor.companyId, id: ticketId } }, data: { status: 'closed', version: { increment: 1 } } });
      return this.changed(tx, actor, job, ticketId, 'locate.closed', {});
    });
  }

  private async changed(
    tx: Tx, actor: Actor, job: { readonly id: string; readonly stage: string }, ticketId: string, action: string, params: Parameters<typeof audit>[4],
  ): Promise<LocateTicket> {
    await holdForMarks(tx, actor, job);
    await audit(tx, actor, action, { jobId: job.id, id: ticketId }, params);
    await emit(tx, actor, 'locates', job.id, ticketId);
    return presentTicket(await this.ticket(tx, actor, job.id, ticketId), actor.request.at);
  }

  private async ticket(tx: Tx, actor: Actor, jobId: string, id: string) {
    return found(await tx.locateTicket.findFirst({ where: { companyId: actor.companyId, jobId, id }, include: ticketParts }));
  }
}

interface StoredClock {
  readonly ruleVersion: string | null;
  readonly legalStartAt: Date | null;
  readonly expiresAt: Date | null;
  readonly renewByAt: Date | null;
}

/** An unknown rule leaves the clock empty, and the verdict refuses for as long as it is. */
function clockOf(state: string, requestedAt: string, timeZone: string): StoredClock {
  const rule = locateRule(state, dayAt(new Date(requestedAt), timeZone));
  const times = rule === null ? null : timesOrNull(() => locateTimes(rule, requestedAt, timeZone));
  const date = (text: string | undefined) => (text === undefined ? null : new Date(text));
  return { ruleVersion: rule?.version ?? null, legalStartAt: date(times?.legalStartAt), expiresAt: date(times?.expiresAt), renewByAt: date(times?.renewByAt) };
}

function timesOrNull(count: () => LocateTimes): LocateTimes | null {
  try {
    return count();
  } catch (error) {
    if (error instanceof UnknownDay) return null;
    throw error;
  }
}
