import { CalcProblem } from '../common/problem.ts';
import type { AnnualMaximum } from './longRecord.ts';

/**
 * Level that the highest of a year reached or passed once in a number of years on average, read from the record alone.
 *
 *   the m-th highest of n years has the return period (n + 1)/m; straight between them
 *
 * @param years highest level of each complete year [m]
 * @param returnPeriod [years], from 1 up to the number of complete years and never beyond
 * @returns level [m]
 * Limits: throws record.beyondRecord: nothing is extrapolated
 * Source: Weibull plotting position, common practice
 */
export function annualLevel(years: readonly AnnualMaximum[], returnPeriod: number): number {
  const count = years.length;
  if (!(returnPeriod >= 1 && returnPeriod <= count)) throw new CalcProblem('record.beyondRecord', 'returnPeriod', { returnPeriod, years: count });
  const levels = years.map(({ level }) => level).sort((a, b) => b - a);
  const place = Math.min((count + 1) / returnPeriod, count);
  const i = Math.floor(place);
  const upper = levels[i - 1]!;
  const lower = levels[i] ?? upper;
  return upper + (lower - upper) * (place - i);
}
