import { useQueryClient } from '@tanstack/react-query';
import { useCallback, useEffect, useMemo, useState, useSyncExternalStore } from 'react';
import { loadOutbox, onOutbox, outboxIsRead, outboxNow, type OutboxEntry } from '../lib/outbox.ts';
import { useMe } from './useMe.ts';

/** What this person recorded on this phone that is not in the office yet. */
export function useOutbox(): readonly OutboxEntry[] {
  const { me } = useMe();
  const all = useSyncExternalStore(onOutbox, outboxNow);
  const id = me?.id ?? null;
  return useMemo(() => all.filter((entry) => entry.memberId === id), [all, id]);
}

/** Whether the phone has been asked what it holds. */
export const useOutboxRead = (): boolean => useSyncExternalStore(onOutbox, outboxIsRead);

/** The first wait after a failure and the longest one [ms]; each is twice the last (ours). */
const waits = { first: 2_000, longest: 60_000 };

/** Keeps sending while the page is open: at once, when the network comes back, and after ever longer waits while something waits and nothing gets through. */
export function useSending(): { readonly problem: unknown; readonly sendNow: () => void } {
  const { me } = useMe();
  const queries = useQueryClient();
  const entries = useOutbox().filter((entry) => entry.refused === null);
  const waiting = entries.length;
  const asked = entries.filter((entry) => entry.kind === 'photo' && entry.now === true).length;
  const [problem, setProblem] = useState<unknown>(null);
  const id = me?.kind === 'member' ? me.id : null;
  const name = me?.name ?? '';
  const send = useCallback(async () => {
    if (id === null) return;
    const sending = await sendingCode();
    if (sending === null) return; // without a network the next round asks again
    await sending.deliver(queries, { id, name });
    setProblem(null);
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
  }, [waiting, asked, sendNow]);
  return { problem, sendNow };
}

/** The page was loaded before a release and lacks what sends; what is recorded stays where it is. */
export class OldPage extends Error {}

/** What sends comes when something waits, or with the provisions of a page that rests. */
const sendingCode = () => import('../lib/deliver.ts').catch((error: unknown) => {
  if (navigator.onLine) throw new OldPage('the part that sends is not there any more', { cause: error });
  return null;
});
