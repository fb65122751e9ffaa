import { CalcProblem } from '../common/problem.ts';
import { requirePositive } from '../common/require.ts';
import type { ScsType } from '../rain/scsDistribution.ts';

/** Source: TR-55 (1986) appendix F, table F-2. */
const COEFFICIENTS: Readonly<Record<ScsType, readonly [number, number, number, number]>> = {
  I: [0.66, -1.76, 1.96, -0.73], IA: [0.66, -1.76, 1.96, -0.73], II: [0.682, -1.43, 1.64, -0.804], III: [0.682, -1.43, 1.64, -0.804],
};
/** Ends of the figure. Source: TR-55 figure 6-1. */
const LEAST_RATIO = 0.1;
const MOST_RATIO = 0.8;
const ROUNDING = 1e-12;

/**
 * Storage that holds a peak down, as a share of the runoff: a first guess beside the routing.
 *
 *   V_s/V_r = C0 + C1*r + C2*r^2 + C3*r^3;  r = q_o/q_i
 *
 * @param type NRCS rainfall type
 * @param ratio r, peak outflow over peak inflow [-], 0.1 to 0.8
 * @returns V_s/V_r [-]
 * Limits: for a first size only, within about a quarter; throws runoff.outsideGraph beyond the figure
 * Source: TR-55 (1986), figure 6-1 and table F-2
 * Checked against: fixtures/runoff/unitHydrograph.json, row 5.det; fixtures/runoff/detentionCoefficients.csv
 */
export function detentionShare(type: ScsType, ratio: number): number {
  requirePositive({ ratio });
  if (ratio < LEAST_RATIO - ROUNDING || ratio > MOST_RATIO + ROUNDING) throw new CalcProblem('runoff.outsideGraph', 'ratio', { ratio, least: LEAST_RATIO, most: MOST_RATIO });
  const [c0, c1, c2, c3] = COEFFICIENTS[type];
  return c0 + ratio * (c1 + ratio * (c2 + ratio * c3));
}
