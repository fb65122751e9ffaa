import { CalcProblem } from '../common/problem.ts';
import { requireNotNegative } from '../common/require.ts';

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
  if (!(curveNumber > 0 && curveNumber <= 100)) throw new CalcProblem('runoff.curveNumber', 'curveNumber', { value: curveNumber });
  const retention = 25.4 * (1000 / curveNumber - 10);
  const excess = rain - INITIAL_ABSTRACTION * retention;
  return excess <= 0 ? 0 : (excess * excess) / (rain + (1 - INITIAL_ABSTRACTION) * retention);
}

/** Runoff of each block of a storm [mm]: the difference of the running total, which the method was made for. */
export function curveNumberExcess(rain: readonly number[], curveNumber: number): number[] {
  let total = 0;
  let before = 0;
  return rain.map((depth) => {
    total += depth;
    const runoff = curveNumberRunoff(total, curveNumber);
    const part = runoff - before;
    before = runoff;
    return part;
  });
}
