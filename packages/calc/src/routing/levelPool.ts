import { CalcProblem } from '../common/problem.ts';
import { at, requireNotNegative, requirePositive } from '../common/require.ts';

/** Storage [m3] and outflow [m3/s] at rising water levels. */
export interface StorageOutflow {
  readonly storage: number;
  readonly outflow: number;
}

function checkPairs(pairs: readonly StorageOutflow[]): void {
  if (pairs.length < 2) throw new CalcProblem('levelPool.tooFewPairs', 'pairs', { count: pairs.length });
  pairs.forEach((pair, i) => {
    requireNotNegative({ [`pairs/${i}/storage`]: pair.storage, [`pairs/${i}/outflow`]: pair.outflow });
    const before = pairs[i - 1];
    if (before !== undefined && (pair.storage <= before.storage || pair.outflow < before.outflow)) {
      throw new CalcProblem('levelPool.notRising', `pairs/${i}`, { storage: pair.storage, outflow: pair.outflow });
    }
  });
}

/** y at x on straight lines between points; the last line goes on beyond the table. */
function along(xs: readonly number[], ys: readonly number[], x: number): number {
  let i = xs.length - 2;
  while (i > 0 && at(xs, i) > x) i -= 1;
  const x1 = at(xs, i);
  return at(ys, i) + ((at(ys, i + 1) - at(ys, i)) * (x - x1)) / (at(xs, i + 1) - x1);
}

/**
 * Outflow of a level pool by storage indication.
 *
 *   2*S2/dt + O2 = I1 + I2 + (2*S1/dt - O1)
 *
 * @param pairs storage and outflow, rising together
 * @param inflow at the beginning of each step and at the end of the last [m3/s]
 * @param step dt [s], > 0
 * @param firstOutflow O at the start [m3/s]
 * @returns outflow at the same times [m3/s], and storage [m3]
 * Limits: one outflow for one storage; the check of the coupled routing, not its method
 * Source: Chow, Maidment and Mays 1988, section 8.2; NEH 630 chapter 17 (from memory)
 * Checked against: fixtures/routing/linearReservoir.json, 26 values, 0.001; volume balance of every step
 */
export function levelPool(
  pairs: readonly StorageOutflow[], inflow: readonly number[], step: number, firstOutflow: number,
): { readonly outflow: readonly number[]; readonly storage: readonly number[] } {
  checkPairs(pairs);
  requirePositive({ step });
  requireNotNegative({ firstOutflow });
  const storages = pairs.map((pair) => pair.storage);
  const outflows = pairs.map((pair) => pair.outflow);
  const indication = pairs.map((pair) => (2 * pair.storage) / step + pair.outflow);
  const outflow = [firstOutflow];
  const storage = [along(outflows, storages, firstOutflow)];
  for (let i = 1; i < inflow.length; i += 1) {
    const s1 = at(storage, i - 1);
    const right = at(inflow, i - 1) + at(inflow, i) + (2 * s1) / step - at(outflow, i - 1);
    const o2 = Math.max(along(indication, outflows, right), 0);
    outflow.push(o2);
    storage.push(((right - o2) * step) / 2);
  }
  return { outflow, storage };
}
