import { useMemo } from 'react';
import { useOutbox } from '../../../hooks/useOutbox.ts';
import { useChecklist } from '../api/checklists.ts';
import { viewOf, type ChecklistView } from './view.ts';

export interface ChecklistNow {
  readonly view: ChecklistView | null;
  readonly pending: boolean;
  readonly problem: unknown;
  readonly again: () => void;
}

export function useChecklistView(jobId: string): ChecklistNow {
  const { data, error, isPending, refetch, dataUpdatedAt } = useChecklist(jobId);
  const outbox = useOutbox();
  const facts = outbox.flatMap((entry) => (entry.kind === 'fact' && entry.jobId === jobId && entry.refused === null ? [entry.fact] : []));
  const key = facts.map(({ id }) => id).join();
  // The clock of the view is that of the last answer: hold points with fresh photos are asked for again by the office in any case.
  const view = useMemo(() => (data ? viewOf(data.data, facts, Math.max(dataUpdatedAt, ...facts.map(({ deviceTime }) => Date.parse(deviceTime)))) : null), [data, key, dataUpdatedAt]);
  return { view, pending: isPending, problem: error, again: () => void refetch() };
}
