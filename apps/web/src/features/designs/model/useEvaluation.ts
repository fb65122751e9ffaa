import type { DesignDocument, Evaluation } from '@yardfall/calc';
import { useEffect, useRef, useState } from 'react';
import type { EvaluateAnswer, EvaluateRequest } from './evaluate.worker.ts';

export interface Computed {
  readonly evaluation: Evaluation | null;
  /** Why the document as it stands cannot be evaluated, and where. */
  readonly problem: { readonly code: string; readonly path: string } | null;
  readonly busy: boolean;
}

/** Evaluates the document in a web worker; while edits come faster than answers only the newest is sent on. */
export function useEvaluation(document: DesignDocument | null, stored: Evaluation | null): Computed {
  const [computed, setComputed] = useState<Computed>({ evaluation: stored, problem: null, busy: false });
  const worker = useRef<Worker | null>(null);
  const waiting = useRef<{ inFlight: number | null; next: EvaluateRequest | null; last: number }>({ inFlight: null, next: null, last: 0 });

  useEffect(() => {
    const made = new Worker(new URL('./evaluate.worker.ts', import.meta.url), { type: 'module' });
    const queue = { inFlight: null as number | null, next: null as EvaluateRequest | null, last: 0 };
    waiting.current = queue;
    made.onmessage = (event: MessageEvent<EvaluateAnswer>) => {
      const { next } = queue;
      queue.inFlight = next?.id ?? null;
      queue.next = null;
      if (next) made.postMessage(next);
      const answer = event.data;
      setComputed((before) => (answer.ok ? { evaluation: answer.evaluation, problem: null, busy: next !== null } : { evaluation: before.evaluation, problem: answer, busy: next !== null }));
    };
    worker.current = made;
    return () => made.terminate();
  }, []);

  useEffect(() => {
    if (!document || !worker.current) return;
    const queue = waiting.current;
    const request = { id: ++queue.last, document };
    setComputed((before) => ({ ...before, busy: true }));
    if (queue.inFlight === null) {
      queue.inFlight = request.id;
      worker.current.postMessage(request);
    } else queue.next = request;
  }, [document]);

  return computed;
}
