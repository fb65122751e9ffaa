import { requireNotNegative, requirePositive } from '../common/require.ts';
import type { CandidateOutlet } from '../document/document.ts';
import { gravityFall, MINIMUM_FALL, OUTLET_MARGIN } from './gravityFall.ts';
import type { ReducedLevels } from './levelBook.ts';

/** `tight`: it falls, but less than the height kept in hand is left. `cannotTell`: the levels are not good enough to say. */
export type GravityVerdict = 'works' | 'tight' | 'cannotTell' | 'short';

export interface GravityWithBand {
  readonly outlet: string;
  readonly name: string;
  /** Collector invert less outlet level [m]; negative when the outlet stands higher. */
  readonly fallAvailable: number;
  /** Length times least slope, and the water at the outlet [m]. */
  readonly fallNeeded: number;
  /** Available less needed [m]. */
  readonly margin: number;
  /** Half width of the band in which the margin lies [m]. */
  readonly uncertainty: number;
  /** Slope that the levels leave to the pipe, under the water at the outlet [-]. */
  readonly slope: number;
  readonly verdict: GravityVerdict;
}

/**
 * How far a difference of two levels of one book may be wrong: what a run is allowed to miss, or what it did miss when that is more.
 *
 * @param reduced misclosure and what is allowed [m]
 * @returns half width of the band [m]; for a run that is not closed, the most that would still be passed with a caution
 * Limits: a blunder in a run that is not closed is larger than any band
 * Source: ours, check L1
 * Checked against: each case by hand
 */
export function levelUncertainty({ misclosure, allowable }: Pick<ReducedLevels, 'misclosure' | 'allowable'>): number {
  return misclosure === null ? allowable.warn : Math.max(allowable.pass, Math.abs(misclosure));
}

/**
 * Whether gravity can carry the water to a candidate outlet, with the doubt that the survey leaves.
 *
 *   margin = (collector invert - outlet level) - (S*L + tailwater)
 *
 * @param outlet      levels and distance [m], distance > 0
 * @param uncertainty half width of the band of the margin [m]
 * @param minimumFall S [-]
 * @param inHand      height wanted beyond it [m]
 * @returns the falls, the margin, and `cannotTell` when the band spans zero
 * Source: geometry; least slope and height in hand of check L4
 * Checked against: fixtures/levels/ternHollow.json, row fall; hand-worked books
 */
export function gravityWithBand(outlet: CandidateOutlet, uncertainty: number, minimumFall: number = MINIMUM_FALL, inHand: number = OUTLET_MARGIN): GravityWithBand {
  requireNotNegative({ uncertainty });
  requirePositive({ distance: outlet.distance });
  const margin = -gravityFall(outlet, minimumFall, inHand).shortfall;
  const fallAvailable = outlet.collectorInvert - outlet.level;
  return {
    outlet: outlet.id, name: outlet.name, fallAvailable, fallNeeded: minimumFall * outlet.distance + outlet.tailwater, margin, uncertainty,
    slope: (fallAvailable - outlet.tailwater) / outlet.distance, verdict: verdictOf(margin, uncertainty, inHand),
  };
}

function verdictOf(margin: number, uncertainty: number, inHand: number): GravityVerdict {
  if (margin + uncertainty < 0) return 'short';
  if (margin - uncertainty < 0) return 'cannotTell';
  return margin - uncertainty < inHand ? 'tight' : 'works';
}
