import type { DigVerdict } from '../locates.ts';

export type LocateAnswerWord = 'none' | 'marked' | 'clear' | 'needsMoreTime' | 'noAccess' | 'meetOnSite' | 'notResponded';

export interface TicketForVerdict {
  readonly state: string;
  readonly number: string;
  readonly closed: boolean;
  /** Null when no rule set is known for the state. */
  readonly legalStartAt: string | null;
  readonly expiresAt: string | null;
  /** The latest answer of each utility. */
  readonly answers: readonly { readonly utility: string; readonly answer: LocateAnswerWord }[];
}

type Reason = DigVerdict['reasons'][number];

/** May dig under this ticket now, or every reason why not. Silence is never clearance. */
export function ticketVerdict(ticket: TicketForVerdict, now: string): DigVerdict {
  const reasons = ticket.closed ? [{ code: 'locates.reason.closed', params: { number: ticket.number } }] : [...clockReasons(ticket, now), ...answerReasons(ticket)];
  return { mayDig: reasons.length === 0, reasons };
}

/** May dig on the job: under at least one ticket. Otherwise the reasons of the tickets that are not closed. */
export function jobVerdict(tickets: readonly TicketForVerdict[], now: string): DigVerdict {
  const verdicts = tickets.map((ticket) => ({ ticket, verdict: ticketVerdict(ticket, now) }));
  if (verdicts.some(({ verdict }) => verdict.mayDig)) return { mayDig: true, reasons: [] };
  const open = verdicts.filter(({ ticket }) => !ticket.closed);
  if (open.length === 0) return { mayDig: false, reasons: [{ code: 'locates.reason.noTicket', params: {} }] };
  return { mayDig: false, reasons: open.flatMap(({ verdict }) => verdict.reasons) };
}

function clockReasons({ state, number, legalStartAt, expiresAt }: TicketForVerdict, now: string): readonly Reason[] {
  if (legalStartAt === null || expiresAt === null) return [{ code: 'locates.reason.unknownRule', params: { state, number } }];
  const moment = Date.parse(now);
  if (moment < Date.parse(legalStartAt)) return [{ code: 'locates.reason.beforeStart', params: { number, at: legalStartAt } }];
  if (moment >= Date.parse(expiresAt)) return [{ code: 'locates.reason.expired', params: { number, at: expiresAt } }];
  return [];
}

function answerReasons({ number, answers }: TicketForVerdict): readonly Reason[] {
  if (answers.length === 0) return [{ code: 'locates.reason.noUtility', params: { number } }];
  return answers
    .filter(({ answer }) => answer !== 'marked' && answer !== 'clear')
    .map(({ utility, answer }) => ({ code: `locates.reason.${answer === 'none' ? 'silent' : answer}`, params: { number, utility } }));
}
