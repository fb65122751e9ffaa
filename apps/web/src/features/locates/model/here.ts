import { isStop, type DigVerdict, type LocateTicket, type TicketEventKind } from '@yardfall/contracts';
import { madeAt } from '../../../lib/madeAt.ts';
import type { OutboxEntry, OutboxLocate } from '../../../lib/outbox.ts';
import type { Response } from '../../../lib/tickets.ts';
import { isAnswered } from './answers.ts';

type Event = LocateTicket['events'][number];

/** What is on this phone about the tickets of a job, in the order in which it was recorded. */
export function actsOf(entries: readonly OutboxEntry[], jobId: string): readonly OutboxLocate[] {
  return entries.filter((entry): entry is OutboxLocate => entry.kind === 'locate' && entry.jobId === jobId);
}

/**
 * A ticket with what this phone recorded and the office does not have yet, counted to the safe side: what stops the digging stops it at
 * once, an answer that would clear is silence until the office has it, and what would let the digging go on counts for nothing.
 */
export function ticketHere(ticket: LocateTicket, acts: readonly OutboxLocate[], now: number): LocateTicket {
  const own = acts.filter(({ ticketId }) => ticketId === ticket.id);
  if (own.length === 0) return ticket;
  const answers = own.flatMap(({ id, refused, act }): Response[] => {
    if (act.what !== 'answer' || refused !== null) return [];
    const { utility, answer, code = '', note, photoId = null } = act.body;
    return [{ id, utility, answer: isAnswered({ answer }) ? 'none' : answer, code, note, photoId, at: madeAt(id), by: '' }];
  });
  return { ...ticket, responses: [...ticket.responses, ...answers], events: [...ticket.events, ...own.flatMap((entry) => stopHere(entry, now))] };
}

function stopHere({ id, act }: OutboxLocate, now: number): Event[] {
  if (act.what !== 'event' || !isStop(act.body.kind)) return [];
  // A clock that was set back does not put off a stop.
  const at = new Date(Math.min(Date.parse(act.body.at), now)).toISOString();
  return [{ ...act.body, id, at, recordedAt: at, by: '' }];
}

/** The reasons of a verdict, where the answer to one is on this phone. */
export function saidHere(verdict: DigVerdict, tickets: readonly LocateTicket[], acts: readonly OutboxLocate[]): DigVerdict {
  const waits = (number: unknown, is: (act: OutboxLocate['act']) => boolean) => acts.some(({ ticketId, refused, act }) => refused === null && tickets.some((ticket) => ticket.id === ticketId && ticket.number === number) && is(act));
  const reasons = verdict.reasons.map(({ code, params }) => {
    const { number, utility = '' } = params;
    if (code === 'locates.reason.silent' && waits(number, (act) => act.what === 'answer' && act.body.utility === utility && isAnswered(act.body))) return { code: 'locates.reason.onPhone', params };
    return code === 'locates.reason.marksUnseen' && waits(number, (act) => isEvent(act, 'marksAgree')) ? { code: 'locates.reason.agreeOnPhone', params } : { code, params };
  });
  return { ...verdict, reasons };
}

export function isEvent(act: OutboxLocate['act'], kind: TicketEventKind): boolean {
  return act.what === 'event' && act.body.kind === kind;
}
