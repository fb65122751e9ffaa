import { type LocateAnswerWord, locateRules, type LocateTicket, type TicketForVerdict, ticketVerdict } from '@yardfall/contracts';
import type { Prisma } from '../generated/prisma/client.ts';

export const ticketParts = { locateResponses_ticket: { include: { recordedBy: { select: { name: true } } }, orderBy: [{ at: 'asc' }, { id: 'asc' }] } } satisfies Prisma.LocateTicketInclude;
export type TicketRecord = Prisma.LocateTicketGetPayload<{ include: typeof ticketParts }>;

/** The latest answer of each utility counts. */
export function forVerdict(ticket: TicketRecord): TicketForVerdict {
  const latest = new Map(ticket.locateResponses_ticket.map(({ utility, answer }) => [utility, answer as LocateAnswerWord]));
  return {
    state: ticket.state, number: ticket.number, closed: ticket.status === 'closed', legalStartAt: ticket.legalStartAt?.toISOString() ?? null, expiresAt: ticket.expiresAt?.toISOString() ?? null,
    answers: [...latest].map(([utility, answer]) => ({ utility, answer })),
  };
}

export function presentTicket(ticket: TicketRecord, now: Date): LocateTicket {
  const rule = locateRules.find(({ version }) => version === ticket.ruleVersion) ?? null;
  const { legalStartAt, expiresAt } = forVerdict(ticket);
  return {
    id: ticket.id, jobId: ticket.jobId, number: ticket.number, state: ticket.state, area: ticket.area, requestedAt: ticket.requestedAt.toISOString(), legalStartAt, expiresAt,
    renewByAt: ticket.renewByAt?.toISOString() ?? null, rule: rule === null ? null : { version: rule.version, source: rule.source, asOf: rule.asOf, undated: rule.undated },
    responses: ticket.locateResponses_ticket.map(({ id, utility, answer, note, at, recordedBy }) => ({
      id, utility, answer: answer as LocateAnswerWord, note, at: at.toISOString(), by: recordedBy.name,
    })),
    verdict: ticketVerdict(forVerdict(ticket), now.toISOString()), closed: ticket.status === 'closed', version: ticket.version, createdAt: ticket.createdAt.toISOString(),
  };
}
