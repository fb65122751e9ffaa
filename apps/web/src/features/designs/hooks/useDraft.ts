import type { DesignDocument } from '@yardfall/calc';
import type { DraftOperation, Revision } from '@yardfall/contracts';
import { useEffect, useMemo, useState } from 'react';
import { ApiProblem } from '../../../lib/problem.ts';
import { useOperate } from '../api/designs.ts';
import { onTop } from '../model/unsent.ts';
import { useSteps, type Steps } from './useSteps.ts';
import { useUnsent } from './useUnsent.ts';

export type DraftState = 'office' | 'changed' | 'saving' | 'failed' | 'conflict';

export interface Draft extends Pick<Steps, 'edit' | 'undo' | 'redo'> {
  readonly document: DesignDocument;
  readonly state: DraftState;
  readonly problem: unknown;
  /** Edits that have lost their place in what the office has; nothing is sent until they are let go. */
  readonly aside: readonly DraftOperation[];
  /** Edits that are not in the office yet. */
  readonly unsent: readonly DraftOperation[];
  readonly letGo: () => void;
  /** After a conflict: send my edits again on top of theirs, or let them go. */
  readonly keepMine: () => void;
  readonly takeTheirs: () => void;
  readonly retry: () => void;
}

const pause = 600;
/** Edits that the office takes in one request. */
const mostAtOnce = 200;

interface Failure {
  readonly state: 'failed' | 'conflict';
  readonly problem: unknown;
}

/** A draft as this person sees it: what the office holds, and the edits that have not arrived there. Sends operations, never the document. */
export function useDraft(jobId: string, revision: Revision, refresh: () => Promise<unknown>): Draft {
  const operate = useOperate(jobId);
  const { pending, setPending, base, settle } = useUnsent(revision);
  const [failure, setFailure] = useState<Failure | null>(null);
  const [inFlight, setInFlight] = useState<{ readonly count: number; readonly base: number } | null>(null);

  // The office's answer and the shorter list of edits arrive one after the other; an edit is never applied twice.
  const arrived = inFlight !== null && revision.version > inFlight.base ? inFlight.count : 0;
  const { document, aside } = useMemo(() => onTop(revision.document as DesignDocument, pending.slice(arrived)), [revision.document, pending, arrived]);
  const steps = useSteps(document, (operations) => setPending((now) => [...now, ...operations]));
  const waits = pending.length > 0 && failure === null && inFlight === null && aside.length === 0;
  const { mutate } = operate;

  useEffect(() => {
    if (!waits) return;
    const timer = setTimeout(() => {
      const operations = pending.slice(0, mostAtOnce);
      setInFlight({ count: operations.length, base });
      mutate({ revisionId: revision.id, base, operations }, {
        onSuccess: () => { settle(); setPending((now) => now.slice(operations.length)); },
        onError: (problem) => setFailure({ state: problem instanceof ApiProblem && problem.code === 'draft.conflict' ? 'conflict' : 'failed', problem }),
        onSettled: () => setInFlight(null),
      });
    }, pause);
    return () => clearTimeout(timer);
    // oxlint-disable-next-line react-hooks/exhaustive-deps -- settle and setPending only set state
  }, [waits, pending, base, revision.id, mutate]);

  const settledState: DraftState = pending.length > 0 ? 'changed' : 'office';
  return {
    document, aside, unsent: pending, problem: failure?.problem ?? null, edit: steps.edit, undo: steps.undo, redo: steps.redo,
    state: failure?.state ?? (inFlight ? 'saving' : aside.length > 0 ? 'conflict' : settledState),
    letGo: () => setPending((now) => now.filter((operation) => !aside.includes(operation))),
    keepMine: () => void refresh().then(() => { settle(); setFailure(null); }),
    takeTheirs: () => void refresh().then(() => { setPending([]); steps.forget(); settle(); setFailure(null); }),
    retry: () => setFailure(null),
  };
}
