import type { Params } from '../results/results.ts';

/**
 * A number or a document that a method cannot work with: a code for the sentence,
 * the path of the field, and parameters. Never a NaN in a result.
 */
export class CalcProblem extends Error {
  readonly code: string;
  readonly path: string;
  readonly params: Params;

  constructor(code: string, path: string, params: Params = {}) {
    super(`${code} at ${path === '' ? '(root)' : path}`);
    this.name = 'CalcProblem';
    this.code = code;
    this.path = path;
    this.params = params;
  }
}
