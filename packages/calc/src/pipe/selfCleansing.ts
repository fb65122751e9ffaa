import { requirePositive } from '../common/require.ts';
import { pow } from '../math/pow.ts';

/**
 * Slope at which a pipe running full reaches a velocity.
 *
 *   S = (v*n / (D/4)^(2/3))^2
 *
 * @param diameter D [m], > 0
 * @param velocity v [m/s], > 0
 * @param roughness n, > 0
 * @returns S [-]
 * Source: Manning; 2 ft/s as the long-used least velocity, tables of minimum sewer slopes
 * Checked against: fixtures/pipe/gravityPipe.json, rows 10.1, 10.2, 10.4, half the last printed digit
 */
export function selfCleansingSlope(diameter: number, velocity: number, roughness: number): number {
  requirePositive({ diameter, velocity, roughness });
  const root = (velocity * roughness) / pow(diameter / 4, 2 / 3);
  return root * root;
}
