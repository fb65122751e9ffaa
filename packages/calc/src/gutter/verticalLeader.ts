import { GALLON_PER_MINUTE, INCH } from '../common/constants.ts';
import { requirePositive, requireShare } from '../common/require.ts';
import { pow } from '../math/pow.ts';

/** Share of the bore that water fills in a leader: the plumbing-code table. */
export const LEADER_FULLNESS = 7 / 24;

/**
 * Flow that a vertical leader carries as a film on its wall.
 *
 *   q = 27.8 * r^(5/3) * d^(8/3)     q in gpm, d in inches
 *
 * @param diameter d [m], > 0
 * @param fullness r, share of the bore filled [-]
 * @returns q [m3/s]
 * Limits: plain round leaders of 2 to 15 in; outlets and elbows can carry less
 * Source: Wyly and Eaton, National Bureau of Standards; 2006 National Standard Plumbing Code table 13.6.1
 * Checked against: fixtures/gutter/verticalLeaders.csv, all 9 rows, 0.5 gpm (printed whole)
 */
export function leaderCapacity(diameter: number, fullness: number = LEADER_FULLNESS): number {
  requirePositive({ diameter, fullness });
  requireShare({ fullness });
  return 27.8 * pow(fullness, 5 / 3) * pow(diameter / INCH, 8 / 3) * GALLON_PER_MINUTE;
}

/** Diameter of a leader that just carries a flow [m]: the same formula turned round. */
export function leaderDiameterFor(flow: number, fullness: number = LEADER_FULLNESS): number {
  requirePositive({ flow, fullness });
  requireShare({ fullness });
  return INCH * pow(flow / GALLON_PER_MINUTE / (27.8 * pow(fullness, 5 / 3)), 3 / 8);
}

/** Roof area that a leader serves in a rain [m2]: its flow over the intensity [m/s]. */
export function leaderArea(diameter: number, intensity: number): number {
  requirePositive({ intensity });
  return leaderCapacity(diameter) / intensity;
}
