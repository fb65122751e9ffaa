import type { ErrorCode, Problem } from '@yardfall/contracts';

export type Issues = Problem['issues'];
export type ErrorParams = Problem['params'];

/** An error that the caller is told about: a code of the contracts, parameters for its sentence, and the fields concerned. */
export class DomainError extends Error {
  readonly code: ErrorCode;
  readonly params: ErrorParams;
  readonly issues: Issues;

  constructor(code: ErrorCode, params: ErrorParams = {}, issues: Issues = [], options?: ErrorOptions) {
    super(code, options);
    this.name = 'DomainError';
    this.code = code;
    this.params = params;
    this.issues = issues;
  }
}

/** Missing and not yours look alike. */
export function found<T>(row: T | null | undefined): T {
  if (row === null || row === undefined) throw new DomainError('notFound');
  return row;
}
