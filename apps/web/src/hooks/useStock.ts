import { jobs } from '@yardfall/contracts';
import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useSyncExternalStore } from 'react';
import { isOutOfReach, onReach } from '../lib/answers.ts';
import { useMe } from './useMe.ts';
import { usePages } from './usePages.ts';

/** Jobs that a phone takes along, how long the page rests before, and when it asks again [ms] (ours). */
const mostJobs = 12;
const restsFor = 6_000;
const askAgainAfter = 15_000;

/** Takes along what a field user needs of the jobs of the day while there is a signal, and asks again when the office was out of reach. */
export function useStock(openJob: string | null): boolean {
  const queries = useQueryClient();
  const { me } = useMe();
  const away = useSyncExternalStore(onReach, isOutOfReach);
  const { items } = usePages(jobs.list, { query: { open: 'true', limit: 100 } });
  const memberId = me?.id ?? null;
  const mine = items.filter(({ assignments }) => assignments.some((one) => one.memberId === memberId));
  const day = [...mine, ...items.filter((job) => !mine.includes(job))].slice(0, mostJobs).map(({ id }) => id);
  // The job that is open is what this person goes out for.
  const wanted = [...new Set([...(openJob === null ? [] : [openJob]), ...day])].join(' ');
  useEffect(() => {
    if (away || wanted === '') return undefined;
    // What is on the screen comes first; the provisions for later are fetched when it rests, and so is the code that fetches them.
    const timer = setTimeout(() => void import('../lib/takeAlong.ts').then(({ takeAlong }) => takeAlong(queries, wanted.split(' '))).catch(() => undefined), restsFor);
    return () => clearTimeout(timer);
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
