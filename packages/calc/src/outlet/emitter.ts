import { GRAVITY, WATER_DENSITY } from '../common/constants.ts';
import { requireNotNegative, requirePositive, requireShare } from '../common/require.ts';

export interface Emitter {
  /** Mass of the lid and what its spring presses, as a mass [kg]. */
  readonly lidMass: number;
  /** Area of the lid that the water presses on [m2]. */
  readonly lidArea: number;
  /** Opening around the open lid [m2] and its orifice coefficient. */
  readonly openArea: number;
  readonly coefficient: number;
}

/** Water over the lid of an outlet on a wet lawn: 0.1 ft [m]. Source: ours, the default tailwater. */
export const FLOODED_LAWN = 0.03048;

/**
 * Head that lifts the lid of a pop-up emitter.
 *
 *   h = m / (rho*A)
 *
 * @param lidMass m [kg], >= 0
 * @param lidArea A [m2], > 0
 * @returns h [m]
 * Source: equilibrium of the lid
 * Checked against: fixtures/outlet/emitter.json, worked by hand
 */
export function openingHead(lidMass: number, lidArea: number): number {
  requireNotNegative({ lidMass });
  requirePositive({ lidArea });
  return lidMass / (WATER_DENSITY * lidArea);
}

/**
 * Head that an emitter needs over its rim at a flow: at least to lift the lid, then as an opening.
 *
 *   h = max(m/(rho*A), (Q/(C*a*(1 - b)))^2/(2*g))
 *
 * @param emitter lid and opening
 * @param flow Q [m3/s], >= 0
 * @param blocked b, share of the opening that grass and soil hold shut [-], below 1; the half-blocked case is 0.5
 * @returns h [m]; 0 without flow
 * Source: equilibrium of the lid; orifice equation
 * Checked against: fixtures/outlet/emitter.json, worked by hand; half blocked asks four times the head of the opening
 */
export function emitterHead(emitter: Emitter, flow: number, blocked = 0): number {
  requirePositive({ openArea: emitter.openArea, coefficient: emitter.coefficient, left: 1 - blocked });
  requireShare({ blocked });
  requireNotNegative({ flow });
  const lift = openingHead(emitter.lidMass, emitter.lidArea);
  if (flow === 0) return 0;
  const velocity = flow / (emitter.coefficient * emitter.openArea * (1 - blocked));
  return Math.max(lift, (velocity * velocity) / (2 * GRAVITY));
}

/** Level of the water that an outlet works against in a storm [m]: its own tailwater, or a flooded lawn over the lid. Source: ours. */
export function stormTailwater(lidLevel: number, known: number | null): number {
  return known ?? lidLevel + FLOODED_LAWN;
}
