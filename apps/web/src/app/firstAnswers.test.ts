import 'fake-indexeddb/auto';
import { checklists, found, identity, jobs, type JobRow, type Me } from '@yardfall/contracts';
import { QueryClient } from '@tanstack/react-query';
import { afterEach, expect, test, vi } from 'vitest';
import { urlOf } from '../lib/api.ts';
import { askFirstQuestions, takeEarly } from '../lib/early.ts';
import { openJobs } from '../lib/openJobs.ts';
import { read, readPages } from '../lib/query.ts';
import { firstAnswers } from './firstAnswers.ts';

const id = (n: number) => `01a2288c-7f99-71f7-97d4-63f590f88e${n.toString(16).padStart(2, '0')}`;
const me: Me = {
  kind: 'member', id: id(1), name: 'Rosa', company: { id: id(2), name: 'Low Spot', language: 'en', state: 'NC', timeZone: 'America/New_York' },
  roles: ['crew'], jobId: null, language: 'en', units: 'us', theme: 'auto',
};
const row: JobRow = {
  id: id(3), number: 1, title: 'Wicker Road', stage: 'installing', urgency: 'normal', address: '1 Wicker Road', state: 'NC', timeZone: 'America/New_York', customerName: 'Ann',
  assignments: [{ memberId: me.id, name: me.name, role: 'crew' }], holds: [], system: null, locate: null, buildRevisionId: null, releasedAt: null,
  createdAt: '2026-11-01T12:00:00.000Z', updatedAt: '2026-11-01T12:00:00.000Z',
};
const params = { jobId: row.id };
const who = urlOf(identity.me);
const list = urlOf(jobs.list, { query: openJobs });

/** What the office is asked, in order; it answers what it has. */
function office(answers: Readonly<Record<string, unknown>>): string[] {
  const seen: string[] = [];
  vi.stubGlobal('fetch', (url: string) => {
    seen.push(url);
    return Promise.resolve(new Response(JSON.stringify(answers[url] ?? {}), { status: url in answers ? 200 : 401 }));
  });
  return seen;
}

afterEach(() => vi.unstubAllGlobals());

test('stand under the names that the home asks by, each asked once', async () => {
  const seen = office({ [who]: me, [list]: { items: [row], next: null }, [urlOf(found.list, { params })]: { items: [] } });
  askFirstQuestions(true);
  const queries = new QueryClient({ defaultOptions: { queries: { retry: false } } });
  await firstAnswers(queries);
  expect(queries.getQueryData(read(identity.me).queryKey)?.data).toEqual(me);
  expect(queries.getQueryData(readPages(jobs.list, { query: openJobs }).queryKey)?.pages.map(({ items }) => items.map((one) => one.id))).toEqual([[row.id]]);
  expect(queries.getQueryData(read(found.list, { params }).queryKey)?.data.items).toEqual([]);
  expect(seen.filter((url) => [who, list, urlOf(found.list, { params })].includes(url))).toHaveLength(3);
  expect(seen).toEqual(expect.arrayContaining([urlOf(jobs.read, { params }), urlOf(checklists.read, { params })]));
  await Promise.all(seen.map(takeEarly));
});

test('nobody is asked again where the office did not know who is there', async () => {
  const seen = office({});
  askFirstQuestions(true);
  const queries = new QueryClient();
  await firstAnswers(queries);
  expect(seen).toEqual([who, list]);
  expect(queries.getQueryCache().getAll()).toEqual([]);
  await Promise.all(seen.map(takeEarly));
});
