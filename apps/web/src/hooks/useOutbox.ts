import { checklists, found, jobs, photos, surveyFacts, surveys } from '@yardfall/contracts';
import { useQueryClient } from '@tanstack/react-query';
import { useCallback, useEffect, useMemo, useState, useSyncExternalStore } from 'react';
import { loadOutbox, onOutbox, outboxNow, type OutboxEntry } from '../lib/outbox.ts';
import { keyOf } from '../lib/query.ts';
import { sendOutbox } from '../lib/sendOutbox.ts';
import { useMe } from './useMe.ts';

/** What this person recorded on this phone that is not in the office yet. */
export function useOutbox(): readonly OutboxEntry[] {
  const { me } = useMe();
  const all = useSyncExternalStore(onOutbox, outboxNow);
  const id = me?.id ?? null;
  return useMemo(() => all.filter((entry) => entry.memberId === id), [all, id]);
}

const tryAgainAfter = 15_000;

/** Keeps sending while the page is open: at once, when the network comes back, and every quarter minute while something waits. */
export function useSending(): { readonly problem: unknown; readonly sendNow: () => void } {
  const { me } = useMe();
  const queries = useQueryClient();
  const waiting = useOutbox().filter((entry) => entry.refused === null).length;
  const [problem, setProblem] = useState<unknown>(null);
  const id = me?.kind === 'member' ? me.id : null;
  const name = me?.name ?? '';
  const sendNow = useCallback(() => {
    if (id === null) return;
    sendOutbox({ id, name })
      .then(async (sent) => {
        setProblem(null);
        if (sent) await Promise.all([surveyFacts.list, surveys.list, checklists.read, photos.list, found.list, jobs.list, jobs.read].map((stale) => queries.invalidateQueries({ queryKey: keyOf(stale) })));
      })
      .catch(setProblem);
  }, [id, name, queries]);
  useEffect(() => {
    loadOutbox().catch(setProblem);
  }, []);
  useEffect(() => {
    if (waiting === 0) return undefined;
    sendNow();
    const timer = setInterval(sendNow, tryAgainAfter);
    addEventListener('online', sendNow);
    return () => {
      clearInterval(timer);
      removeEventListener('online', sendNow);
    };
  }, [waiting, sendNow]);
  return { problem, sendNow };
}
