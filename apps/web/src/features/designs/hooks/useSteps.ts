import { applyOperations, type DraftOperation } from '@yardfall/contracts';
import { useState } from 'react';
import { inversesOf } from '../model/inverse.ts';

type Group = readonly DraftOperation[];

export interface Steps {
  readonly edit: (operations: Group) => void;
  readonly undo: (() => void) | null;
  readonly redo: (() => void) | null;
  readonly forget: () => void;
}

const mostSteps = 100;

/** Groups of edits that can be taken back and done again. Taking back is an edit like any other. */
export function useSteps<T>(document: T, push: (operations: Group) => void): Steps {
  const [history, setHistory] = useState<readonly Group[]>([]);
  const [future, setFuture] = useState<readonly Group[]>([]);
  const inverse = (operations: Group): Group => inversesOf(document, operations, applyOperations);
  const step = (from: readonly Group[], shorten: typeof setHistory, lengthen: typeof setHistory): (() => void) | null => {
    const operations = from.at(-1);
    if (operations === undefined) return null;
    return () => {
      shorten((now) => now.slice(0, -1));
      lengthen((now) => [...now.slice(1 - mostSteps), inverse(operations)]);
      push(operations);
    };
  };
  return {
    edit: (operations) => {
      setHistory((now) => [...now.slice(1 - mostSteps), inverse(operations)]);
      setFuture([]);
      push(operations);
    },
    undo: step(history, setHistory, setFuture),
    redo: step(future, setFuture, setHistory),
    forget: () => { setHistory([]); setFuture([]); },
  };
}
