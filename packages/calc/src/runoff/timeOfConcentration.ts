import { FOOT, HOUR, INCH, MINUTE } from '../common/constants.ts';
import { requirePositive } from '../common/require.ts';
import { pow } from '../math/pow.ts';

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
 * Limits: up to 300 ft (later guidance 100 ft, from memory); for the hand check, the routing uses the kinematic plane
 * Source: USDA TR-55 (1986), equation 3-3
 * Checked against: fixtures/runoff/travelTime.json, rows 6.1 and 6.4, 1e-4
 */
export function sheetFlowTime(roughness: number, length: number, rain2Year: number, slope: number): number {
  requirePositive({ roughness, length, rain2Year, slope });
  const inches = rain2Year / (INCH * 1000);
  return (0.007 * pow((roughness * length) / FOOT, 0.8) * HOUR) / (Math.sqrt(inches) * pow(slope, 0.4));
}

/** Velocity over slope^0.5 of shallow concentrated flow [ft/s]. Source: TR-55 appendix F, from memory. */
const SHALLOW = { unpaved: 16.1345, paved: 20.3282 } as const;

/**
 * Velocity of shallow concentrated flow.
 *
 *   v = k * s^0.5
 *
 * @param surface unpaved or paved
 * @param slope s [-], > 0
 * @returns v [m/s]
 * Source: USDA TR-55 (1986), figure 3-1 and appendix F
 * Checked against: fixtures/runoff/travelTime.json, row 6.2, 1e-5
 */
export function shallowFlowVelocity(surface: keyof typeof SHALLOW, slope: number): number {
  requirePositive({ slope });
  return SHALLOW[surface] * FOOT * Math.sqrt(slope);
}

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
