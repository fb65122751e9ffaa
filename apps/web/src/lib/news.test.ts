import type { Notice } from '@yardfall/contracts';
import { QueryClient } from '@tanstack/react-query';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { askedAgain, gathers, keepUp, restsBetween } from './news.ts';
import type { hear } from './notices.ts';

type Said = Pick<Notice, 'topic' | 'jobId'>;
const stream = { say: (_: Said): void => undefined, ready: (): void => undefined };
const listen: typeof hear = (fn, onOpen = () => undefined) => {
  Object.assign(stream, { say: (said: Said) => fn({ ...said, id: '', subjectId: null, cursor: '' }), ready: onOpen });
  return () => undefined;
};

test('many events ask each question once, for the jobs that they are about', () => {
  const events = Array.from({ length: 300 }, (_, at) => ({ topic: at % 2 ? 'checklist' : 'found', jobId: at % 3 ? 'a' : 'b' }));
  const asked = [...askedAgain(events)].map(([id, { jobIds }]) => [id, [...jobIds].toSorted((a, b) => String(a).localeCompare(String(b)))]);
  expect(Object.fromEntries(asked)).toEqual({ 'found.list': ['a', 'b'], 'checklists.read': ['a', 'b'], 'jobs.read': ['a', 'b'], 'jobs.list': [null] });
  expect(askedAgain([{ topic: 'presence', jobId: 'a' }]).size).toBe(0);
});

describe('a page that hears the office', () => {
  let queries: QueryClient;
  const on = (key: readonly unknown[]) => {
    queries.setQueryData(key, 0);
  };
  const isStale = (key: readonly unknown[]) => queries.getQueryState(key)?.isInvalidated;

  beforeEach(() => {
    vi.useFakeTimers({ now: 1_000_000 });
    queries = new QueryClient();
  });
  afterEach(() => vi.useRealTimers());

  test('asks once after the first event of a burst, and again only after a rest', async () => {
    const again = vi.spyOn(queries, 'invalidateQueries');
    const stop = keepUp(queries, listen);
    for (let at = 0; at < 100; at += 1) stream.say({ topic: 'job', jobId: 'a' });
    await vi.advanceTimersByTimeAsync(gathers - 1);
    expect(again).not.toHaveBeenCalled();
    await vi.advanceTimersByTimeAsync(1);
    expect(again).toHaveBeenCalledTimes(2);
    for (let at = 0; at < 30; at += 1) {
      stream.say({ topic: 'job', jobId: 'a' });
      await vi.advanceTimersByTimeAsync(100);
    }
    expect(again, 'three seconds later').toHaveBeenCalledTimes(2);
    await vi.advanceTimersByTimeAsync(restsBetween);
    expect(again).toHaveBeenCalledTimes(4);
    stop();
  });

  test('leaves other jobs alone, and what came after the event', async () => {
    const keys = { ours: ['found.list', { jobId: 'a' }, null], theirs: ['found.list', { jobId: 'b' }, null], list: ['jobs.list', null, { open: 'true' }, 'pages'], fresh: ['jobs.read', { jobId: 'a' }, null] };
    for (const key of Object.values(keys)) on(key);
    const stop = keepUp(queries, listen);
    vi.setSystemTime(1_000_500);
    stream.say({ topic: 'found', jobId: 'a' });
    vi.setSystemTime(1_000_600);
    on(keys.fresh);
    await vi.advanceTimersByTimeAsync(gathers);
    expect([isStale(keys.ours), isStale(keys.theirs), isStale(keys.list), isStale(keys.fresh)]).toEqual([true, false, true, false]);
    stop();
  });

  test('catches up once with what was before the stream began', async () => {
    on(['found.list', { jobId: 'b' }, null]);
    const stop = keepUp(queries, listen);
    vi.setSystemTime(1_000_500);
    stream.ready();
    await vi.advanceTimersByTimeAsync(gathers);
    expect(isStale(['found.list', { jobId: 'b' }, null])).toBe(true);
    stop();
  });
});
