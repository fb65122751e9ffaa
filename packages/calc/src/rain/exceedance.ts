import { CalcProblem } from '../common/problem.ts';
import { requireNotNegative } from '../common/require.ts';
import { exp } from '../math/exp.ts';
import { log } from '../math/log.ts';

function requireChance(exceedance: number): void {
  if (!(exceedance > 0 && exceedance < 1)) throw new CalcProblem('rain.notAChance', 'exceedance', { value: exceedance });
}

/**
 * Average recurrence interval of a chance in a year.
 *
 *   ARI = -1 / ln(1 - AEP)
 *
 * @param exceedance AEP [-], between 0 and 1
 * @returns ARI [years]
 * Source: Langbein 1949, as NOAA Atlas 14 uses it; citation from memory
 * Checked against: fixtures/rain/rainfall.json, row 2.8, turned round
 */
export function recurrenceInterval(exceedance: number): number {
  requireChance(exceedance);
  return -1 / log(1 - exceedance);
}

/**
 * Interval of partial durations of a column of an annual-maximum table ("1/10"): the same chance, counted otherwise.
 * At two years the two differ by a third, at 25 they are alike.
 *
 * @param period T of the column, 1/AEP [years], > 1
 * @returns ARI [years]
 * Source: as above
 * Checked against: fixtures/rain/rainfall.json, row 2.9
 */
export function partialFromAnnual(period: number): number {
  if (!(period > 1)) throw new CalcProblem('rain.notAChance', 'period', { value: period });
  return recurrenceInterval(1 / period);
}

/**
 * Chance that a storm is exceeded at least once in a number of years.
 *
 *   p = 1 - e^(-n/ARI)
 *
 * @param interval ARI [years], > 0
 * @param years n, >= 0
 * @returns p [-]
 * Source: Poisson arrivals, as Langbein 1949
 * Checked against: annualExceedance for one year
 */
export function chanceInYears(interval: number, years: number): number {
  if (!(interval > 0)) throw new CalcProblem('value.notPositive', 'interval', { value: interval });
  requireNotNegative({ years });
  return 1 - exp(-years / interval);
}
