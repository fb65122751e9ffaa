import { CalcProblem } from '../common/problem.ts';
import { requirePositive } from '../common/require.ts';

/**
 * Time that water takes along a path of several stretches, one after the other.
 *
 *   Tc = sum(L_i / v_i)
 *
 * @param stretches length [m] and velocity [m/s] of each
 * @returns Tc [s]
 * Limits: throws runoff.noStretch without any
 * Source: USDA TR-55 (1986), equations 3-1 and 3-2
 * Checked against: fixtures/runoff/travelTime.json, row 6.3 (example 3-1, 1.53 h)
 */
export function travelTime(stretches: readonly { readonly length: number; readonly velocity: number }[]): number {
  if (stretches.length === 0) throw new CalcProblem('runoff.noStretch', 'stretches', {});
  let time = 0;
  stretches.forEach((stretch, i) => {
    requirePositive({ [`stretches/${i}/length`]: stretch.length, [`stretches/${i}/velocity`]: stretch.velocity });
    time += stretch.length / stretch.velocity;
  });
  return time;
}
