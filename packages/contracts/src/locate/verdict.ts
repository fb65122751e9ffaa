import type { DigVerdict } from '../locates.ts';
import { type StopKind, stopsOf, type TicketEvent } from './stops.ts';

export type LocateAnswerWord = 'none' | 'marked' | 'clear' | 'needsMoreTime' | 'noAccess' | 'meetOnSite' | 'notResponded';

export interface TicketForVerdict {
  readonly state: string;
  readonly number: string;
  readonly closed: boolean;
  /** Not submitted to the center yet. */
  readonly draft: boolean;
  /** Null when no rule set is known for the state. */
  readonly legalStartAt: string | null;
  readonly expiresAt: string | null;
  /** The latest answer of each utility. */
  readonly answers: readonly { readonly utility: string; readonly answer: LocateAnswerWord; readonly at: string }[];
  /** What happened to the ticket and its marks, in the order in which it happened. */
  readonly events: readonly TicketEvent[];
}

type Reason = DigVerdict['reasons'][number];

/** May dig under this ticket now, or every reason why not. Silence is never clearance. */
export function ticketVerdict(ticket: TicketForVerdict, now: string): DigVerdict {
  const { number } = ticket;
  if (ticket.closed) return refuse([{ code: 'locates.reason.closed', params: { number } }]);
  if (ticket.draft) return refuse([{ code: 'locates.reason.draft', params: {} }]);
  return refuse([...clockReasons(ticket, now), ...answerReasons(ticket), ...stopReasons(ticket, now)]);
}

/** May dig on the job: under at least one ticket. Otherwise the reasons of the tickets that are not closed. */
export function jobVerdict(tickets: readonly TicketForVerdict[], now: string): DigVerdict {
  const verdicts = tickets.map((ticket) => ({ ticket, verdict: ticketVerdict(ticket, now) }));
  // Whoever hit a line stops, under whichever ticket; another ticket covers no broken line.
  const struck = verdicts.flatMap(({ verdict }) => verdict.reasons).filter(({ code }) => code === 'locates.reason.damage');
  if (struck.length > 0) return refuse(struck);
  if (verdicts.some(({ verdict }) => verdict.mayDig)) return { mayDig: true, reasons: [] };
  const open = verdicts.filter(({ ticket }) => !ticket.closed);
  if (open.length === 0) return refuse([{ code: 'locates.reason.noTicket', params: {} }]);
  return refuse(open.flatMap(({ verdict }) => verdict.reasons));
}

/** Every utility has answered, and somebody has seen since that the marks on the ground agree with what they say. */
export function isAnswered(ticket: TicketForVerdict): boolean {
  return answerReasons(ticket).length === 0;
}

function refuse(reasons: readonly Reason[]): DigVerdict {
  return { mayDig: reasons.length === 0, reasons: [...reasons] };
}

function clockReasons({ state, number, legalStartAt, expiresAt }: TicketForVerdict, now: string): readonly Reason[] {
  if (legalStartAt === null || expiresAt === null) return [{ code: 'locates.reason.unknownRule', params: { state, number } }];
  const moment = Date.parse(now);
  if (moment < Date.parse(legalStartAt)) return [{ code: 'locates.reason.beforeStart', params: { number, at: legalStartAt } }];
  if (moment >= Date.parse(expiresAt)) return [{ code: 'locates.reason.expired', params: { number, at: expiresAt } }];
  return [];
}

function answerReasons({ number, answers, events }: TicketForVerdict): readonly Reason[] {
  if (answers.length === 0) return [{ code: 'locates.reason.noUtility', params: { number } }];
  const missing = answers
    .filter(({ answer }) => answer !== 'marked' && answer !== 'clear')
    .map(({ utility, answer }) => ({ code: `locates.reason.${answer === 'none' ? 'silent' : answer}`, params: { number, utility } }));
  if (missing.length > 0) return missing;
  // An answer that came or changed later is looked at again.
  const last = Math.max(...answers.map(({ at }) => Date.parse(at)));
  return events.some(({ kind, recordedAt }) => kind === 'marksAgree' && Date.parse(recordedAt) >= last) ? [] : [{ code: 'locates.reason.marksUnseen', params: { number } }];
}

const reasonOf: Readonly<Record<StopKind, string>> = { marksDestroyed: 'marksDestroyed', markError: 'markError', damage: 'damage', areaEnlarged: 'areaEnlarged' };

function stopReasons(ticket: TicketForVerdict, now: string): readonly Reason[] {
  const moment = Date.parse(now);
  return stopsOf(ticket.events)
    .filter(({ from, until }) => Date.parse(from) <= moment && (until === null || moment < Date.parse(until)))
    .map(({ kind, from }) => ({ code: `locates.reason.${reasonOf[kind]}`, params: { number: ticket.number, at: from } }));
}
