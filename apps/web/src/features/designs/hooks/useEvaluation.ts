import type { DesignDocument, Evaluation, Params } from '@yardfall/calc';
import { useEffect, useRef, useState } from 'react';
import type { EvaluateAnswer, EvaluateRequest } from '../model/evaluate.worker.ts';

export interface Uncomputed {
  readonly code: string;
  readonly path: string;
  readonly params: Params;
}

export interface Computed {
  readonly evaluation: Evaluation | null;
  /** Why the document as it stands cannot be evaluated, and where. */
  readonly problem: Uncomputed | null;
  readonly busy: boolean;
}

interface Queue {
  inFlight: number | null;
  next: EvaluateRequest | null;
  /** The newest document asked about; when nothing waits it is asked again with its band. */
  asked: EvaluateRequest | null;
  last: number;
}

/** Evaluates the document in a web worker; while edits come faster than answers only the newest is sent on, and the band follows when the hand rests. */
export function useEvaluation(document: DesignDocument | null, stored: Evaluation | null): Computed {
  const [computed, setComputed] = useState<Computed>({ evaluation: stored, problem: null, busy: false });
  const worker = useRef<Worker | null>(null);
  const waiting = useRef<Queue>({ inFlight: null, next: null, asked: null, last: 0 });

  useEffect(() => {
    const made = new Worker(new URL('../model/evaluate.worker.ts', import.meta.url), { type: 'module' });
    const queue: Queue = { inFlight: null, next: null, asked: null, last: 0 };
    waiting.current = queue;
    made.onmessage = (event: MessageEvent<EvaluateAnswer>) => {
      const answer = event.data;
      const next = queue.next ?? (answer.ok && !answer.band && queue.asked ? { ...queue.asked, band: true } : null);
      queue.inFlight = next?.id ?? null;
      queue.next = null;
      if (next) made.postMessage(next);
      setComputed((before) => (answer.ok ? { evaluation: answer.evaluation, problem: null, busy: next !== null } : { evaluation: before.evaluation, problem: answer, busy: next !== null }));
    };
    worker.current = made;
    return () => made.terminate();
  }, []);

  useEffect(() => {
    if (!document || !worker.current) return;
    const queue = waiting.current;
    const request: EvaluateRequest = { id: ++queue.last, document, band: false };
    queue.asked = request;
    setComputed((before) => ({ ...before, busy: true }));
    if (queue.inFlight === null) {
      queue.inFlight = request.id;
      worker.current.postMessage(request);
    } else queue.next = request;
  }, [document]);

  return computed;
}
