import 'fake-indexeddb/auto';
import type { checklists, LocateTicket, ResponseOf } from '@yardfall/contracts';
import { expect, test } from 'vitest';
import { answerKey } from './answerKeys.ts';
import type { Answer } from './api.ts';
import { inStores } from './idb.ts';
import { rememberTicket } from './keptTickets.ts';

const told = { code: '', note: '', photoId: null, by: 'Rosa' };
const ticket: LocateTicket = {
  id: 't', jobId: 'j', number: 'A-1', state: 'VA', area: 'Back yard', method: '', depth: null, draft: false, closed: false, version: 1, rule: null, given: [],
  requestedAt: '2026-03-02T14:00:00.000Z', legalStartAt: '2026-03-06T05:00:00.000Z', renewByAt: '2026-03-20T04:00:00.000Z', expiresAt: '2026-03-24T04:00:00.000Z', createdAt: '2026-03-02T14:00:00.000Z',
  verdict: { mayDig: true, reasons: [] }, responses: [{ ...told, id: 'r', utility: 'Gas', answer: 'marked', at: '2026-03-04T12:00:00.000Z' }],
  events: [{ ...told, id: 'e', kind: 'marksAgree', utility: '', hazard: false, at: '2026-03-05T13:00:00.000Z', recordedAt: '2026-03-05T13:00:00.000Z' }],
};
const keys = ['locates.list', 'checklists.read'].map((id) => answerKey(id, { params: { jobId: 'j' } })) as [string, string];
const read = async <T>(key: string) => ((await inStores(['answers'], 'readonly', ({ answers }) => answers.get(key))) as Answer<T> | undefined)?.data;

test('a stop that has left this phone holds the job in what the phone knows, should the signal go before the office is asked', async () => {
  const steps = { jobId: 'j', revisionId: 'v', items: [], holdPoints: [], digging: [{ from: ticket.legalStartAt, until: ticket.expiresAt }] };
  await inStores(['answers'], 'readwrite', async ({ answers }) => {
    await answers.put({ etag: null, data: { items: [ticket], verdict: ticket.verdict } }, keys[0]);
    await answers.put({ etag: null, data: steps }, keys[1]);
  });
  const at = '2026-03-10T11:00:00.000Z';
  await rememberTicket('j', { ...ticket, events: [...ticket.events, { ...told, id: 'f', kind: 'damage', utility: '', hazard: true, at, recordedAt: at }] }, Date.parse('2026-03-10T12:00:00Z'));
  expect((await read<{ verdict: LocateTicket['verdict'] }>(keys[0]))?.verdict.reasons.map(({ code }) => code)).toEqual(['locates.reason.damage']);
  expect((await read<ResponseOf<typeof checklists.read>>(keys[1]))?.digging).toEqual([{ from: ticket.legalStartAt, until: at }]);
});

test('a job that the phone did not take along is not made up', async () => {
  await rememberTicket('k', { ...ticket, jobId: 'k' });
  expect(await read(answerKey('locates.list', { params: { jobId: 'k' } }))).toBeUndefined();
});
