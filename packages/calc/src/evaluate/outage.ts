import { MINUTE } from '../common/constants.ts';
import type { OutageResult } from '../results/results.ts';
import { outagePeriod, type EvaluationContext } from './context.ts';
import type { OutageSearch } from './outageSearch.ts';

/** Lengths shown [s]. Source: the trade's what-if list. */
const shownDurations = [15 * MINUTE, 30 * MINUTE, 60 * MINUTE] as const;
/** Longest outage that is searched [s]: beyond it the answer is "four hours or more". Source: ours. */
export const longestOutage = 240 * MINUTE;

/** Longest outage in whole minutes that leaves no sill short, whenever it starts. A longer one is never better. */
function longestSafe(search: OutageSearch, shown: readonly { readonly duration: number; readonly worstFreeboard: number }[]): number {
  let low = 0;
  let high = longestOutage;
  for (const { duration, worstFreeboard } of shown) {
    if (worstFreeboard >= 0) low = Math.max(low, duration);
    else high = Math.min(high, duration);
  }
  if (low === 0 && !search.isSafe(0)) return 0;
  if (high === longestOutage && search.isSafe(longestOutage)) return longestOutage;
  while (high - low > MINUTE) {
    const middle = Math.floor((low + high) / 2 / MINUTE) * MINUTE;
    if (search.isSafe(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** How long the power may be out in the 10-year storm (or the nearest that the table holds). Null without a pump. */
export function outage(context: EvaluationContext): OutageResult | null {
  const returnPeriod = context.periods.includes(outagePeriod) ? outagePeriod : context.periods[0];
  if (!context.hasPump || context.sills.length === 0 || returnPeriod === undefined) return null;
  const search = context.outageSearch(returnPeriod);
  const cases = shownDurations.map((duration) => ({
    duration, worstFreeboard: search.worst(duration).freeboard, fromPeak: search.freeboard(context.peakTime, duration),
  }));
  return { returnPeriod, longestSafe: longestSafe(search, cases), cases };
}
