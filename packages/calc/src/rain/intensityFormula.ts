import { HOUR, INCH, MINUTE } from '../common/constants.ts';
import { requireNotNegative, requirePositive } from '../common/require.ts';
import { pow } from '../math/pow.ts';

/** i = a/(t^b + c) in inches an hour and minutes, as local rainfall formulas are printed. */
export interface IntensityFormula {
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

/**
 * Mean intensity of a duration by a local rainfall formula.
 *
 *   i = a / (t^b + c)     in/h, min
 *
 * @param formula a, b, c as printed
 * @param duration t [s], > 0
 * @returns i [m/s]
 * Limits: the durations for which the formula was fitted
 * Source: Chow, Maidment and Mays 1988, section 14.2 (from memory)
 * Checked against: fixtures/rain/rainfall.json, row 3b (Denver, a 96.6, b 0.97, c 13.90)
 */
export function formulaIntensity(formula: IntensityFormula, duration: number): number {
  requirePositive({ a: formula.a, b: formula.b, duration });
  requireNotNegative({ c: formula.c });
  return ((formula.a / (pow(duration / MINUTE, formula.b) + formula.c)) * INCH) / HOUR;
}

/** Depth of a duration [mm]: intensity times time. Same source. */
export function formulaDepth(formula: IntensityFormula, duration: number): number {
  return formulaIntensity(formula, duration) * duration * 1000;
}
