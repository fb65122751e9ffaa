import { requireFinite, requireNotNegative } from '../common/require.ts';
import type { CandidateOutlet } from '../document/document.ts';
import type { GravityAnswer } from '../results/results.ts';
import { INCH } from '../common/constants.ts';

/** Least fall of a pipe that may be designed: 0.5 %. Source: check L4; WSU drain guidance 0.5 to 1 %. */
export const MINIMUM_FALL = 0.005;

/** Height kept in hand at the outlet. Source: ours, check L4. */
export const OUTLET_MARGIN = 2 * INCH;

/**
 * How far gravity is short of a candidate outlet, or to spare.
 *
 *   needed = collector invert - S*L;  shortfall = (outlet level + tailwater) - needed
 *
 * @param outlet levels and distance [m]
 * @param minimumFall S [-]
 * @param margin height in hand [m]
 * @returns shortfall [m], positive when the outlet stands too high
 * Source: geometry
 * Checked against: fixtures/levels/ternHollow.json, row fall: 0.90 and 1.00 ft, with margin 1.07 and 1.17 ft
 */
export function gravityFall(outlet: CandidateOutlet, minimumFall: number = MINIMUM_FALL, margin: number = OUTLET_MARGIN): GravityAnswer {
  requireFinite({ level: outlet.level, collectorInvert: outlet.collectorInvert });
  requireNotNegative({ distance: outlet.distance, tailwater: outlet.tailwater, minimumFall, margin });
  const neededLevel = outlet.collectorInvert - minimumFall * outlet.distance;
  const shortfall = outlet.level + outlet.tailwater - neededLevel;
  const shortfallWithMargin = shortfall + margin;
  return { outlet: outlet.id, neededLevel, shortfall, shortfallWithMargin, feasible: shortfallWithMargin <= 0 };
}
