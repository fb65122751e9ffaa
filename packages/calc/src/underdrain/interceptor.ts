import { requireNotNegative, requirePositive } from '../common/require.ts';

/** What a conductivity guessed from the soil's texture is divided by before it is used. Source: ours: screening only. */
export const TEXTURE_REDUCTION = 5;

/**
 * Water that an interceptor drain across a slope takes, for each meter of drain.
 *
 *   q = K * i * d
 *
 * @param conductivity K of the soil [m/s], > 0
 * @param gradient i of the ground water, about the slope of the ground [-], > 0
 * @param thickness d of the wet layer that the drain cuts [m], >= 0
 * @returns q [m2/s]
 * Limits: a drain down to the tight layer takes all of it; d counts from that layer to the water table
 * Source: Darcy; NRCS Engineering Field Handbook chapter 14
 * Checked against: fixtures/underdrain/underdrain.json, worked by hand
 */
export function interceptorFlow(conductivity: number, gradient: number, thickness: number): number {
  requirePositive({ conductivity, gradient });
  requireNotNegative({ thickness });
  return conductivity * gradient * thickness;
}

/** Conductivity to design with [m/s]: that of a test, or a fifth of that of the texture class. Source: ours. */
export function designConductivity(conductivity: number, from: 'test' | 'texture'): number {
  requirePositive({ conductivity });
  return from === 'test' ? conductivity : conductivity / TEXTURE_REDUCTION;
}
