import { CalcProblem } from '../common/problem.ts';

/** A value ready for canonical JSON: -0 becomes 0, and a number that is not finite throws with its path. */
export function settled<T>(value: T, path = ''): T {
  if (typeof value === 'number') {
    if (!(value - value === 0)) throw new CalcProblem('result.notFinite', path, {});
    return (value === 0 ? 0 : value) as T;
  }
  if (Array.isArray(value)) return value.map((item, index) => settled<unknown>(item, `${path}/${index}`)) as T;
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, settled<unknown>(item, `${path}/${key}`)])) as T;
}
