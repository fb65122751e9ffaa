import type { DesignDocument } from '@yardfall/calc';
import { applyOperations, type DraftOperation, type Revision } from '@yardfall/contracts';
import { useCallback, useEffect, useMemo, useState } from 'react';
import { ApiProblem } from '../../../lib/problem.ts';
import { useOperate } from '../api/designs.ts';
import { inversesOf } from '../model/inverse.ts';

export type DraftState = 'office' | 'changed' | 'saving' | 'failed' | 'conflict';

export interface Draft {
  readonly document: DesignDocument;
  readonly state: DraftState;
  readonly problem: unknown;
  readonly edit: (operations: readonly DraftOperation[]) => void;
  readonly undo: (() => void) | null;
  /** After a conflict: send my edits again on top of theirs, or let them go. */
  readonly keepMine: () => void;
  readonly takeTheirs: () => void;
  readonly retry: () => void;
}

const pause = 600;

/** A draft as this person sees it: what the office holds, and the edits that have not arrived there. Sends operations, never the document. */
export function useDraft(jobId: string, revision: Revision, refresh: () => Promise<unknown>): Draft {
  const operate = useOperate(jobId);
  const [pending, setPending] = useState<readonly DraftOperation[]>([]);
  const [history, setHistory] = useState<readonly (readonly DraftOperation[])[]>([]);
  const [failure, setFailure] = useState<{ readonly state: 'failed' | 'conflict'; readonly problem: unknown } | null>(null);
  const [inFlight, setInFlight] = useState<{ readonly count: number; readonly base: number } | null>(null);

  // The office's answer and the shorter list of edits arrive one after the other; an edit is never applied twice.
  const arrived = inFlight !== null && revision.version > inFlight.base ? inFlight.count : 0;
  const document = useMemo(() => applyOperations(revision.document as DesignDocument, pending.slice(arrived)), [revision.document, pending, arrived]);

  const send = useCallback((operations: readonly DraftOperation[], base: number) => {
    setInFlight({ count: operations.length, base });
    operate.mutate({ revisionId: revision.id, base, operations }, {
      onSuccess: () => {
        setInFlight(null);
        setPending((now) => now.slice(operations.length));
      },
      onError: (problem) => {
        setInFlight(null);
        setFailure({ state: problem instanceof ApiProblem && problem.code === 'draft.conflict' ? 'conflict' : 'failed', problem });
      },
    });
  }, [operate, revision.id]);

  useEffect(() => {
    if (pending.length === 0 || failure || inFlight) return;
    const timer = setTimeout(() => send(pending, revision.version), pause);
    return () => clearTimeout(timer);
  }, [pending, failure, inFlight, revision.version, send]);

  useEffect(() => {
    if (pending.length === 0) return;
    const warn = (event: BeforeUnloadEvent) => event.preventDefault();
    addEventListener('beforeunload', warn);
    return () => removeEventListener('beforeunload', warn);
  }, [pending.length]);

  const push = useCallback((operations: readonly DraftOperation[]) => setPending((now) => [...now, ...operations]), []);
  const edit = useCallback((operations: readonly DraftOperation[]) => {
    setHistory((now) => [...now.slice(-99), inversesOf(document, operations, applyOperations)]);
    push(operations);
  }, [document, push]);
  const last = history.at(-1);
  const state: DraftState = failure ? failure.state : inFlight ? 'saving' : pending.length > 0 ? 'changed' : 'office';

  return {
    document, state, problem: failure?.problem ?? null, edit,
    undo: last ? () => { setHistory((now) => now.slice(0, -1)); push(last); } : null,
    keepMine: () => void refresh().then(() => setFailure(null)),
    takeTheirs: () => void refresh().then(() => { setPending([]); setHistory([]); setFailure(null); }),
    retry: () => setFailure(null),
  };
}
