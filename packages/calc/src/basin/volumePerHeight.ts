import { requirePositive } from '../common/require.ts';
import { PI } from '../math/constants.ts';

/**
 * Volume of a round basin per height of water, its plan area.
 *
 *   A = pi/4 * D^2
 *
 * @param diameter D, inside [m], > 0
 * @returns A [m2]
 * Limits: straight walls; molded basins taper, so use measured fill marks for the proof
 * Source: geometry; extension rule 18 in about 1 gal/in, 24 in about 2
 * Checked against: fixtures/basin/ternHollow.json, 18, 24, 30, 36 in, 0.005 gal/in
 */
export function basinArea(diameter: number): number {
  requirePositive({ diameter });
  return (PI / 4) * diameter * diameter;
}
