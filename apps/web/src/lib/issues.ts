import { ApiProblem } from './problem.ts';

/** True when the office named this field, for example `email` or `customer.email`. */
export function isNamed(problem: unknown, field: string): boolean {
  if (!(problem instanceof ApiProblem)) return false;
  return problem.issues.some(({ path }) => {
    const at = path.replace(/^\/?(body|meta)[./]/, '').replaceAll('/', '.').replace(/^\./, '');
    return at === field || at.startsWith(`${field}.`);
  });
}
