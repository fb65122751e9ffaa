import { evaluate, type DesignDocument, type Evaluation, type Params } from '@yardfall/calc';

export interface EvaluateRequest {
  readonly document: DesignDocument;
  /** With the band of the freeboards and how each number comes about: slower, for when the hand rests. */
  readonly band: boolean;
}

export type EvaluateAnswer =
  | { readonly ok: true; readonly band: boolean; readonly evaluation: Evaluation }
  | { readonly ok: false; readonly code: string; readonly path: string; readonly params: Params };

self.onmessage = (event: MessageEvent<EvaluateRequest>) => {
  self.postMessage(answer(event.data));
};

function answer({ document, band }: EvaluateRequest): EvaluateAnswer {
  try {
    return { ok: true, band, evaluation: evaluate(document, { band, workings: band }) };
  } catch (error) {
    const known = error as { readonly code?: unknown; readonly path?: unknown; readonly params?: Params };
    if (typeof known.code !== 'string') throw error;
    return { ok: false, code: known.code, path: typeof known.path === 'string' ? known.path : '', params: known.params ?? {} };
  }
}
