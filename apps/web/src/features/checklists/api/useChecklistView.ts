import type { FieldFact } from '@yardfall/contracts';
import { useMemo } from 'react';
import { useMe } from '../../../hooks/useMe.ts';
import { useMinute } from '../../../hooks/useMinute.ts';
import { useOutbox, useOutboxRead } from '../../../hooks/useOutbox.ts';
import { holdsDigging } from '../../../lib/tickets.ts';
import { useChecklist } from './checklists.ts';
import { useOpenStops } from './useOpenStops.ts';
import { viewOf, type ChecklistView } from '../model/view.ts';

export interface ChecklistNow {
  readonly view: ChecklistView | null;
  readonly pending: boolean;
  readonly problem: unknown;
  readonly again: () => void;
}

/** What was recorded a moment ago is not looked at from before it [ms]. */
function notBefore(now: number, facts: readonly FieldFact[]): number {
  const last = Math.max(...facts.map(({ deviceTime }) => Date.parse(deviceTime)));
  return Math.max(now, Math.min(last, Date.now()));
}

export function useChecklistView(jobId: string, released = true): ChecklistNow {
  const { data, dataUpdatedAt, error, isPending, refetch } = useChecklist(jobId, released);
  const outbox = useOutbox();
  const isRead = useOutboxRead();
  const now = useMinute(dataUpdatedAt);
  const found = useOpenStops(jobId, released);
  const { me } = useMe();
  const view = useMemo(() => {
    // Without what waits on this phone a step would seem open that is done.
    if (!data || !isRead) return null;
    const facts = outbox.flatMap((entry) => (entry.kind === 'fact' && entry.jobId === jobId && entry.refused === null ? [entry.fact] : []));
    const stopped = outbox.some((entry) => holdsDigging(entry, jobId));
    return viewOf(data.data, facts, notBefore(now, facts), found, me === null ? {} : { by: me.name, memberId: me.id }, stopped);
  }, [data, isRead, outbox, jobId, now, found, me]);
  return { view, pending: isPending || !isRead, problem: error, again: () => void refetch() };
}
