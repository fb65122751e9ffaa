import { expect } from 'vitest';

/** Each call is refused with its code and the path of what was wrong. */
export function expectProblems(cases: readonly (readonly [call: () => unknown, problem: string])[]): void {
  for (const [call, problem] of cases) expect(call).toThrow(problem);
}
