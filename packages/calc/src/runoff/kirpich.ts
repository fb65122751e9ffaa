import { FOOT, MINUTE } from '../common/constants.ts';
import { requirePositive } from '../common/require.ts';
import { pow } from '../math/pow.ts';

/**
 * Time of concentration after Kirpich.
 *
 *   t[min] = 0.0078 * L^0.77 * S^-0.385     L in ft
 *
 * @param length L, longest path of the water [m], > 0
 * @param slope S, mean [-], > 0
 * @returns t [s]
 * Limits: made for small farm watersheds
 * Source: TxDOT Hydraulic Design Manual, equation 4-15
 * Checked against: fixtures/runoff/travelTime.json, row 6.6, 1e-4
 */
export function kirpichTime(length: number, slope: number): number {
  requirePositive({ length, slope });
  return 0.0078 * pow(length / FOOT, 0.77) * pow(slope, -0.385) * MINUTE;
}
