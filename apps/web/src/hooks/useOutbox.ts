import { checklists, found, jobs, photos, surveyFacts, surveys } from '@yardfall/contracts';
import { useQueryClient } from '@tanstack/react-query';
import { useCallback, useEffect, useMemo, useState, useSyncExternalStore } from 'react';
import { loadOutbox, onOutbox, outboxNow, type OutboxEntry } from '../lib/outbox.ts';
import { withDelivered } from '../lib/answers.ts';
import { keyOf, read } from '../lib/query.ts';
import { sendOutbox, type Sender } from '../lib/sendOutbox.ts';
import { useMe } from './useMe.ts';

/** What this person recorded on this phone that is not in the office yet. */
export function useOutbox(): readonly OutboxEntry[] {
  const { me } = useMe();
  const all = useSyncExternalStore(onOutbox, outboxNow);
  const id = me?.id ?? null;
  return useMemo(() => all.filter((entry) => entry.memberId === id), [all, id]);
}

/** The first wait after a failure and the longest one [ms]; each is twice the last (ours). */
const waits = { first: 2_000, longest: 60_000 };

/** Keeps sending while the page is open: at once, when the network comes back, and after ever longer waits while something waits and nothing gets through. */
export function useSending(): { readonly problem: unknown; readonly sendNow: () => void } {
  const { me } = useMe();
  const queries = useQueryClient();
  const waiting = useOutbox().filter((entry) => entry.refused === null).length;
  const [problem, setProblem] = useState<unknown>(null);
  const id = me?.kind === 'member' ? me.id : null;
  const name = me?.name ?? '';
  const send = useCallback(async () => {
    if (id === null) return;
    const onDelivered: Sender['onDelivered'] = (jobId, facts) => {
      queries.setQueryData(read(surveyFacts.list, { params: { jobId } }).queryKey, (old) => (old === undefined ? old : { ...old, data: withDelivered(old.data, facts) }));
    };
    const sent = await sendOutbox({ id, name, onDelivered });
    setProblem(null);
    if (sent) await Promise.all(changedBySending.map((stale) => queries.invalidateQueries({ queryKey: keyOf(stale) })));
  }, [id, name, queries]);
  const sendNow = useCallback(() => void send().catch(setProblem), [send]);
  useEffect(() => {
    loadOutbox().catch(setProblem);
  }, []);
  useEffect(() => {
    if (waiting === 0) return undefined;
    let wait = waits.first;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const round = () => {
      clearTimeout(timer);
      sendNow();
      timer = setTimeout(round, wait);
      wait = Math.min(wait * 2, waits.longest);
    };
    const again = () => {
      wait = waits.first;
      round();
    };
    round();
    addEventListener('online', again);
    return () => {
      clearTimeout(timer);
      removeEventListener('online', again);
    };
  }, [waiting, sendNow]);
  return { problem, sendNow };
}

const changedBySending = [checklists.read, photos.list, found.list, surveys.list, surveys.read, surveyFacts.list, jobs.list, jobs.read];
