import { type DigVerdict, jobVerdict } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import type { Tx } from '../common/database.ts';
import { clearHolds, setHold } from '../jobs/holds.ts';
import { forVerdict, ticketParts, type TicketRecord } from './locates.presenter.ts';

export function ticketsOf(tx: Tx, actor: Actor, jobId: string): Promise<TicketRecord[]> {
  return tx.locateTicket.findMany({ where: { companyId: actor.companyId, jobId }, include: ticketParts, orderBy: { id: 'desc' } });
}

/** For hold point HP-1: may the job be dug at this moment? */
export async function digVerdict(tx: Tx, actor: Actor, jobId: string, at: Date): Promise<DigVerdict> {
  return jobVerdict((await ticketsOf(tx, actor, jobId)).map(forVerdict), at.toISOString());
}

const waiting = ['accepted', 'released', 'installing'];
/** A hold for the marks carries the first reason of the verdict, so that the board says what is waited for. */
const holdCodes = ['jobs.hold.locate', ...['unknownRule', 'beforeStart', 'expired', 'noUtility', 'silent', 'notResponded', 'needsMoreTime', 'noAccess', 'meetOnSite'].map((word) => `locates.reason.${word}`)];

/** Writes or lifts the hold "marks", in the transaction that changed a ticket or noticed that a clock ran out. */
export async function holdForMarks(tx: Tx, actor: Actor, job: { readonly id: string; readonly stage: string }): Promise<void> {
  const verdict = await digVerdict(tx, actor, job.id, actor.request.at);
  const [reason] = verdict.reasons;
  await clearHolds(tx, actor, job.id, holdCodes);
  if (reason === undefined || !waiting.includes(job.stage)) return;
  const none = reason.code === 'locates.reason.noTicket';
  await setHold(tx, actor, job.id, { waitsFor: 'marks', code: none ? 'jobs.hold.locate' : reason.code, params: none ? {} : reason.params });
}
