import { CalcProblem } from '../common/problem.ts';

function holdsNaN(value: unknown): boolean {
  if (typeof value === 'number') return Number.isNaN(value);
  return typeof value === 'object' && value !== null && Object.values(value).some(holdsNaN);
}

/** A typed problem, or an answer without a NaN. */
export function outcome(method: (x: number) => unknown, x: number): string {
  try {
    return holdsNaN(method(x)) ? 'NaN' : 'answer';
  } catch (error) {
    if (error instanceof CalcProblem) return 'problem';
    throw error;
  }
}
