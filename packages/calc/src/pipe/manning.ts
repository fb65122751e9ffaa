import { GRAVITY, WATER_DENSITY } from '../common/constants.ts';
import { requireNotNegative, requirePositive } from '../common/require.ts';
import { bracketedRoot } from '../math/bracketedRoot.ts';
import { pow } from '../math/pow.ts';
import { circleSection } from './circleSection.ts';

/** Depth ratio of the greatest flow of a part-full pipe with constant n. Source: hydraulic elements, recomputed. */
export const DEPTH_OF_MOST_FLOW = 0.93818;

export interface GravityPipe {
  readonly diameter: number;
  /** Fall per length; a drain pipe always falls, so > 0. */
  readonly slope: number;
  /** Manning n. */
  readonly roughness: number;
}

/**
 * Mean velocity of uniform flow (Manning).
 *
 *   v = R^(2/3) * S^(1/2) / n
 *
 * @param hydraulicRadius R [m], > 0
 * @param slope S [-], > 0
 * @param roughness n [s/m^(1/3)], > 0
 * @returns v [m/s]
 * Source: Chow 1959, chapter 5
 * Checked against: fixtures/pipe/gravityPipe.json (Cengel and Cimbala example, 1e-8)
 */
export function manningVelocity(hydraulicRadius: number, slope: number, roughness: number): number {
  requirePositive({ hydraulicRadius, slope, roughness });
  return (pow(hydraulicRadius, 2 / 3) * Math.sqrt(slope)) / roughness;
}

/**
 * Flow and velocity of a pipe running just full, not under pressure.
 *
 * @param pipe diameter [m], slope [-], n
 * @returns flow [m3/s], velocity [m/s]
 * Source: Manning, as above
 * Checked against: fixtures/pipe/gravityPipe.json, 3, 4 and 6 in at four slopes, 0.1 gpm
 */
export function fullPipe(pipe: GravityPipe): { readonly flow: number; readonly velocity: number } {
  const section = circleSection(pipe.diameter, 1);
  const velocity = manningVelocity(section.hydraulicRadius, pipe.slope, pipe.roughness);
  return { flow: velocity * section.area, velocity };
}

export interface PartFullFlow {
  readonly depthRatio: number;
  readonly depth: number;
  readonly area: number;
  readonly velocity: number;
  /** Mean shear on the wetted wall [Pa]. */
  readonly tractiveStress: number;
  readonly surcharged: boolean;
}

function flowAtRatio(pipe: GravityPipe, ratio: number): number {
  const section = circleSection(pipe.diameter, ratio);
  return section.area * manningVelocity(section.hydraulicRadius, pipe.slope, pipe.roughness);
}

/**
 * Depth, velocity and tractive stress of a flow in a pipe.
 *
 *   Q = A * R^(2/3) * S^(1/2) / n;  tau = rho*g*R*S
 *
 * @param pipe diameter [m], slope [-], n constant with depth
 * @param flow Q [m3/s], >= 0
 * @returns the lower of the two depths; a flow above the greatest open flow runs full (`surcharged`)
 * Source: Manning; hydraulic elements of Chow 1959; tractive stress as in ASCE gravity sewer practice
 * Checked against: fixtures/pipe/partFullCircle.csv and gravityPipe.json (y/D at Q/Qf 0.25 and 0.75), 1e-5
 */
export function partFullPipe(pipe: GravityPipe, flow: number): PartFullFlow {
  requireNotNegative({ flow });
  requirePositive({ slope: pipe.slope, roughness: pipe.roughness });
  if (flow === 0) return { depthRatio: 0, depth: 0, area: 0, velocity: 0, tractiveStress: 0, surcharged: false };
  const surcharged = flow > flowAtRatio(pipe, DEPTH_OF_MOST_FLOW);
  const depthRatio = surcharged ? 1 : bracketedRoot((r) => flowAtRatio(pipe, r) - flow, 1e-6, DEPTH_OF_MOST_FLOW, 1e-13);
  const section = circleSection(pipe.diameter, depthRatio);
  return {
    depthRatio, depth: depthRatio * pipe.diameter, area: section.area, velocity: flow / section.area,
    tractiveStress: WATER_DENSITY * GRAVITY * section.hydraulicRadius * pipe.slope, surcharged,
  };
}
