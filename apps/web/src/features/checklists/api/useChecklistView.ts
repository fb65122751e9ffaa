import { useMemo } from 'react';
import { useOutbox } from '../../../hooks/useOutbox.ts';
import { useChecklist } from './checklists.ts';
import { viewOf, type ChecklistView } from '../model/view.ts';

export interface ChecklistNow {
  readonly view: ChecklistView | null;
  readonly pending: boolean;
  readonly problem: unknown;
  readonly again: () => void;
}

export function useChecklistView(jobId: string, released = true): ChecklistNow {
  const { data, error, isPending, refetch, dataUpdatedAt } = useChecklist(jobId, released);
  const outbox = useOutbox();
  const view = useMemo(() => {
    if (!data) return null;
    const facts = outbox.flatMap((entry) => (entry.kind === 'fact' && entry.jobId === jobId && entry.refused === null ? [entry.fact] : []));
    // The clock of the view is that of the last answer or fact: how old a photo is, the office is asked again in any case.
    return viewOf(data.data, facts, Math.max(dataUpdatedAt, ...facts.map(({ deviceTime }) => Date.parse(deviceTime))));
  }, [data, outbox, jobId, dataUpdatedAt]);
  return { view, pending: isPending, problem: error, again: () => void refetch() };
}
