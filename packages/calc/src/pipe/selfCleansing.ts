import { GRAVITY, WATER_DENSITY } from '../common/constants.ts';
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

/**
 * Slope at which uniform flow drags on the wall with a stress.
 *
 *   S = tau / (rho*g*R)
 *
 * @param hydraulicRadius R of the flow [m], > 0
 * @param stress tau [Pa], > 0
 * @returns S [-]
 * Source: tractive stress of uniform flow, as in ASCE gravity sewer practice
 * Checked against: partFullPipe, whose stress it gives back, 1e-12
 */
export function tractiveSlope(hydraulicRadius: number, stress: number): number {
  requirePositive({ hydraulicRadius, stress });
  return stress / (WATER_DENSITY * GRAVITY * hydraulicRadius);
}
