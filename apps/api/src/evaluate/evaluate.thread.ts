import { CalcProblem, type DesignDocument, evaluate, type Evaluation } from '@yardfall/calc';

export interface CalcFailure {
  readonly code: string;
  readonly path: string;
  readonly params: CalcProblem['params'];
}
export type Outcome = { readonly evaluation: Evaluation } | { readonly problem: CalcFailure };

/** Runs in a thread of its own. A class does not survive the way back, so a problem is told as data. */
export default function run(document: DesignDocument): Outcome {
  try {
    return { evaluation: evaluate(document) };
  } catch (error) {
    if (!(error instanceof CalcProblem)) throw error;
    return { problem: { code: error.code, path: error.path, params: error.params } };
  }
}
