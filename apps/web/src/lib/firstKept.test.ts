import 'fake-indexeddb/auto';
import { checklists, found, identity, jobs, type JobRow, type Me } from '@yardfall/contracts';
import { beforeEach, expect, test } from 'vitest';
import { answerKey, ownerKey } from './answerKeys.ts';
import { firstKept, readKept } from './firstKept.ts';
import { inStores } from './idb.ts';
import { read } from './query.ts';

const query = { open: 'true', limit: 100 } as const;
const row = (id: string, stage: JobRow['stage']) => ({ id, stage, assignments: [{ memberId: 'rosa', role: 'crew' }] }) as unknown as JobRow;
const answer = <T>(data: T) => ({ data, etag: null });
const me = answer({ kind: 'member', id: 'rosa' } as Me);
const list = answer({ items: [row('later', 'released'), row('today', 'installing')], next: null });

async function keep(answers: Readonly<Record<string, unknown>>): Promise<void> {
  await inStores(['answers'], 'readwrite', async ({ answers: store }) => {
    await store.clear();
    for (const [key, value] of Object.entries(answers)) await store.put(value, key);
  });
}

const whole = {
  [ownerKey]: 'rosa',
  [answerKey(identity.me.id, {})]: me,
  [answerKey(jobs.list.id, { query })]: list,
  [answerKey(jobs.read.id, { params: { jobId: 'today' } })]: answer('the job'),
  [answerKey(checklists.read.id, { params: { jobId: 'today' } })]: answer('its list'),
  [answerKey(checklists.read.id, { params: { jobId: 'later' } })]: answer('the list of another'),
};

beforeEach(() => keep(whole));

test('the home begins with what was known of the first job, under the names that the page asks by', async () => {
  readKept(true);
  const params = { jobId: 'today' };
  expect(await firstKept()).toEqual([
    { queryKey: read(identity.me).queryKey, data: me },
    { queryKey: [jobs.list.id, null, query, 'pages'], data: { pages: [list.data], pageParams: [null] } },
    { queryKey: read(jobs.read, { params }).queryKey, data: answer('the job') },
    { queryKey: read(checklists.read, { params }).queryKey, data: answer('its list') },
  ]);
  // What is not kept is not made up.
  expect((await firstKept()).some(({ queryKey }) => queryKey[0] === found.list.id)).toBe(false);
});

test('another page begins with who is there', async () => {
  readKept(false);
  expect(await firstKept()).toEqual([{ queryKey: read(identity.me).queryKey, data: me }]);
});

test("nothing of one person stands on another's page", async () => {
  await keep({ ...whole, [ownerKey]: 'theo' });
  readKept(true);
  expect(await firstKept()).toEqual([]);
  await keep({});
  readKept(true);
  expect(await firstKept()).toEqual([]);
});
