import { CalcProblem } from '../common/problem.ts';
import { requireNotNegative } from '../common/require.ts';
import { afterDryStep, type Recovery } from './storeRecovery.ts';

/** Share of the retention that is lost before runoff begins. Source: TR-55 equation 2-2. */
export const INITIAL_ABSTRACTION = 0.2;

/**
 * Runoff depth of a storm by the NRCS curve number.
 *
 *   S = 25.4*(1000/CN - 10);  Q = (P - 0.2*S)^2 / (P + 0.8*S) for P > 0.2*S, else 0
 *
 * @param rain P [mm], >= 0
 * @param curveNumber CN [-], above 0 and up to 100
 * @returns Q [mm]
 * Limits: per surface, never an averaged curve number; poor under 12.7 mm of runoff (TR-55 chapter 2, limitations)
 * Source: USDA TR-55 (1986), equations 2-1 to 2-4
 * Checked against: fixtures/runoff/curveNumberDepth.csv (TR-55 table 2-1), 285 of 286 entries to 0.005 in; the entry P 7, CN 50 is misprinted
 */
export function curveNumberRunoff(rain: number, curveNumber: number): number {
  requireNotNegative({ rain });
  const retention = retentionOf(curveNumber);
  const excess = rain - INITIAL_ABSTRACTION * retention;
  return excess <= 0 ? 0 : (excess * excess) / (rain + (1 - INITIAL_ABSTRACTION) * retention);
}

/** Greatest retention S [mm] of a curve number. Source: TR-55 equation 2-4. */
export function retentionOf(curveNumber: number): number {
  if (!(curveNumber > 0 && curveNumber <= 100)) throw new CalcProblem('runoff.curveNumber', 'curveNumber', { value: curveNumber });
  return 25.4 * (1000 / curveNumber - 10);
}

/** Rain that a curve number keeps before runoff begins, Ia [mm]. Source: TR-55 equation 2-2. */
export function initialAbstraction(curveNumber: number): number {
  return INITIAL_ABSTRACTION * retentionOf(curveNumber);
}

/**
 * Runoff of each block of a storm: the difference of the running total, which the method was made for.
 *
 * @param rain depth of each block [mm]
 * @param curveNumber CN [-]
 * @param recovery how the running total fades in dry blocks; null for one storm
 * @returns runoff of each block [mm]
 * Source: TR-55 (1986); fading: ours, see storeRecovery
 * Checked against: curveNumberRunoff of the whole storm, 1e-9; two storms a day apart are two first storms
 */
export function curveNumberExcess(rain: readonly number[], curveNumber: number, recovery: Recovery | null = null): number[] {
  let total = 0;
  let before = 0;
  let dry = 0;
  return rain.map((depth) => {
    if (depth === 0 && recovery !== null) {
      dry += recovery.step;
      total = afterDryStep(total, dry, recovery);
      before = curveNumberRunoff(total, curveNumber);
      return 0;
    }
    dry = 0;
    total += depth;
    const runoff = curveNumberRunoff(total, curveNumber);
    const part = runoff - before;
    before = runoff;
    return part;
  });
}
