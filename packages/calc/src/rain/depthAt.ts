import { CalcProblem } from '../common/problem.ts';
import { at } from '../common/require.ts';
import type { RainTable } from '../document/document.ts';
import { exp } from '../math/exp.ts';
import { log } from '../math/log.ts';

function lowerIndex(list: readonly number[], value: number, path: string): number {
  const first = list[0];
  const last = list[list.length - 1];
  if (first === undefined || last === undefined || !(value >= first && value <= last)) {
    throw new CalcProblem('rain.outsideTable', path, { value, first: first ?? 0, last: last ?? 0 });
  }
  let i = list.length - 1;
  while (i > 0 && at(list, i) > value) i -= 1;
  return Math.min(i, Math.max(list.length - 2, 0));
}

function logLog(x: number, x1: number, x2: number, y1: number, y2: number): number {
  if (x === x2) return y2;
  if (y1 <= 0 || y2 <= 0) throw new CalcProblem('rain.zeroDepth', 'depths', { depth: Math.min(y1, y2) });
  return exp(log(y1) + (log(y2 / y1) * log(x / x1)) / log(x2 / x1));
}

function between(list: readonly number[], i: number, value: number, y: (index: number) => number): number {
  const x1 = at(list, i);
  const x2 = list[i + 1];
  return x2 === undefined || value === x1 ? y(i) : logLog(value, x1, x2, y(i), y(i + 1));
}

/**
 * Depth of rain for a duration and return period, by straight lines between the logarithms.
 *
 * @param table depths [mm]
 * @param duration [s], within the table
 * @param returnPeriod [years], within the table
 * @param depths `table.depths` or one of its limits
 * @returns depth [mm]
 * Limits: throws rain.outsideTable beyond the table: nothing is extrapolated
 * Source: common practice for depth-duration-frequency tables; values at the table's own points are returned as they are
 * Checked against: fixtures/rain/rainfall.json, row 2.3, 5e-6 in
 */
export function depthAt(table: RainTable, duration: number, returnPeriod: number, depths: RainTable['depths'] = table.depths): number {
  const row = lowerIndex(table.durations, duration, 'duration');
  const column = lowerIndex(table.returnPeriods, returnPeriod, 'returnPeriod');
  return between(table.durations, row, duration, (r) => between(table.returnPeriods, column, returnPeriod, (c) => at(at(depths, r), c)));
}

/** Mean intensity [m/s] of a depth [mm] that falls in a duration [s]. */
export function intensityOf(depth: number, duration: number): number {
  return depth / 1000 / duration;
}

/**
 * Chance in a year of an average recurrence interval.
 *
 *   AEP = 1 - exp(-1/ARI)
 *
 * Source: Langbein 1949, as NOAA Atlas 14 uses it; citation from memory
 * Checked against: fixtures/rain/rainfall.json, row 2.8, 5e-6
 */
export function annualExceedance(recurrenceInterval: number): number {
  if (!(recurrenceInterval > 0)) throw new CalcProblem('value.notPositive', 'recurrenceInterval', { value: recurrenceInterval });
  return 1 - exp(-1 / recurrenceInterval);
}
