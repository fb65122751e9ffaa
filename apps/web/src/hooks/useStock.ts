import { checklists, designs, found, jobs, locates, photos, surveyFacts, surveys, type Job } from '@yardfall/contracts';
import { useQueryClient, type QueryClient } from '@tanstack/react-query';
import { useEffect, useSyncExternalStore } from 'react';
import { isOutOfReach, onReach } from '../lib/answers.ts';
import { read } from '../lib/query.ts';
import { useMe } from './useMe.ts';
import { usePages } from './usePages.ts';

/** Jobs that a phone takes along, and how long what it took counts as fresh [ms] (ours). */
const mostJobs = 12;
const freshFor = 10 * 60_000;
const askAgainAfter = 15_000;

/** Takes along what a field user needs of the jobs of the day while there is a signal, and asks again when the office was out of reach. */
export function useStock(): boolean {
  const queries = useQueryClient();
  const { me } = useMe();
  const away = useSyncExternalStore(onReach, isOutOfReach);
  const { items } = usePages(jobs.list, { query: { open: 'true', limit: 100 } });
  const memberId = me?.id ?? null;
  const mine = items.filter(({ assignments }) => assignments.some((one) => one.memberId === memberId));
  const wanted = [...mine, ...items.filter((job) => !mine.includes(job))].slice(0, mostJobs).map(({ id }) => id).join(' ');
  useEffect(() => {
    if (away || wanted === '') return;
    void takeAlong(queries, wanted.split(' '));
  }, [away, wanted, queries]);
  useEffect(() => {
    if (!away) return undefined;
    const again = () => void queries.invalidateQueries({ refetchType: 'active' });
    const timer = setInterval(again, askAgainAfter);
    addEventListener('online', again);
    return () => {
      clearInterval(timer);
      removeEventListener('online', again);
    };
  }, [away, queries]);
  return away;
}

/** One job after the other, so that what the person opens meanwhile does not wait. What cannot be had now is had another time. */
async function takeAlong(queries: QueryClient, jobIds: readonly string[]): Promise<void> {
  for (const jobId of jobIds) {
    const job = await queries.fetchQuery({ ...read(jobs.read, { params: { jobId } }), staleTime: freshFor, retry: false }).catch(() => null);
    if (job !== null && !isOutOfReach()) await takeJob(queries, job.data);
  }
}

async function takeJob(queries: QueryClient, { id: jobId, buildRevisionId }: Job): Promise<void> {
  const params = { jobId };
  const quick = { staleTime: freshFor, retry: false } as const;
  await Promise.all([
    queries.prefetchQuery({ ...read(surveys.list, { params }), ...quick }),
    queries.prefetchQuery({ ...read(surveyFacts.list, { params }), ...quick }),
    queries.prefetchQuery({ ...read(photos.list, { params }), ...quick }),
    queries.prefetchQuery({ ...read(found.list, { params }), ...quick }),
    queries.prefetchQuery({ ...read(locates.list, { params }), ...quick }),
  ]);
  if (buildRevisionId === null) return;
  await queries.prefetchQuery({ ...read(checklists.read, { params }), ...quick });
  await queries.prefetchQuery({ ...read(designs.read, { params: { jobId, revisionId: buildRevisionId } }), ...quick });
}
