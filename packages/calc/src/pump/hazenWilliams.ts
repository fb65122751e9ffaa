import { requireNotNegative, requirePositive } from '../common/require.ts';
import { pow } from '../math/pow.ts';

/** Ends of the range in which the formula is used here: 1 1/4 to 3 in pipe, 2 to 8 ft/s. Source: ours, after handbooks. */
export const HAZEN_WILLIAMS_VELOCITY = { from: 0.6, to: 2.45 } as const;

/** Source: handbooks, new plastic pipe 150; design with 140 for age. */
export const C_NEW_PLASTIC = 150;
export const C_DESIGN = 140;

/**
 * Friction of a full pipe, head lost per length.
 *
 *   S = 10.67 * Q^1.852 / (C^1.852 * D^4.8704)
 *
 * @param flow Q [m3/s], >= 0
 * @param diameter D, inside [m], > 0
 * @param c Hazen-Williams C [-], > 0
 * @returns S [m/m]
 * Limits: water near 15 C, turbulent; 2 to 8 ft/s
 * Source: Hazen-Williams in SI, as in handbooks of pipe flow
 * Checked against: fixtures/pump/hazenWilliamsIllinois.csv, 97 entries (3 % from 10 gpm where printed to three figures, else the printed digit)
 */
export function hazenWilliamsSlope(flow: number, diameter: number, c: number): number {
  requireNotNegative({ flow });
  requirePositive({ diameter, c });
  return (10.67 * pow(flow / c, 1.852)) / pow(diameter, 4.8704);
}
