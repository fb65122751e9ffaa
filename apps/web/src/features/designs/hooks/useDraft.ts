import type { DesignDocument } from '@yardfall/calc';
import { applyOperations, type DraftOperation, type Revision } from '@yardfall/contracts';
import { useCallback, useEffect, useMemo, useState } from 'react';
import { keep, kept } from '../../../lib/keep.ts';
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
  readonly redo: (() => void) | null;
  /** After a conflict: send my edits again on top of theirs, or let them go. */
  readonly keepMine: () => void;
  readonly takeTheirs: () => void;
  readonly retry: () => void;
}

const pause = 600;
/** Edits that the office takes in one request. */
const mostAtOnce = 200;

interface Unsent {
  readonly base: number;
  readonly operations: readonly DraftOperation[];
}

const keptName = (revisionId: string): string => `draft.${revisionId}`;

/** The edits that still have their place in the document, in order: not one that adds what is there or changes what is gone. */
function withPlace(document: unknown, operations: readonly DraftOperation[]): readonly DraftOperation[] {
  try {
    applyOperations(document, operations);
    return operations;
  } catch {
    return oneByOne(document, operations);
  }
}

function oneByOne(document: unknown, operations: readonly DraftOperation[]): readonly DraftOperation[] {
  let here = document;
  return operations.filter((operation) => {
    try {
      here = applyOperations(here, [operation]);
      return true;
    } catch {
      return false;
    }
  });
}

/** Edits that were on this device when the page was closed, if they still have their place in the document. */
function unsentOf(revision: Revision): Unsent | null {
  const found = kept(keptName(revision.id)) as Partial<Unsent> | null;
  if (found === null || typeof found.base !== 'number' || !Array.isArray(found.operations) || found.base > revision.version) return null;
  try {
    applyOperations(revision.document, found.operations);
    return { base: found.base, operations: found.operations };
  } catch {
    return null;
  }
}

/** A draft as this person sees it: what the office holds, and the edits that have not arrived there. Sends operations, never the document. */
export function useDraft(jobId: string, revision: Revision, refresh: () => Promise<unknown>): Draft {
  const operate = useOperate(jobId);
  const [restored] = useState(() => unsentOf(revision));
  const [pending, setPending] = useState<readonly DraftOperation[]>(restored?.operations ?? []);
  /** Version that the restored edits were made on, until they have arrived: what others changed since is not written over. */
  const [restoredBase, setRestoredBase] = useState(restored?.base ?? null);
  const [history, setHistory] = useState<readonly (readonly DraftOperation[])[]>([]);
  const [future, setFuture] = useState<readonly (readonly DraftOperation[])[]>([]);
  const [failure, setFailure] = useState<{ readonly state: 'failed' | 'conflict'; readonly problem: unknown } | null>(null);
  const [inFlight, setInFlight] = useState<{ readonly count: number; readonly base: number } | null>(null);

  // The office's answer and the shorter list of edits arrive one after the other; an edit is never applied twice.
  const arrived = inFlight !== null && revision.version > inFlight.base ? inFlight.count : 0;
  const document = useMemo(() => applyOperations(revision.document as DesignDocument, withPlace(revision.document, pending.slice(arrived))), [revision.document, pending, arrived]);

  const send = useCallback((operations: readonly DraftOperation[], base: number) => {
    setInFlight({ count: operations.length, base });
    operate.mutate({ revisionId: revision.id, base, operations }, {
      onSuccess: () => {
        setInFlight(null);
        setRestoredBase(null);
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
    const timer = setTimeout(() => {
      // An edit that the office has already, though its answer never came, is not sent again.
      const left = withPlace(revision.document, pending);
      if (left.length < pending.length) setPending(left);
      else send(pending.slice(0, mostAtOnce), restoredBase ?? revision.version);
    }, pause);
    return () => clearTimeout(timer);
  }, [pending, failure, inFlight, revision.version, revision.document, restoredBase, send]);

  useEffect(() => {
    keep(keptName(revision.id), pending.length === 0 ? null : { base: restoredBase ?? revision.version, operations: pending });
  }, [pending, revision.id, revision.version, restoredBase]);

  useEffect(() => {
    if (pending.length === 0) return;
    const warn = (event: BeforeUnloadEvent) => event.preventDefault();
    addEventListener('beforeunload', warn);
    return () => removeEventListener('beforeunload', warn);
  }, [pending.length]);

  const push = useCallback((operations: readonly DraftOperation[]) => setPending((now) => [...now, ...operations]), []);
  const edit = useCallback((operations: readonly DraftOperation[]) => {
    setHistory((now) => [...now.slice(-99), inversesOf(document, operations, applyOperations)]);
    setFuture([]);
    push(operations);
  }, [document, push]);
  const last = history.at(-1);
  const next = future.at(-1);
  const step = (operations: readonly DraftOperation[], from: typeof setHistory, to: typeof setHistory) => {
    from((now) => now.slice(0, -1));
    to((now) => [...now.slice(-99), inversesOf(document, operations, applyOperations)]);
    push(operations);
  };
  const state: DraftState = failure ? failure.state : inFlight ? 'saving' : pending.length > 0 ? 'changed' : 'office';

  return {
    document, state, problem: failure?.problem ?? null, edit,
    undo: last ? () => step(last, setHistory, setFuture) : null,
    redo: next ? () => step(next, setFuture, setHistory) : null,
    keepMine: () => void refresh().then(() => setFailure(null)),
    takeTheirs: () => void refresh().then(() => { setPending([]); setHistory([]); setFuture([]); setRestoredBase(null); setFailure(null); }),
    retry: () => setFailure(null),
  };
}
