import { type DigVerdict, jobVerdict, type LocateTicket } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import type { Tx } from '../common/database.ts';
import { DomainError, found } from '../common/errors.ts';
import { emit } from '../common/events.ts';
import { clearHolds, setHold } from '../jobs/holds.ts';
import { forVerdict, presentTicket, ticketParts, type TicketRecord } from './locates.presenter.ts';
import { signedRules } from './rules.ts';

export function ticketsOf(tx: Tx, actor: Actor, jobId: string): Promise<TicketRecord[]> {
  return tx.locateTicket.findMany({ where: { companyId: actor.companyId, jobId }, include: ticketParts, orderBy: { id: 'desc' } });
}

export async function requireTicket(tx: Tx, actor: Actor, jobId: string, id: string, allowed: readonly string[]): Promise<TicketRecord> {
  const ticket = found(await tx.locateTicket.findFirst({ where: { companyId: actor.companyId, jobId, id }, include: ticketParts }));
  if (!allowed.includes(ticket.status)) throw new DomainError('conflict.state', { stage: ticket.status });
  return ticket;
}

export async function requireNewNumber(tx: Tx, actor: Actor, jobId: string, number: string): Promise<void> {
  if (await tx.locateTicket.findFirst({ where: { companyId: actor.companyId, jobId, number } })) throw new DomainError('conflict.duplicate');
}

/** The same ending of every change: the hold for the marks, the trail, the live notice and the ticket as it stands. */
export async function ticketChanged(
  tx: Tx, actor: Actor, job: { readonly id: string; readonly stage: string }, ticketId: string, action: string, params: Parameters<typeof audit>[4],
): Promise<LocateTicket> {
  await holdForMarks(tx, actor, job);
  await audit(tx, actor, action, { jobId: job.id, id: ticketId }, params);
  await emit(tx, actor, 'locates', job.id, ticketId);
  return presentTicket(await requireTicket(tx, actor, job.id, ticketId, ['draft', 'open', 'closed']), await signedRules(tx, actor), actor.request.at);
}

/** For hold point HP-1: may the job be dug at this moment? */
function digVerdict(tickets: readonly TicketRecord[], at: Date): DigVerdict {
  return jobVerdict(tickets.map(forVerdict), at.toISOString());
}

const waiting = ['accepted', 'released', 'installing'];
const reasons = [
  'unknownRule', 'beforeStart', 'expired', 'noUtility', 'silent', 'notResponded', 'needsMoreTime', 'noAccess', 'meetOnSite', 'draft', 'marksUnseen', 'marksDestroyed', 'markError', 'damage', 'areaEnlarged',
];
/** A hold for the marks carries the first reason of the verdict, so that the board says what is waited for. */
const holdCodes = ['jobs.hold.locate', 'jobs.hold.renew', ...reasons.map((word) => `locates.reason.${word}`)];
/** How long before the last day to renew the office is reminded [ms] (ours). */
export const renewLead = 2 * 86_400_000;

/** Writes or lifts the hold "marks", in the transaction that changed a ticket or noticed that a clock ran out. */
export async function holdForMarks(tx: Tx, actor: Actor, job: { readonly id: string; readonly stage: string }): Promise<void> {
  const { at } = actor.request;
  const tickets = await ticketsOf(tx, actor, job.id);
  await clearHolds(tx, actor, job.id, holdCodes);
  if (!waiting.includes(job.stage)) return;
  const [reason] = digVerdict(tickets, at).reasons;
  if (reason === undefined) return remind(tx, actor, job.id, tickets, at);
  const none = reason.code === 'locates.reason.noTicket';
  await setHold(tx, actor, job.id, { waitsFor: 'marks', code: none ? 'jobs.hold.locate' : reason.code, params: none ? {} : reason.params });
}

/** The ticket that lives longest must be renewed soon. */
async function remind(tx: Tx, actor: Actor, jobId: string, tickets: readonly TicketRecord[], at: Date): Promise<void> {
  const [longest] = tickets.filter(({ status, expiresAt }) => status === 'open' && expiresAt !== null).toSorted((a, b) => Number(b.expiresAt) - Number(a.expiresAt));
  if (longest?.renewByAt == null || Number(longest.renewByAt) - renewLead > Number(at)) return;
  await setHold(tx, actor, jobId, { waitsFor: 'us', code: 'jobs.hold.renew', params: { number: longest.number, at: longest.renewByAt.toISOString() } });
}
