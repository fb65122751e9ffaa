import type { CalcProblem } from '@yardfall/calc';
import { DomainError } from '../common/errors.ts';

/** What the engine cannot compute is told by its place in the document. */
export function refused(problem: CalcProblem): DomainError {
  const { code, path, params } = problem;
  return new DomainError('document.invalid', { ...params, path, reason: code }, [{ path, message: code }], { cause: problem });
}
