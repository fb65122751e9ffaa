import { evaluate, type DesignDocument, type Evaluation, type Params } from '@yardfall/calc';
import { canonicalBytes, sha256Hex } from '@yardfall/contracts';

export interface EvaluateRequest {
  readonly document: DesignDocument;
  /** With the band of the freeboards and how each number comes about: slower, for when the hand rests. */
  readonly band: boolean;
}

export type EvaluateAnswer =
  /** The mark of the whole result, the same that the office computes; without the band there is no whole result. */
  | { readonly ok: true; readonly band: boolean; readonly evaluation: Evaluation; readonly sha256: string | null }
  | { readonly ok: false; readonly code: string; readonly path: string; readonly params: Params };

self.onmessage = (event: MessageEvent<EvaluateRequest>) => {
  void answer(event.data).then((told) => self.postMessage(told));
};

async function answer({ document, band }: EvaluateRequest): Promise<EvaluateAnswer> {
  try {
    const evaluation = evaluate(document, { band, workings: band });
    return { ok: true, band, evaluation, sha256: band ? await sha256Hex(canonicalBytes(evaluation)) : null };
  } catch (error) {
    const known = error as { readonly code?: unknown; readonly path?: unknown; readonly params?: Params };
    if (typeof known.code !== 'string') throw error;
    return { ok: false, code: known.code, path: typeof known.path === 'string' ? known.path : '', params: known.params ?? {} };
  }
}
