import { CalcProblem } from '../common/problem.ts';
import { requireNotNegative, requirePositive } from '../common/require.ts';

export interface ReliefSoil {
  readonly conductivity: number;
  /** Depth of the tight layer below the drain [m]; 0 when the drain lies on it. */
  readonly layerBelow: number;
  /** Height of the water table over the drain, midway between two drains [m]. */
  readonly waterAbove: number;
}

function requireSoil(soil: ReliefSoil): void {
  requirePositive({ conductivity: soil.conductivity, waterAbove: soil.waterAbove });
  requireNotNegative({ layerBelow: soil.layerBelow });
}

/**
 * Spacing of relief drains that keep the water table down under a steady inflow (ellipse equation).
 *
 *   S = sqrt(4*K*(m^2 + 2*a*m) / q)
 *
 * @param soil K [m/s], a below and m above the drain [m]
 * @param recharge q, what reaches the water table [m/s], > 0
 * @returns S [m]
 * Limits: a up to a quarter of the spacing; beyond, flow toward the drain from below makes it too wide
 * Source: NRCS Engineering Field Handbook chapter 14, ellipse equation (Hooghoudt)
 * Checked against: fixtures/underdrain/underdrain.json, worked by hand
 */
export function reliefSpacing(soil: ReliefSoil, recharge: number): number {
  requireSoil(soil);
  requirePositive({ recharge });
  return Math.sqrt((4 * soil.conductivity * soil.waterAbove * (soil.waterAbove + 2 * soil.layerBelow)) / recharge);
}

/**
 * Steady water that relief drains at a spacing take from the ground: the ellipse equation turned round.
 *
 *   q = 4*K*(m^2 + 2*a*m) / S^2;  each meter of drain takes q*S
 *
 * @param soil K [m/s], a below and m above the drain [m]
 * @param spacing S [m], > 0
 * @returns q [m/s], and the flow of each meter of drain, from both sides [m2/s]
 * Source and check: as reliefSpacing
 */
export function reliefFlow(soil: ReliefSoil, spacing: number): { readonly recharge: number; readonly perLength: number } {
  requireSoil(soil);
  requirePositive({ spacing });
  const recharge = (4 * soil.conductivity * soil.waterAbove * (soil.waterAbove + 2 * soil.layerBelow)) / (spacing * spacing);
  return { recharge, perLength: recharge * spacing };
}

/**
 * Water that comes to a drain from one side, without recharge on the way (Dupuit).
 *
 *   q = K*(H^2 - h^2) / (2*L)
 *
 * @param conductivity K [m/s], > 0
 * @param far  H, height of the water table over the tight layer at the distance [m], >= near
 * @param near h, height of the water in the drain over the tight layer [m], >= 0
 * @param distance L [m], > 0
 * @returns q [m2/s] per meter of drain and side
 * Limits: flow near level; throws underdrain.uphill when the far water stands lower
 * Source: Dupuit 1863, in handbooks of ground water
 * Checked against: fixtures/underdrain/underdrain.json, worked by hand; small differences give Darcy's K*i*d
 */
export function dupuitFlow(conductivity: number, far: number, near: number, distance: number): number {
  requirePositive({ conductivity, distance });
  requireNotNegative({ far, near });
  if (far < near) throw new CalcProblem('underdrain.uphill', 'far', { far, near });
  return (conductivity * (far - near) * (far + near)) / (2 * distance);
}
