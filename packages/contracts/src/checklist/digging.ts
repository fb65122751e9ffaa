import { stopsOf } from '../locate/stops.ts';
import { isAnswered, type TicketForVerdict } from '../locate/verdict.ts';

/** A span in which the locate tickets say "may dig"; `until` is not part of it. */
export interface DigSpan {
  readonly from: string;
  readonly until: string;
}

/**
 * The spans of the tickets with every answer that are not closed, without the times in which something stopped the digging under them.
 * A ticket whose rule is unknown gives none. A line that was hit stops every ticket of the job.
 */
export function digSpans(tickets: readonly TicketForVerdict[]): readonly DigSpan[] {
  const stops = tickets.filter(({ closed, draft }) => !closed && !draft).map(({ events }) => stopsOf(events));
  const hits = stops.flat().filter(({ kind }) => kind === 'damage');
  return tickets.flatMap((ticket) => {
    const { legalStartAt: from, expiresAt: until, closed, draft } = ticket;
    if (from === null || until === null || closed || draft || !isAnswered(ticket)) return [];
    return [...stopsOf(ticket.events), ...hits].reduce<readonly DigSpan[]>((spans, stop) => spans.flatMap((span) => without(span, stop)), [{ from, until }]);
  });
}

/** @param at moment [ms] */
export function mayDigAt(spans: readonly DigSpan[], at: number): boolean {
  return spans.some(({ from, until }) => Date.parse(from) <= at && at < Date.parse(until));
}

/** What is left of a span before and after a stop. */
function without(span: DigSpan, stop: { readonly from: string; readonly until: string | null }): readonly DigSpan[] {
  const [begin, end, stopped, again] = [span.from, span.until, stop.from, stop.until].map((text) => (text === null ? Infinity : Date.parse(text))) as [number, number, number, number];
  if (again <= begin || end <= stopped) return [span];
  return [
    ...(begin < stopped ? [{ from: span.from, until: stop.from }] : []),
    ...(again < end && stop.until !== null ? [{ from: stop.until, until: span.until }] : []),
  ];
}
