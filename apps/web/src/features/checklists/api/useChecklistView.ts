import { useMemo } from 'react';
import { useMinute } from '../../../hooks/useMinute.ts';
import { useOutbox } from '../../../hooks/useOutbox.ts';
import { useChecklist } from './checklists.ts';
import { useOpenStops } from './useOpenStops.ts';
import { viewOf, type ChecklistView } from '../model/view.ts';

export interface ChecklistNow {
  readonly view: ChecklistView | null;
  readonly pending: boolean;
  readonly problem: unknown;
  readonly again: () => void;
}

export function useChecklistView(jobId: string, released = true): ChecklistNow {
  const { data, error, isPending, refetch } = useChecklist(jobId, released);
  const outbox = useOutbox();
  const now = useMinute();
  const found = useOpenStops(jobId, released);
  const view = useMemo(() => {
    if (!data) return null;
    const facts = outbox.flatMap((entry) => (entry.kind === 'fact' && entry.jobId === jobId && entry.refused === null ? [entry.fact] : []));
    return viewOf(data.data, facts, now, found);
  }, [data, outbox, jobId, now, found]);
  return { view, pending: isPending, problem: error, again: () => void refetch() };
}
