import type { DigVerdict, LocateTicket } from '@yardfall/contracts';
import { describe, expect, test } from 'vitest';
import { isLooser, jobVerdictHere, verdictHere, withHits } from './verdictHere.ts';

const may: DigVerdict = { mayDig: true, reasons: [] };
const tooEarly: DigVerdict = { mayDig: false, reasons: [{ code: 'locates.reason.beforeStart', params: { number: 'A-1', at: '2026-03-06T05:00:00.000Z' } }] };
const answer = { id: 'r', code: '', note: '', photoId: null, by: 'Rosa' };
const ticket: LocateTicket = {
  id: 't', jobId: 'j', number: 'A-1', state: 'VA', area: 'Back yard', method: '', depth: null, draft: false, closed: false, version: 1, rule: null, given: [],
  requestedAt: '2026-03-02T14:00:00.000Z', legalStartAt: '2026-03-06T05:00:00.000Z', renewByAt: '2026-03-20T04:00:00.000Z', expiresAt: '2026-03-24T04:00:00.000Z', createdAt: '2026-03-02T14:00:00.000Z', verdict: may,
  responses: [{ ...answer, utility: 'Gas', answer: 'none', at: '2026-03-02T14:00:00.000Z' }, { ...answer, utility: 'Gas', answer: 'marked', at: '2026-03-04T12:00:00.000Z' }],
  events: [{ id: 'e', kind: 'marksAgree', utility: '', hazard: false, note: '', photoId: null, at: '2026-03-05T13:00:00.000Z', recordedAt: '2026-03-05T13:00:00.000Z', by: 'Rosa' }],
};
const at = (iso: string) => Date.parse(iso);
const codes = ({ reasons }: DigVerdict) => reasons.map(({ code }) => code);

describe('may dig, judged again where the office cannot be asked', () => {
  test('a ticket that the office let dig under runs out on the phone to the moment', () => {
    expect(verdictHere(ticket, at('2026-03-24T03:59:59.999Z'))).toEqual(may);
    expect(codes(verdictHere(ticket, at('2026-03-24T04:00:00Z')))).toEqual(['locates.reason.expired']);
    expect(codes(jobVerdictHere([ticket], may, at('2026-03-24T04:00:00Z')))).toEqual(['locates.reason.expired']);
  });
  test('another ticket that is still good lets dig', () => {
    const old = { ...ticket, id: 'old', number: 'A-0', expiresAt: '2026-03-07T05:00:00.000Z' };
    expect(jobVerdictHere([old, ticket], may, at('2026-03-10T12:00:00Z'))).toEqual(may);
  });
  test('a clock that has passed since the office was asked does not let dig: the office is asked first', () => {
    const waits = { ...ticket, verdict: tooEarly };
    const later = at('2026-03-10T12:00:00Z');
    expect(codes(verdictHere(waits, later))).toEqual(['locates.reason.beforeStart', 'locates.reason.askOffice']);
    expect(jobVerdictHere([waits], tooEarly, later).mayDig).toBe(false);
    expect(isLooser([waits], tooEarly, later)).toBe(true);
    expect(isLooser([ticket], may, later)).toBe(false);
  });
  test('a stop that the phone knows of stops it, whatever the office last said', () => {
    const hit = { ...ticket, events: [...ticket.events, { ...ticket.events[0], kind: 'damage' as const, at: '2026-03-10T11:00:00.000Z', recordedAt: '2026-03-10T11:00:00.000Z' } as LocateTicket['events'][number]] };
    expect(codes(jobVerdictHere([hit, { ...ticket, number: 'A-2' }], may, at('2026-03-10T12:00:00Z')))).toEqual(['locates.reason.damage']);
  });
  test('a line that was hit stops every ticket before the office knows; once it has told, its word counts', () => {
    const now = at('2026-03-10T12:00:00Z');
    const hit = '2026-03-10T11:00:00.000Z';
    const two = [{ ...ticket, id: 'prepared', draft: true }, ticket, { ...ticket, id: 'older', number: 'A-0' }];
    expect(jobVerdictHere(withHits(two, []), may, now)).toEqual(may);
    const stopped = withHits(two, [hit]);
    expect(jobVerdictHere(stopped, may, now).reasons).toEqual([{ code: 'locates.reason.damage', params: { number: 'A-1', at: hit } }]);
    const told = (kind: 'damage' | 'damageCleared', recordedAt: string) => ({ ...ticket.events[0], kind, at: recordedAt, recordedAt }) as LocateTicket['events'][number];
    const cleared = [{ ...ticket, events: [...ticket.events, told('damage', hit), told('damageCleared', '2026-03-10T11:30:00.000Z')] }];
    expect(jobVerdictHere(withHits(cleared, [hit]), may, now)).toEqual(may);
    const before = [{ ...ticket, events: [...ticket.events, told('damage', '2026-03-08T11:00:00.000Z'), told('damageCleared', '2026-03-09T11:30:00.000Z')] }];
    expect(codes(jobVerdictHere(withHits(before, [hit]), may, now))).toEqual(['locates.reason.damage']);
  });
});
