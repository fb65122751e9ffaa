import { FOOT, HOUR, INCH } from '../common/constants.ts';
import { CalcProblem } from '../common/problem.ts';
import { requirePositive } from '../common/require.ts';
import { pow } from '../math/pow.ts';

/** Longest sheet flow of the method: 300 ft [m]. Source: TR-55 (1986) chapter 3. */
export const LONGEST_SHEET = 300 * FOOT;

/**
 * Travel time of sheet flow.
 *
 *   t[h] = 0.007*(n*L)^0.8 / (P2^0.5 * s^0.4)     L in ft, P2 in inches
 *
 * @param roughness n of sheet flow, > 0
 * @param length L [m], > 0
 * @param rain2Year P2, 2-year 24-hour depth [mm], > 0
 * @param slope s [-], > 0
 * @returns t [s]
 * Limits: up to 300 ft (later guidance 100 ft, from memory), throws runoff.sheetFlowTooLong beyond; for the hand check, the routing uses the kinematic plane
 * Source: USDA TR-55 (1986), equation 3-3
 * Checked against: fixtures/runoff/travelTime.json, rows 6.1 and 6.4, 1e-4
 */
export function sheetFlowTime(roughness: number, length: number, rain2Year: number, slope: number): number {
  requirePositive({ roughness, length, rain2Year, slope });
  if (length > LONGEST_SHEET * (1 + 1e-9)) throw new CalcProblem('runoff.sheetFlowTooLong', 'length', { length, longest: LONGEST_SHEET });
  const inches = rain2Year / (INCH * 1000);
  return (0.007 * pow((roughness * length) / FOOT, 0.8) * HOUR) / (Math.sqrt(inches) * pow(slope, 0.4));
}
