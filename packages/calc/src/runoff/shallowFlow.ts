import { FOOT } from '../common/constants.ts';
import { requirePositive } from '../common/require.ts';

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
