import { checklists, found, identity, jobs } from '@yardfall/contracts';
import type { QueryClient } from '@tanstack/react-query';
import { crewDay } from '../lib/crewDay.ts';
import { cameEarly } from '../lib/early.ts';
import { openJobs } from '../lib/openJobs.ts';
import { urlOf } from '../lib/api.ts';
import { read, readPages } from '../lib/query.ts';

/** Takes what was asked ahead of this script into the queries of the page, under the names that its parts ask by. What did not come, or was refused, is left to them. */
export async function firstAnswers(queries: QueryClient): Promise<void> {
  if (!(await cameEarly(urlOf(identity.me)))) return;
  const who = read(identity.me);
  await queries.prefetchQuery(who);
  const me = queries.getQueryData(who.queryKey)?.data;
  if (me?.kind !== 'member' || !(await cameEarly(urlOf(jobs.list, { query: openJobs })))) return;
  const list = readPages(jobs.list, { query: openJobs });
  await queries.prefetchInfiniteQuery(list);
  const [first] = crewDay(queries.getQueryData(list.queryKey)?.pages.flatMap(({ items }) => items) ?? [], me.id);
  if (first === undefined) return;
  const input = { params: { jobId: first.id } };
  await Promise.all([queries.prefetchQuery(read(jobs.read, input)), queries.prefetchQuery(read(checklists.read, input)), queries.prefetchQuery(read(found.list, input))]);
}
