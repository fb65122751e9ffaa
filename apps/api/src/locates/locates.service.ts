import { Injectable } from '@nestjs/common';
import { type BodyOf, type DigVerdict, jobVerdict, type LocateTicket, type locates as api } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { Database, type Tx } from '../common/database.ts';
import { found } from '../common/errors.ts';
import { newId } from '../common/ids.ts';
import { lockJob, requireJob } from '../jobs/jobs.access.ts';
import { forVerdict, presentTicket } from './locates.presenter.ts';
import { allRules, signedRules } from './rules.ts';
import { addGiven } from './given.ts';
import { clockOf } from './ticketClock.ts';
import { requireNewNumber, requireTicket, ticketChanged, ticketsOf } from './tickets.ts';

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
      const signed = await signedRules(tx, actor);
      const { at } = actor.request;
      return { items: tickets.map((ticket) => presentTicket(ticket, signed, at)), verdict: jobVerdict(tickets.map(forVerdict), at.toISOString()) };
    });
  }

  prepare(actor: Actor, jobId: string, body: BodyOf<typeof api.prepare>): Promise<LocateTicket> {
    return this.database.write(actor, async (tx) => {
      const job = await lockJob(tx, actor, jobId);
      const { state } = found(await tx.property.findUnique({ where: keyOf(actor, job.propertyId) }));
      const id = await this.add(tx, actor, jobId, body, { number: '', state, status: 'draft' });
      return ticketChanged(tx, actor, job, id, 'locate.prepared', {});
    });
  }

  create(actor: Actor, jobId: string, body: BodyOf<typeof api.create>): Promise<LocateTicket> {
    return this.database.write(actor, async (tx) => {
      const job = await lockJob(tx, actor, jobId);
      await requireNewNumber(tx, actor, jobId, body.number);
      const property = found(await tx.property.findUnique({ where: keyOf(actor, job.propertyId) }));
      const clock = clockOf(allRules(await signedRules(tx, actor)), property.state, { ...body, timeZone: property.timeZone });
      const id = await this.add(tx, actor, jobId, body, { number: body.number, state: property.state, status: 'open', requestedAt: new Date(body.requestedAt), ...clock });
      await addGiven(tx, actor, id, body.given);
      return ticketChanged(tx, actor, job, id, 'locate.created', { utilities: new Set(body.utilities).size, rule: clock.ruleVersion });
    });
  }

  submit(actor: Actor, jobId: string, ticketId: string, { number, requestedAt, given }: BodyOf<typeof api.submit>): Promise<LocateTicket> {
    return this.database.write(actor, async (tx) => {
      const job = await lockJob(tx, actor, jobId);
      const ticket = await requireTicket(tx, actor, jobId, ticketId, ['draft']);
      await requireNewNumber(tx, actor, jobId, number);
      const { timeZone } = found(await tx.property.findUnique({ where: keyOf(actor, job.propertyId) }));
      const clock = clockOf(allRules(await signedRules(tx, actor)), ticket.state, { requestedAt, timeZone, given });
      await tx.locateTicket.update({ where: keyOf(actor, ticketId), data: { number, requestedAt: new Date(requestedAt), status: 'open', ...clock, version: { increment: 1 } } });
      await addGiven(tx, actor, ticketId, given);
      return ticketChanged(tx, actor, job, ticketId, 'locate.submitted', { number, rule: clock.ruleVersion });
    });
  }

  private async add(
    tx: Tx, actor: Actor, jobId: string, { area, method = '', depth = null, utilities }: BodyOf<typeof api.prepare>,
    rest: { readonly number: string; readonly state: string; readonly status: string; readonly requestedAt?: Date } & Partial<ReturnType<typeof clockOf>>,
  ): Promise<string> {
    const id = newId();
    const { companyId, request: { at } } = actor;
    await tx.locateTicket.create({ data: { id, companyId, jobId, area, method, depth, ...rest, createdById: actor.id, createdAt: at } });
    await tx.locateResponse.createMany({
      data: [...new Set(utilities)].map((utility) => ({ id: newId(), companyId, ticketId: id, utility, answer: 'none', note: '', recordedById: actor.id, at })),
    });
    return id;
  }
}

const keyOf = (actor: Actor, id: string) => ({ companyId_id: { companyId: actor.companyId, id } });
