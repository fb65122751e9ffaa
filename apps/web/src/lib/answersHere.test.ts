import type { PrivateQuestion, PrivateState } from '@yardfall/contracts';
import { describe, expect, test } from 'vitest';
import { holdsRelease, privateLinesHere } from './answersHere.ts';
import type { JobAnswer, OutboxAnswer } from './outbox.ts';

let count = 0;
function kept(answer: JobAnswer, refused: string | null = null, jobId = 'j'): OutboxAnswer {
  count += 1;
  return { at: count, id: `019cd773-1c00-7000-8000-${String(count).padStart(12, '0')}`, memberId: 'm', jobId, refused, kind: 'answer', answer };
}
const line = (question: PrivateQuestion, state: PrivateState) => ({ question, state, note: '', on: null, photoId: null, at: '2026-03-02T12:00:00Z', by: 'Ana' });
const said = (question: PrivateQuestion, state: PrivateState): JobAnswer => ({ what: 'privateLine', said: { question, state, note: 'by the shed', on: null, photoId: null } });
const approval = (state: 'granted' | 'notNeeded' | 'applied' | 'refused'): JobAnswer => ({ what: 'permit', said: { kind: 'tree', state, number: '', note: 'x', on: null, expiresOn: null, photoId: null } });

describe("the homeowner's lines with what is on this phone", () => {
  // A line that is there, and one that nobody looked for, ask for more care than the office knows of.
  test.each([
    ['septic', 'no', 'yes', 'yes'], ['septic', 'no', 'unknown', 'unknown'], ['septic', 'unknown', 'yes', 'yes'],
    ['septic', 'yes', 'no', 'yes'], ['septic', 'unknown', 'no', 'unknown'], ['septic', 'yes', 'unknown', 'yes'],
    ['locator', 'yes', 'no', 'no'], ['locator', 'no', 'yes', 'no'], ['locator', 'unknown', 'yes', 'unknown'],
  ] as const)('%s: the office says %s, the phone %s, and %s counts', (question, office, phone, counts) => {
    expect(privateLinesHere([line(question, office)], [kept(said(question, phone))], 'j').map(({ state }) => state)).toEqual([counts]);
  });
  test('the last word on the phone counts, and one that the office did not take as long as it asks for more care', () => {
    expect(privateLinesHere([line('pool', 'no')], [kept(said('pool', 'yes')), kept(said('pool', 'no'))], 'j')).toEqual([line('pool', 'no')]);
    expect(privateLinesHere([line('pool', 'no')], [kept(said('pool', 'yes'), 'notFound'), kept(said('pool', 'no'))], 'j')).toMatchObject([{ state: 'yes', note: 'by the shed', by: '' }]);
  });
  test('another job and another line change nothing', () => {
    expect(privateLinesHere([line('pool', 'no')], [kept(said('pool', 'yes'), null, 'k'), kept(said('septic', 'yes'))], 'j')).toEqual([line('pool', 'no')]);
  });
});

test('a job is not released while an approval is on its way, or one that holds it was not taken', () => {
  expect((['granted', 'refused'] as const).map((state) => holdsRelease(kept(approval(state)), 'j'))).toEqual([true, true]);
  expect((['granted', 'notNeeded', 'applied', 'refused'] as const).map((state) => holdsRelease(kept(approval(state), 'notFound'), 'j'))).toEqual([false, false, true, true]);
  expect([holdsRelease(kept(approval('refused')), 'k'), holdsRelease(kept(said('pool', 'yes')), 'j')]).toEqual([false, false]);
});
