import { isStop, type LocateTicket, ticketEventKinds, type TicketEventKind } from '@yardfall/contracts';
import { describe, expect, test } from 'vitest';
import type { OutboxLocate, TicketAct } from '../../../lib/outbox.ts';
import { holdsDigging, latestAnswers } from '../../../lib/tickets.ts';
import { actsOf, saidHere, ticketHere } from './here.ts';
import { jobVerdictHere, verdictHere } from './verdictHere.ts';

const answer = { id: 'r', code: '', note: '', photoId: null, by: 'Rosa' };
const ticket: LocateTicket = {
  id: 't', jobId: 'j', number: 'A-1', state: 'VA', area: 'Back yard', method: '', depth: null, draft: false, closed: false, version: 1, rule: null, given: [],
  requestedAt: '2026-03-02T14:00:00.000Z', legalStartAt: '2026-03-06T05:00:00.000Z', renewByAt: '2026-03-20T04:00:00.000Z', expiresAt: '2026-03-24T04:00:00.000Z', createdAt: '2026-03-02T14:00:00.000Z',
  verdict: { mayDig: true, reasons: [] },
  responses: [{ ...answer, utility: 'Gas', answer: 'marked', at: '2026-03-04T12:00:00.000Z' }, { ...answer, utility: 'Power', answer: 'clear', at: '2026-03-04T12:00:00.000Z' }],
  events: [{ id: 'e', kind: 'marksAgree', utility: '', hazard: false, note: '', photoId: null, at: '2026-03-05T13:00:00.000Z', recordedAt: '2026-03-05T13:00:00.000Z', by: 'Rosa' }],
};
const now = Date.parse('2026-03-10T12:00:00Z');
let count = 0;
const kept = (act: TicketAct, ticketId = 't', refused: string | null = null): OutboxLocate => {
  count += 1;
  return { at: count, id: `019cd773-1c00-7000-8000-${String(count).padStart(12, '0')}`, memberId: 'm', jobId: 'j', refused, kind: 'locate', ticketId, act };
};
const happened = (kind: TicketEventKind, at = '2026-03-10T11:00:00.000Z'): TicketAct => ({ what: 'event', body: { kind, utility: '', hazard: false, note: '', photoId: null, at } });
const said = (utility: string, word: 'clear' | 'marked' | 'noAccess' | 'none'): TicketAct => ({ what: 'answer', body: { utility, answer: word, note: '', photoId: null } });
const verdict = (told: LocateTicket, ...acts: readonly OutboxLocate[]) => saidHere(verdictHere(ticketHere(told, acts, now), now), [told], acts);
const codes = (told: LocateTicket, ...acts: readonly OutboxLocate[]) => verdict(told, ...acts).reasons.map(({ code }) => code);

describe('what this phone recorded and the office does not have yet', () => {
  test.each(ticketEventKinds)('%s makes nothing looser, and stops the digging at once when it is a stop', (kind) => {
    const { mayDig, reasons } = verdict(ticket, kept(happened(kind)));
    expect(mayDig).toBe(!isStop(kind));
    expect(reasons.map(({ code }) => code)).toEqual(isStop(kind) ? [`locates.reason.${kind}`] : []);
    const stopped = { ...ticket, verdict: { mayDig: false, reasons: [] }, events: [...ticket.events, { ...answer, kind: 'damage' as const, utility: '', hazard: false, at: '2026-03-09T11:00:00.000Z', recordedAt: '2026-03-09T11:00:00.000Z' }] };
    expect(verdict(stopped, kept(happened(kind))).mayDig).toBe(false);
  });
  test('a stop of a clock that goes ahead counts now, and one that the office did not take counts too', () => {
    expect(codes(ticket, kept(happened('markError', '2026-03-10T12:00:40.000Z')))).toEqual(['locates.reason.markError']);
    expect(codes(ticket, kept(happened('damage'), 't', 'conflict.state'))).toEqual(['locates.reason.damage']);
  });
  test('a line that was hit stops every ticket of the job', () => {
    const other = { ...ticket, id: 'u', number: 'A-2' };
    const hit = [kept(happened('damage'))];
    expect(jobVerdictHere([ticket, other].map((one) => ticketHere(one, hit, now)), { mayDig: true, reasons: [] }, now).mayDig).toBe(false);
    const gone = [kept(happened('marksDestroyed'))];
    expect(jobVerdictHere([ticket, other].map((one) => ticketHere(one, gone, now)), { mayDig: true, reasons: [] }, now).mayDig).toBe(true);
  });
  test('an answer that clears is silence until the office has it, and the reason says so; one that does not counts at once', () => {
    const silent = { ...ticket, verdict: { mayDig: false, reasons: [] }, responses: [...ticket.responses, { ...answer, utility: 'Gas', answer: 'none' as const, at: '2026-03-04T13:00:00.000Z' }] };
    expect(verdict(silent, kept(said('Gas', 'clear'))).reasons).toEqual([{ code: 'locates.reason.onPhone', params: { number: 'A-1', utility: 'Gas' } }]);
    expect(codes(ticket, kept(said('Gas', 'marked')))).toEqual(['locates.reason.onPhone']);
    expect(codes(ticket, kept(said('Gas', 'noAccess')))).toEqual(['locates.reason.noAccess']);
    expect(codes(ticket, kept(said('Gas', 'noAccess'), 't', 'conflict.state'))).toEqual([]);
    expect(latestAnswers(ticketHere(ticket, [kept(said('Gas', 'noAccess'))], now)).map((one) => one.answer)).toEqual(['noAccess', 'clear']);
  });
  test('a utility that was added here is silent at once, and stays so when it answers here', () => {
    expect(verdict(ticket, kept(said('Fiber', 'none'))).reasons).toEqual([{ code: 'locates.reason.silent', params: { number: 'A-1', utility: 'Fiber' } }]);
    expect(codes(ticket, kept(said('Fiber', 'none')), kept(said('Fiber', 'clear')))).toEqual(['locates.reason.onPhone']);
    expect(latestAnswers(ticketHere(ticket, [kept(said('Fiber', 'none'))], now)).map(({ utility }) => utility)).toEqual(['Gas', 'Power', 'Fiber']);
  });
  test('marks that agree are not asked for again while that is on this phone', () => {
    const unseen = { ...ticket, verdict: { mayDig: false, reasons: [{ code: 'locates.reason.marksUnseen', params: { number: 'A-1' } }] }, events: [] };
    expect(codes(unseen)).toEqual(['locates.reason.marksUnseen']);
    expect(codes(unseen, kept(happened('marksAgree')))).toEqual(['locates.reason.agreeOnPhone']);
  });
  test('of another ticket or job changes nothing here', () => {
    expect(ticketHere(ticket, [kept(happened('damage'), 'u')], now)).toBe(ticket);
    expect(actsOf([kept(happened('damage'))], 'k')).toEqual([]);
  });
});

test('the steps of the checklist are held by every stop and every answer on this phone, and by nothing else', () => {
  expect(ticketEventKinds.filter((kind) => holdsDigging(kept(happened(kind)), 'j'))).toEqual(ticketEventKinds.filter(isStop));
  expect([holdsDigging(kept(said('Gas', 'clear')), 'j'), holdsDigging(kept(said('Gas', 'clear'), 't', 'conflict.state'), 'j')]).toEqual([true, false]);
  expect([holdsDigging(kept(happened('damage'), 't', 'conflict.state'), 'j'), holdsDigging(kept(happened('damage')), 'k')]).toEqual([true, false]);
});
