import { CalcProblem } from './problem.ts';

/** Each named value must be finite and greater than zero. */
export function requirePositive(values: Readonly<Record<string, number>>): void {
  for (const [name, value] of Object.entries(values)) {
    if (!Number.isFinite(value)) throw new CalcProblem('value.notFinite', name, { value: String(value) });
    if (value <= 0) throw new CalcProblem('value.notPositive', name, { value });
  }
}

/** Each named value must be finite and zero or greater. */
export function requireNotNegative(values: Readonly<Record<string, number>>): void {
  for (const [name, value] of Object.entries(values)) {
    if (!Number.isFinite(value)) throw new CalcProblem('value.notFinite', name, { value: String(value) });
    if (value < 0) throw new CalcProblem('value.negative', name, { value });
  }
}

/** Each named value must be finite. */
export function requireFinite(values: Readonly<Record<string, number>>): void {
  for (const [name, value] of Object.entries(values)) {
    if (!Number.isFinite(value)) throw new CalcProblem('value.notFinite', name, { value: String(value) });
  }
}

/** Each named value must lie between zero and one. */
export function requireShare(values: Readonly<Record<string, number>>): void {
  requireNotNegative(values);
  for (const [name, value] of Object.entries(values)) {
    if (value > 1) throw new CalcProblem('value.aboveOne', name, { value });
  }
}

/** An element that the caller has already shown to exist. */
export function at<T>(list: readonly T[], index: number): T {
  const item = list[index];
  if (item === undefined) throw new CalcProblem('index.outOfRange', `[${index}]`, { length: list.length });
  return item;
}
