import { describe, expect, test } from 'vitest';
import { jobVerdict, ticketVerdict, type LocateAnswerWord, type TicketForVerdict } from './verdict.ts';

const ticket: TicketForVerdict = {
  state: 'SC', number: '2603-001', closed: false, legalStartAt: '2026-03-06T05:00:00.000Z', expiresAt: '2026-03-24T04:00:00.000Z',
  answers: [{ utility: 'Gas', answer: 'marked' }, { utility: 'Water', answer: 'clear' }],
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
    expect(codes({ ...ticket, answers: [...ticket.answers, { utility: 'Phone', answer }] }, during)).toEqual([`locates.reason.${reason}`]);
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
