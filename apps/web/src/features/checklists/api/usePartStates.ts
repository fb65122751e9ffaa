import { useDeferredValue, useMemo } from 'react';
import { partStates, type PartState } from '../model/partStates.ts';
import { useChecklistView } from './useChecklistView.ts';
import { useNext } from './useNext.ts';

export interface PartsNow {
  readonly states: Readonly<Record<string, PartState>>;
  readonly names: Readonly<Record<string, string>>;
}

/** The parts of what is built on a job as the crew reads them; null before there is a list. The same object as long as nothing changes on it, since a drawing hangs on it; a press is acknowledged before it. */
export function usePartStates(jobId: string, released: boolean): PartsNow | null {
  const view = useDeferredValue(useChecklistView(jobId, released).view);
  const next = useNext(view)?.item.key ?? null;
  const now = useMemo(() => (view === null ? null : JSON.stringify({ states: partStates(view.items, next), names: namesOf(view.items) })), [view, next]);
  return useMemo(() => (now === null ? null : (JSON.parse(now) as PartsNow)), [now]);
}

function namesOf(items: readonly { readonly item: { readonly part: string | null; readonly partName: string | null } }[]): PartsNow['names'] {
  return Object.fromEntries(items.flatMap(({ item: { part, partName } }) => (part === null ? [] : [[part, partName ?? part]])));
}
