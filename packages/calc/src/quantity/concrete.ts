import { CUBIC_FOOT, POUND } from '../common/constants.ts';
import { requireNotNegative, requirePositive } from '../common/require.ts';

/** Yield of bagged mix for each pound [m3]: 0.15 ft3 per 20 lb. Source: bag labels. */
const BAG_YIELD_PER_POUND = (0.15 / 20) * CUBIC_FOOT;
/** Hardened concrete, 150 lb/ft3 [kg/m3]. Source: FM 5-428 and common tables. */
const CONCRETE = (150 * POUND) / CUBIC_FOOT;

/**
 * Concrete that a bag of mix makes.
 *
 *   V = 0.15 ft3 per 20 lb
 *
 * @param bagMass [kg], > 0
 * @returns V [m3]
 * Source: makers' bag labels: 40, 50, 60, 80, 90 lb give 0.30, 0.375, 0.45, 0.60, 0.675 ft3
 * Checked against: fixtures/quantity/concrete.json, row 19.1
 */
export function bagYield(bagMass: number): number {
  requirePositive({ bagMass });
  return (bagMass / POUND) * BAG_YIELD_PER_POUND;
}

/** Whole bags for a volume [m3]. Checked against: row 19.3. */
export function bagsFor(volume: number, bagMass: number): number {
  requireNotNegative({ volume });
  return Math.floor(volume / bagYield(bagMass) + 1 - 1e-9);
}

/** Mass of hardened concrete [kg]: 150 lb/ft3. Checked against: rows 19.2 and 19.3. */
export function concreteMass(volume: number): number {
  requireNotNegative({ volume });
  return volume * CONCRETE;
}
