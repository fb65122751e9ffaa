import type { DesignDocument, Evaluation, Params } from '@yardfall/calc';
import { useEffect, useRef, useState } from 'react';
import { Newest } from '../lib/newest.ts';
import type { EvaluateAnswer, EvaluateRequest } from '../lib/evaluate.worker.ts';

export interface Uncomputed {
  readonly code: string;
  readonly path: string;
  readonly params: Params;
}

export interface Computed {
  readonly evaluation: Evaluation | null;
  /** SHA-256 of the whole result; null while it is not whole. */
  readonly sha256: string | null;
  /** Why the document as it stands cannot be evaluated, and where. */
  readonly problem: Uncomputed | null;
}

/** Evaluates the document in a web worker; while edits come faster than answers only the newest is sent on, and the band follows when the hand rests. */
export function useEvaluation(document: DesignDocument | null, stored: Evaluation | null, storedSha256: string | null): Computed {
  const [computed, setComputed] = useState<Computed>({ evaluation: stored, sha256: storedSha256, problem: null });
  const worker = useRef<Newest<EvaluateRequest, EvaluateAnswer> | null>(null);
  /** The newest document asked about; when nothing waits it is asked again with its band. */
  const asked = useRef<DesignDocument | null>(null);

  useEffect(() => {
    const made = new Newest<EvaluateRequest, EvaluateAnswer>(
      new Worker(new URL('../lib/evaluate.worker.ts', import.meta.url), { type: 'module' }),
      (answer) => setComputed((before) => (answer.ok ? { evaluation: answer.evaluation, sha256: answer.sha256, problem: null } : { ...before, sha256: null, problem: answer })),
      (answer) => (answer.ok && !answer.band && asked.current ? { document: asked.current, band: true } : null),
    );
    worker.current = made;
    return () => made.end();
  }, []);

  useEffect(() => {
    if (!document) return;
    asked.current = document;
    worker.current?.ask({ document, band: false });
  }, [document]);

  return computed;
}
