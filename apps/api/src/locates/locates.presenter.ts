import { enteredVersion, type LocateAnswerWord, type LocateTicket, type TicketEventKind, type TicketForVerdict, ticketVerdict } from '@yardfall/contracts';
import type { Prisma } from '../generated/prisma/client.ts';
import { givenWithNames } from './given.ts';
import { allRules, type SignedRule } from './rules.ts';

export const ticketParts = {
  ...givenWithNames,
  locateResponses_ticket: { include: { recordedBy: { select: { name: true } } }, orderBy: [{ at: 'asc' }, { id: 'asc' }] },
  locateEvents_ticket: { include: { recordedBy: { select: { name: true } } }, orderBy: [{ at: 'asc' }, { id: 'asc' }] },
} satisfies Prisma.LocateTicketInclude;
export type TicketRecord = Prisma.LocateTicketGetPayload<{ include: typeof ticketParts }>;

/** The latest answer of each utility counts. */
export function forVerdict(ticket: TicketRecord): TicketForVerdict {
  const latest = new Map(ticket.locateResponses_ticket.map((response) => [response.utility, response]));
  return {
    state: ticket.state, number: ticket.number, closed: ticket.status === 'closed', draft: ticket.status === 'draft',
    legalStartAt: ticket.legalStartAt?.toISOString() ?? null, expiresAt: ticket.expiresAt?.toISOString() ?? null,
    answers: [...latest.values()].map(({ utility, answer, at }) => ({ utility, answer: answer as LocateAnswerWord, at: at.toISOString() })),
    events: ticket.locateEvents_ticket.map(({ kind, at, recordedAt }) => ({ kind: kind as TicketEventKind, at: at.toISOString(), recordedAt: recordedAt.toISOString() })),
  };
}

export function presentTicket(ticket: TicketRecord, signed: readonly SignedRule[], now: Date): LocateTicket {
  const rule = allRules(signed).find(({ version }) => version === ticket.ruleVersion) ?? null;
  const signature = signed.find(({ id }) => enteredVersion(id) === ticket.ruleVersion);
  const seen = forVerdict(ticket);
  return {
    id: ticket.id, jobId: ticket.jobId, number: ticket.number, state: ticket.state, area: ticket.area, method: ticket.method, depth: ticket.depth,
    requestedAt: ticket.requestedAt?.toISOString() ?? null, legalStartAt: seen.legalStartAt, expiresAt: seen.expiresAt, renewByAt: ticket.renewByAt?.toISOString() ?? null,
    rule: rule === null ? null : { version: rule.version, source: rule.source, asOf: rule.asOf, undated: rule.undated, signedBy: signature?.signedName ?? null, tolerance: rule.tolerance, toleranceFrom: rule.toleranceFrom },
    responses: ticket.locateResponses_ticket.map(({ id, utility, answer, code, note, photoId, at, recordedBy }) => ({
      id, utility, answer: answer as LocateAnswerWord, code, note, photoId, at: at.toISOString(), by: recordedBy.name,
    })),
    events: ticket.locateEvents_ticket.map(({ id, kind, utility, hazard, note, photoId, at, recordedAt, recordedBy }) => ({
      id, kind: kind as TicketEventKind, utility, hazard, note, photoId, at: at.toISOString(), recordedAt: recordedAt.toISOString(), by: recordedBy.name,
    })),
    given: ticket.locateGivens_ticket.map(({ id, startAt, expiresAt, note, at, recordedBy }) => ({
      id, startAt: startAt?.toISOString() ?? null, expiresAt: expiresAt?.toISOString() ?? null, note, at: at.toISOString(), by: recordedBy.name,
    })),
    verdict: ticketVerdict(seen, now.toISOString()), closed: seen.closed, draft: seen.draft, version: ticket.version, createdAt: ticket.createdAt.toISOString(),
  };
}
