import { requirePositive } from '../common/require.ts';
import { orificeFlow } from '../inlet/orifice.ts';
import { PI } from '../math/constants.ts';

/** Coefficient of a drilled hole. Source: N.J.A.C. 7:9A-9.7 hole discharge table, rows of 3, 4 and 5 ft. */
export const DRILLED_HOLE = 0.6;

/**
 * Flow that a weep hole returns to the basin while the pump runs.
 *
 *   Q = C * pi/4 * d^2 * sqrt(2*g*h)
 *
 * @param diameter d [m], > 0
 * @param head h, pressure head in the riser at the hole [m], >= 0
 * @returns Q [m3/s]
 * Source: orifice; C from N.J. Admin. Code 7:9A-9.7
 * Checked against: fixtures/pump/orificeNewJersey.csv, 30 values, 2 %
 */
export function weepHoleFlow(diameter: number, head: number): number {
  requirePositive({ diameter });
  return orificeFlow(DRILLED_HOLE, (PI / 4) * diameter * diameter, head);
}
