import { evaluate, type DesignDocument, type Evaluation } from '@yardfall/calc';

export interface EvaluateRequest {
  readonly id: number;
  readonly document: DesignDocument;
}

export type EvaluateAnswer =
  | { readonly id: number; readonly ok: true; readonly evaluation: Evaluation }
  | { readonly id: number; readonly ok: false; readonly code: string; readonly path: string };

self.onmessage = (event: MessageEvent<EvaluateRequest>) => {
  const { id, document } = event.data;
  self.postMessage(answer(id, document));
};

function answer(id: number, document: DesignDocument): EvaluateAnswer {
  try {
    return { id, ok: true, evaluation: evaluate(document) };
  } catch (error) {
    const known = error as { readonly code?: unknown; readonly path?: unknown };
    if (typeof known.code !== 'string') throw error;
    return { id, ok: false, code: known.code, path: typeof known.path === 'string' ? known.path : '' };
  }
}
