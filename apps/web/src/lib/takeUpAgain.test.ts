import 'fake-indexeddb/auto';
import { expect, test } from 'vitest';
import { isSetAside, keepPhoto, markRefused, outboxNow, takeUpAgain } from './outbox.ts';

const keep = (id: string, memberId: string) => keepPhoto({ id, memberId, jobId: 'job', meta: { id } as never, file: new Blob(['x']) });
const of = (id: string) => outboxNow().filter((entry) => entry.id === id);

test("what a phone could not send while it was cut off waits again once its person has signed in; what the office refused, and another's, does not", async () => {
  for (const [id, who] of [['cut', 'ana'], ['bad', 'ana'], ['theirs', 'ben']] as const) await keep(id, who);
  await markRefused([...of('cut'), ...of('theirs')], 'auth.phoneCutOff');
  await markRefused(of('bad'), 'photo.notAnImage');
  expect(outboxNow().map(isSetAside)).toEqual([true, false, true]);
  await takeUpAgain('ana');
  expect(outboxNow().map(({ refused }) => refused)).toEqual([null, 'photo.notAnImage', 'auth.phoneCutOff']);
});
