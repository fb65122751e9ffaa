import { checklists, found, jobs, locates, permits, privateLines, type Endpoint, type Notice } from '@yardfall/contracts';
import type { QueryClient } from '@tanstack/react-query';
import { hear } from './notices.ts';

/** What is asked for again when the office says that something of a topic has changed. */
const changedBy: ReadonlyMap<string, readonly Endpoint[]> = new Map([
  ['found', [found.list, jobs.read, jobs.list]],
  // What lets dig or stops it is in the list of steps as well.
  ['locates', [locates.list, checklists.read, privateLines.read, jobs.read, jobs.list]],
  ['checklist', [checklists.read, jobs.read, jobs.list]],
  ['job', [jobs.read, jobs.list]],
  ['permits', [permits.read, jobs.read, jobs.list]],
]);

/** What is heard within this time is asked for once, and rounds of asking keep this distance [ms] (ours): a phone that delivers its day makes hundreds of events. */
export const gathers = 1_000;
export const restsBetween = 4_000;

type Asked = ReadonlyMap<string, { readonly endpoint: Endpoint; readonly jobIds: ReadonlySet<string | null> }>;

/** Each question once, however many events there were, and only for the jobs that they are about. */
export function askedAgain(notices: readonly Pick<Notice, 'topic' | 'jobId'>[]): Asked {
  const asked = new Map<string, { readonly endpoint: Endpoint; readonly jobIds: Set<string | null> }>();
  for (const { topic, jobId } of notices) {
    for (const endpoint of changedBy.get(topic) ?? []) {
      const one = asked.get(endpoint.id) ?? { endpoint, jobIds: new Set<string | null>() };
      one.jobIds.add(endpoint === jobs.list ? null : jobId);
      asked.set(endpoint.id, one);
    }
  }
  return asked;
}

/** Only what is on the screen is fetched; the rest is old when it is next looked at. What came after the last of the events is not asked for again. */
function refresh(queries: QueryClient, notices: readonly Pick<Notice, 'topic' | 'jobId'>[], heardAt: number): void {
  for (const { endpoint, jobIds } of askedAgain(notices).values()) {
    for (const jobId of jobIds) {
      const queryKey = jobId === null ? [endpoint.id] : [endpoint.id, { jobId }];
      void queries.invalidateQueries({ queryKey, predicate: ({ state }) => state.dataUpdatedAt < heardAt });
    }
  }
}

/** Keeps the open page to what the office says, while it is open; what was missed before the stream was there is asked for once. */
export function keepUp(queries: QueryClient, listen: typeof hear = hear): () => void {
  let heard: Pick<Notice, 'topic' | 'jobId'>[] = [];
  let heardAt = 0;
  let last = -Infinity;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const flush = () => {
    timer = undefined;
    last = Date.now();
    refresh(queries, heard.splice(0), heardAt);
  };
  const later = () => { timer ??= setTimeout(flush, Math.max(gathers, last + restsBetween - Date.now())); };
  const stop = listen((notice) => {
    if (!changedBy.has(notice.topic)) return;
    heard.push(notice);
    heardAt = Date.now();
    later();
  }, () => {
    heard = [...changedBy.keys()].map((topic) => ({ topic, jobId: null }));
    heardAt = Date.now();
    later();
  });
  return () => {
    clearTimeout(timer);
    stop();
  };
}
