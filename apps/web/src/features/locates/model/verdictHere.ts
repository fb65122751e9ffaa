import { type DigVerdict, jobVerdict, type LocateTicket, ticketVerdict } from '@yardfall/contracts';
import { asJudged } from '../../../lib/tickets.ts';

/** Judged again at this minute by the rule that the office judges by: a ticket runs out also where nobody can be asked. */
export function verdictHere(ticket: LocateTicket, now: number): DigVerdict {
  return stricter(ticket.verdict, ticketVerdict(asJudged(ticket), new Date(now).toISOString()));
}

export function jobVerdictHere(tickets: readonly LocateTicket[], told: DigVerdict, now: number): DigVerdict {
  return stricter(told, jobVerdict(tickets.map(asJudged), new Date(now).toISOString()));
}

/** Whether this page would let dig what the office, when it was last asked, did not. */
export function isLooser(tickets: readonly LocateTicket[], told: DigVerdict, now: number): boolean {
  return !told.mayDig && jobVerdict(tickets.map(asJudged), new Date(now).toISOString()).mayDig;
}

/** A phone's own look may stop the digging; only the office lets it begin. */
function stricter(told: DigVerdict, here: DigVerdict): DigVerdict {
  if (!here.mayDig) return here;
  return told.mayDig ? here : { mayDig: false, reasons: [...told.reasons, { code: 'locates.reason.askOffice', params: {} }] };
}

/**
 * The tickets with a line that was hit and of which the office has not told yet: it stops the newest that is open, as it does there.
 * @param hits when a line was hit, of reports that nobody has answered
 */
export function withHits(tickets: readonly LocateTicket[], hits: readonly string[]): readonly LocateTicket[] {
  const newest = tickets.find(({ closed, draft }) => !closed && !draft);
  const known = tickets.flatMap(({ events }) => events).filter(({ kind }) => kind === 'damage' || kind === 'damageCleared');
  const news = hits.filter((hit) => !known.some(({ recordedAt }) => Date.parse(recordedAt) >= Date.parse(hit)));
  const [at] = news.toSorted();
  if (newest === undefined || at === undefined) return tickets;
  const event = { id: 'hit', kind: 'damage', utility: '', hazard: true, note: '', photoId: null, at, recordedAt: at, by: '' } as const;
  return tickets.map((ticket) => (ticket === newest ? { ...ticket, events: [...ticket.events, event] } : ticket));
}
