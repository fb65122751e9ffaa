import { isStop, type LocateTicket, type TicketForVerdict } from '@yardfall/contracts';
import type { OutboxEntry } from './outbox.ts';

export type Response = LocateTicket['responses'][number];

/** The latest answer of each utility, in the order in which they stand on the ticket. */
export function latestAnswers({ responses }: Pick<LocateTicket, 'responses'>): readonly Response[] {
  return [...new Map(responses.map((response) => [response.utility, response])).values()];
}

/** What the center wrote, as it was entered, the latest last; a phone may hold a ticket from before that was told. */
export function givenOf({ given = [] }: Partial<Pick<LocateTicket, 'given'>>): LocateTicket['given'] {
  return given;
}

/** A ticket as its verdict is judged, on the phone as in the office. */
export function asJudged(ticket: LocateTicket): TicketForVerdict {
  const { state, number, closed, draft, legalStartAt, expiresAt, events } = ticket;
  return { state, number, closed, draft, legalStartAt, expiresAt, events, answers: latestAnswers(ticket) };
}

/**
 * Whether something that waits on this phone keeps a job from being dug until the office has judged it: what stops the digging, also
 * when the office did not take it, and every answer, because the marks are looked at again after it.
 */
export function holdsDigging(entry: OutboxEntry, jobId: string): boolean {
  if (entry.kind !== 'locate' || entry.jobId !== jobId) return false;
  return entry.act.what === 'event' ? isStop(entry.act.body.kind) : entry.refused === null;
}
