import { evaluate as calculate } from 'mathjs';
import type { Working } from '../results/results.ts';

export interface Recomputed {
  readonly value: number;
  /** Steps that a reader with a calculator gets otherwise. */
  readonly wrongSteps: readonly string[];
}

const off = (own: number, told: number): number => Math.abs(own - told) / Math.max(Math.abs(told), 1e-12);

/** Follows a working from its printed symbols alone, by a general expression library: no line of the engine takes part. */
export function recompute(working: Working): Recomputed {
  const scope: Record<string, number> = {};
  for (const { symbol, value } of working.symbols) scope[symbol] = value;
  const wrongSteps: string[] = [];
  for (const step of working.steps) {
    const value = Number(calculate(step.formula, scope));
    scope[step.symbol] = value;
    if (!(off(value, step.value) <= Math.max(working.tolerance, 1e-6)) && Math.abs(value - step.value) > 1e-9) wrongSteps.push(`${step.symbol}: ${value} is not ${step.value}`);
  }
  const [left, right] = working.formula.split(' = ');
  if (left === undefined || right === undefined) throw new Error(`${working.result}: "${working.formula}" is no equation`);
  const value = Number(calculate(right, scope));
  if (working.solves === null) return { value, wrongSteps };
  if (scope[working.solves] !== working.value) return { value: NaN, wrongSteps: [...wrongSteps, `${working.solves} is not the value`] };
  // Found by trial: the symbol that is put in gives the left side back.
  const wanted = scope[left.trim()];
  return { value: wanted !== undefined && off(value, wanted) <= working.tolerance ? working.value : NaN, wrongSteps: [...wrongSteps, ...(wanted === undefined ? [`no ${left}`] : [])] };
}

/** Names that a formula uses. */
export function namesIn(formula: string): string[] {
  return [...new Set(formula.match(/[A-Za-z][A-Za-z_0-9]*/g) ?? [])].filter((name) => !functions.has(name) && !/^e\d*$/.test(name));
}

const functions = new Set(['sqrt', 'min', 'max', 'floor', 'acos', 'sin', 'log']);
