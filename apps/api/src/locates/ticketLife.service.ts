import { Injectable } from '@nestjs/common';
import { type BodyOf, isStop, type LocateTicket, type locates as api, stopsOf } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { ChecklistBuilder } from '../common/checklistBuilder.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { newId } from '../common/ids.ts';
import { requirePhotos } from '../jobs/answers.ts';
import { lockJob } from '../jobs/jobs.access.ts';
import { forVerdict } from './locates.presenter.ts';
import { addGiven } from './given.ts';
import { allRules, signedRules } from './rules.ts';
import { clockBy, isLooser } from './ticketClock.ts';
import { requireTicket, ticketChanged } from './tickets.ts';

/** What happens to a ticket once the center has it: answers, marks that go, a line that is hit, its end. */
@Injectable()
export class TicketLifeService {
  private readonly database: Database;
  private readonly checklist: ChecklistBuilder;

  constructor(database: Database, checklist: ChecklistBuilder) {
    this.database = database;
    this.checklist = checklist;
  }

  /** The answer of a utility; one that the center did not name at first stands on the ticket from then on, and is waited for like the others. */
  answer(actor: Actor, jobId: string, ticketId: string, { utility, answer, code = '', note, photoId = null }: BodyOf<typeof api.answer>): Promise<LocateTicket> {
    return this.database.write(actor, async (tx) => {
      const job = await lockJob(tx, actor, jobId);
      const { locateResponses_ticket: before } = await requireTicket(tx, actor, jobId, ticketId, ['open']);
      await requirePhoto(tx, actor, jobId, photoId);
      const known = before.find((one) => one.utility.toLowerCase() === utility.toLowerCase())?.utility;
      await tx.locateResponse.create({ data: { id: newId(), companyId: actor.companyId, ticketId, utility: known ?? utility, answer, code, note, photoId, recordedById: actor.id, at: actor.request.at } });
      await this.checklist.linesChanged(tx, actor, jobId);
      return known === undefined
        ? ticketChanged(tx, actor, job, ticketId, 'locate.utilityAdded', { utility })
        : ticketChanged(tx, actor, job, ticketId, 'locate.answered', { answer });
    });
  }

  /** The rule that counted the ticket counts it again with what the center wrote; of start and end the stricter counts. */
  give(actor: Actor, jobId: string, ticketId: string, { startAt, expiresAt, note }: BodyOf<typeof api.give>): Promise<LocateTicket> {
    return this.database.write(actor, async (tx) => {
      const job = await lockJob(tx, actor, jobId);
      const ticket = await requireTicket(tx, actor, jobId, ticketId, ['open']);
      const { timeZone } = found(await tx.property.findUnique({ where: { companyId_id: { companyId: actor.companyId, id: job.propertyId } }, select: { timeZone: true } }));
      const rule = allRules(await signedRules(tx, actor)).find(({ version }) => version === ticket.ruleVersion) ?? null;
      const clock = clockBy(rule, { requestedAt: ticket.requestedAt?.toISOString() ?? '', timeZone, given: { startAt, expiresAt } });
      const isTakenBack = startAt === null && expiresAt === null;
      if (note === '' && (isTakenBack || isLooser(clock, ticket))) throw new DomainError('request.invalid', {}, [{ path: 'body.note', message: 'is needed: this lets dig earlier or longer than before' }]);
      await addGiven(tx, actor, ticketId, { startAt, expiresAt }, note);
      await tx.locateTicket.update({ where: { companyId_id: { companyId: actor.companyId, id: ticketId } }, data: { ...clock, version: { increment: 1 } } });
      return ticketChanged(tx, actor, job, ticketId, 'locate.given', { number: ticket.number });
    });
  }

  /** What stopped the digging is told with its time; what lets it go on counts from when it is told, so that nothing dug in between becomes right. */
  event(actor: Actor, jobId: string, ticketId: string, { kind, utility, hazard, note, photoId, at }: BodyOf<typeof api.event>): Promise<LocateTicket> {
    return this.database.write(actor, async (tx) => {
      const job = await lockJob(tx, actor, jobId);
      await requireTicket(tx, actor, jobId, ticketId, ['open']);
      await requirePhoto(tx, actor, jobId, photoId);
      const recordedAt = actor.request.at;
      const told = new Date(at);
      const happened = isStop(kind) && told < recordedAt ? told : recordedAt;
      await tx.locateEvent.create({
        data: { id: newId(), companyId: actor.companyId, ticketId, kind, utility, hazard, note, photoId, recordedById: actor.id, at: happened, recordedAt },
      });
      return ticketChanged(tx, actor, job, ticketId, 'locate.event', { event: `locates.event.${kind}` });
    });
  }

  close(actor: Actor, jobId: string, ticketId: string): Promise<LocateTicket> {
    return this.database.write(actor, async (tx) => {
      const job = await lockJob(tx, actor, jobId);
      const ticket = await requireTicket(tx, actor, jobId, ticketId, ['open', 'draft', 'closed']);
      // A line that was hit is not closed away.
      if (stopsOf(forVerdict(ticket).events).some(({ kind, until }) => kind === 'damage' && until === null)) throw new DomainError('conflict.state', { stage: 'damage' });
      await tx.locateTicket.update({ where: { companyId_id: { companyId: actor.companyId, id: ticketId } }, data: { status: 'closed', version: { increment: 1 } } });
      return ticketChanged(tx, actor, job, ticketId, 'locate.closed', {});
    });
  }
}

function requirePhoto(tx: Tx, actor: Actor, jobId: string, photoId: string | null): Promise<void> {
  return requirePhotos(tx, actor, jobId, photoId === null ? [] : [photoId]);
}
