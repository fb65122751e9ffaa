import { requireNotNegative, requirePositive } from '../common/require.ts';
import { pow } from '../math/pow.ts';

export interface VSwale {
  /** Run of each side for one of height [-]. */
  readonly sideSlope: number;
  /** Fall per length; a swale always falls, so > 0. */
  readonly slope: number;
  /** Manning n; grass keeps shallow water back far more than deep. */
  readonly roughness: number;
}

/**
 * Depth, speed and width of a flow in a swale of V section.
 *
 *   A = m*y^2;  R = m*y / (2*sqrt(1 + m^2));  Q = A*R^(2/3)*S^(1/2)/n, solved for y:
 *   y = (n*Q/sqrt(S))^(3/8) * (4*(1 + m^2))^(1/8) / m^(5/8)
 *
 * @param swale sides, slope [-], n
 * @param flow  Q [m3/s], >= 0
 * @returns depth y [m], velocity [m/s], width of the surface [m]
 * Limits: uniform flow; n of grass lies between 0.05 and 0.20 at these depths, so both ends are to be tried
 * Source: Manning in a triangular channel, Chow 1959 chapter 6
 * Checked against: fixtures/swale/vSwale.json, 0.44 ft and 0.34 to 0.57 ft, half the last printed digit
 */
export function vSwale(swale: VSwale, flow: number): { readonly depth: number; readonly velocity: number; readonly topWidth: number } {
  requirePositive({ sideSlope: swale.sideSlope, slope: swale.slope, roughness: swale.roughness });
  requireNotNegative({ flow });
  if (flow === 0) return { depth: 0, velocity: 0, topWidth: 0 };
  const m = swale.sideSlope;
  const depth = (pow((swale.roughness * flow) / Math.sqrt(swale.slope), 3 / 8) * pow(4 * (1 + m * m), 1 / 8)) / pow(m, 5 / 8);
  return { depth, velocity: flow / (m * depth * depth), topWidth: 2 * m * depth };
}
