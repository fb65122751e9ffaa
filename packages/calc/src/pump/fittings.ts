import { GRAVITY } from '../common/constants.ts';
import { requireNotNegative, requirePositive } from '../common/require.ts';

/** K and length over diameter of screwed fittings. Source: 2018 IRC appendix A, table A.2.2. */
export const SCREWED_FITTINGS = {
  bend45: { k: 0.42, lengthOverDiameter: 14 },
  bend90: { k: 0.9, lengthOverDiameter: 30 },
  closeReturn: { k: 2.0, lengthOverDiameter: 67 },
  tee: { k: 1.8, lengthOverDiameter: 60 },
} as const;

/** K where water enters a pipe from still water with a sharp edge, and where it comes to rest. Source: handbooks; 0.57 (Rennels) and 0.51 (Miller) are measured on sharp edges. */
export const END_LOSSES = { sharpEntrance: 0.5, exit: 1 } as const;

/**
 * Head lost in a fitting.
 *
 *   h = K * v^2 / (2*g)
 *
 * @param k K [-], >= 0
 * @param velocity v [m/s], >= 0
 * @returns h [m]
 * Source: handbooks of pipe flow
 * Checked against: fixtures/pump/fittings.json (K 0.9 at 3 ft/s), 1e-4 ft
 */
export function minorLoss(k: number, velocity: number): number {
  requireNotNegative({ k, velocity });
  return (k * velocity * velocity) / (2 * GRAVITY);
}

/**
 * Length of straight pipe that loses as much as a fitting.
 *
 *   L = K * D / f
 *
 * @param k K [-]
 * @param diameter D [m]
 * @param frictionFactor f, Darcy [-]
 * @returns L [m]
 * Source: handbooks of pipe flow
 * Checked against: minorLoss of the same K, 1e-12
 */
export function equivalentLength(k: number, diameter: number, frictionFactor: number): number {
  requireNotNegative({ k });
  requirePositive({ diameter, frictionFactor });
  return (k * diameter) / frictionFactor;
}

/**
 * Equivalent length of a screwed fitting from its length over diameter.
 *
 * @param fitting kind
 * @param diameter inside [m]
 * @returns L [m]
 * Source and check: 2018 IRC appendix A table A.2.2, fixtures/pump/screwedFittings.csv, 1 % (printed to three figures)
 */
export function screwedEquivalentLength(fitting: keyof typeof SCREWED_FITTINGS, diameter: number): number {
  requirePositive({ diameter });
  return SCREWED_FITTINGS[fitting].lengthOverDiameter * diameter;
}

/** Length of a line with its fittings as straight pipe [m]. */
export function lineEquivalentLength(length: number, fittings: readonly { readonly count: number; readonly equivalentLength: number }[]): number {
  requireNotNegative({ length });
  let total = length;
  for (const fitting of fittings) {
    requireNotNegative({ count: fitting.count, equivalentLength: fitting.equivalentLength });
    total += fitting.count * fitting.equivalentLength;
  }
  return total;
}
