import type { TicketForVerdict } from '../locate/verdict.ts';
import { ticketVerdict } from '../locate/verdict.ts';

/** A span in which the locate tickets say "may dig"; `until` is not part of it. */
export interface DigSpan {
  readonly from: string;
  readonly until: string;
}

/** The spans of the tickets with every answer that are not closed. A ticket whose rule is unknown gives none. */
export function digSpans(tickets: readonly TicketForVerdict[]): readonly DigSpan[] {
  return tickets.flatMap((ticket) => {
    const { legalStartAt: from, expiresAt: until } = ticket;
    return from !== null && until !== null && ticketVerdict(ticket, from).mayDig ? [{ from, until }] : [];
  });
}

/** @param at moment [ms] */
export function mayDigAt(spans: readonly DigSpan[], at: number): boolean {
  return spans.some(({ from, until }) => Date.parse(from) <= at && at < Date.parse(until));
}
