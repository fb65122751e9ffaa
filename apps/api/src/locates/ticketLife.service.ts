import { Injectable } from '@nestjs/common';
import { type BodyOf, isStop, type LocateTicket, type locates as api, stopsOf } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { ChecklistBuilder } from '../common/checklistBuilder.ts';
import { Database, type Tx } from '../common/database.ts';
import { DomainError } from '../common/errors.ts';
import { newId } from '../common/ids.ts';
import { requirePhotos } from '../jobs/answers.ts';
import { lockJob } from '../jobs/jobs.access.ts';
import { forVerdict } from './locates.presenter.ts';
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
