import { describe, expect, test } from 'vitest';
import { type TicketEvent, type TicketEventKind } from './stops.ts';
import { digSpans, mayDigAt } from '../checklist/digging.ts';
import { jobVerdict, ticketVerdict, type LocateAnswerWord, type TicketForVerdict } from './verdict.ts';

const happened = (kind: TicketEventKind, at: string, recordedAt = at): TicketEvent => ({ kind, at, recordedAt });
const ticket: TicketForVerdict = {
  state: 'SC', number: '2603-001', closed: false, draft: false, legalStartAt: '2026-03-06T05:00:00.000Z', expiresAt: '2026-03-24T04:00:00.000Z',
  answers: [{ utility: 'Gas', answer: 'marked', at: '2026-03-04T12:00:00Z' }, { utility: 'Water', answer: 'clear', at: '2026-03-05T12:00:00Z' }],
  events: [happened('marksAgree', '2026-03-05T13:00:00Z')],
};
const during = '2026-03-10T12:00:00Z';
const codes = (t: TicketForVerdict, now: string) => ticketVerdict(t, now).reasons.map(({ code }) => code);

describe('may dig', () => {
  test('between legal start and expiry with every answer', () => {
    expect(ticketVerdict(ticket, during)).toEqual({ mayDig: true, reasons: [] });
  });
  test('from the first moment of the legal start to the last before expiry', () => {
    expect(codes(ticket, '2026-03-06T04:59:59.999Z')).toEqual(['locates.reason.beforeStart']);
    expect(codes(ticket, '2026-03-06T05:00:00Z')).toEqual([]);
    expect(codes(ticket, '2026-03-24T03:59:59.999Z')).toEqual([]);
    expect(codes(ticket, '2026-03-24T04:00:00Z')).toEqual(['locates.reason.expired']);
  });
  test.each<[LocateAnswerWord, string]>([
    ['none', 'silent'], ['notResponded', 'notResponded'], ['needsMoreTime', 'needsMoreTime'], ['noAccess', 'noAccess'], ['meetOnSite', 'meetOnSite'],
  ])('not while a utility answers %s', (answer, reason) => {
    expect(codes({ ...ticket, answers: [...ticket.answers, { utility: 'Phone', answer, at: '2026-03-05T12:00:00Z' }] }, during)).toEqual([`locates.reason.${reason}`]);
  });
  test('not under an unknown rule, whatever was answered', () => {
    expect(codes({ ...ticket, state: 'GA', legalStartAt: null, expiresAt: null }, during)).toEqual(['locates.reason.unknownRule']);
  });
  test('not under a closed ticket or one without a utility', () => {
    expect(codes({ ...ticket, closed: true }, during)).toEqual(['locates.reason.closed']);
    expect(codes({ ...ticket, answers: [] }, during)).toEqual(['locates.reason.noUtility']);
  });
  test('on a job under any one ticket; without a ticket never', () => {
    const late = { ...ticket, number: 'old', expiresAt: '2026-03-07T05:00:00.000Z' };
    expect(jobVerdict([late, ticket], during).mayDig).toBe(true);
    expect(jobVerdict([late], during).reasons.map(({ code }) => code)).toEqual(['locates.reason.expired']);
    expect(jobVerdict([{ ...ticket, closed: true }], during).reasons.map(({ code }) => code)).toEqual(['locates.reason.noTicket']);
  });
});

describe('what happens to a ticket', () => {
  const with_ = (...events: TicketEvent[]) => ({ ...ticket, events: [...ticket.events, ...events] });
  const [before, then, between, after] = ['2026-03-08T12:00:00Z', '2026-03-09T12:00:00Z', '2026-03-10T12:00:00Z', '2026-03-12T12:00:00Z'];
  const again = '2026-03-11T12:00:00Z';
  const digs = (t: TicketForVerdict) => [before, between, after].map((at) => mayDigAt(digSpans([t]), Date.parse(at)));
  const says = (t: TicketForVerdict) => [before, between, after].map((at) => ticketVerdict(t, at).mayDig);

  test('prepared is not submitted', () => expect(codes({ ...ticket, draft: true }, during)).toEqual(['locates.reason.draft']));
  test('every answer is not enough: somebody sees that the marks agree, after the last of them', () => {
    expect(codes({ ...ticket, events: [] }, during)).toEqual(['locates.reason.marksUnseen']);
    expect(codes({ ...ticket, events: [happened('marksAgree', '2026-03-05T11:00:00Z')] }, during)).toEqual(['locates.reason.marksUnseen']);
  });
  test.each<[TicketEventKind, TicketEventKind | null, string]>([
    ['marksDestroyed', 'remarked', 'marksDestroyed'], ['markError', 'remarked', 'markError'], ['damage', 'damageCleared', 'damage'], ['areaEnlarged', null, 'areaEnlarged'],
  ])('%s stops the digging until %s', (stop, end, reason) => {
    const stopped = with_(happened(stop, then));
    expect(digs(stopped)).toEqual([true, false, false]);
    expect(says(stopped)).toEqual(digs(stopped));
    expect(codes(stopped, between)).toEqual([`locates.reason.${reason}`]);
    // Asking is not being answered.
    expect(digs(with_(happened(stop, then), happened('remarkRequested', again)))).toEqual([true, false, false]);
    if (end === null) return;
    const goesOn = with_(happened(stop, then), happened(end, again));
    expect(digs(goesOn)).toEqual([true, false, true]);
    expect(says(goesOn)).toEqual(digs(goesOn));
  });
  test('marks that went again after they were there again stop it again', () => {
    const twice = with_(happened('marksDestroyed', '2026-03-07T12:00:00Z'), happened('remarked', '2026-03-07T13:00:00Z'), happened('marksDestroyed', then), happened('remarked', again));
    expect(digs(twice)).toEqual([true, false, true]);
    expect(digSpans([twice])).toHaveLength(3);
  });
  test('a stop before the legal start and one after the end leave no dig outside of the clock', () => {
    const early = with_(happened('marksDestroyed', '2026-03-01T12:00:00Z'), happened('remarked', then));
    expect(digSpans([early])).toEqual([{ from: then, until: ticket.expiresAt }]);
    expect(digSpans([with_(happened('marksDestroyed', '2026-04-01T12:00:00Z'))])).toEqual([{ from: ticket.legalStartAt, until: ticket.expiresAt }]);
  });
  test('another ticket covers marks that went, but no line that was hit', () => {
    const other = { ...ticket, number: 'other' };
    expect(jobVerdict([with_(happened('marksDestroyed', then)), other], between).mayDig).toBe(true);
    const hit = with_(happened('damage', then));
    expect(jobVerdict([hit, other], between).reasons.map(({ code }) => code)).toEqual(['locates.reason.damage']);
    expect([before, between].map((at) => mayDigAt(digSpans([hit, other]), Date.parse(at)))).toEqual([true, false]);
  });
});
