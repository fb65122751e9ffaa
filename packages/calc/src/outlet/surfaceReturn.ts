import { requireFinite, requireNotNegative, requirePositive } from '../common/require.ts';
import { pow } from '../math/pow.ts';

export interface SurfaceReturn {
  /** Fall from the outlet's ground back to the low spot over the distance [-]; above 0 the water runs back. */
  readonly slope: number;
  readonly returns: boolean;
}

/**
 * Whether water that comes out at an outlet finds its way back to the low spot it came from.
 *
 *   S = (ground at the outlet - highest ground between and the low spot's edge) / L
 *
 * @param outletGround level at the outlet [m]
 * @param lowSpotEdge level of the ground at the edge of the low spot [m]
 * @param ridge highest ground between them [m]; null when it falls all the way
 * @param distance L [m], > 0
 * @returns slope back [-] and whether it returns; a ridge above the outlet's ground stops it
 * Source: geometry; ours
 * Checked against: stores.test.ts, cases by hand
 */
export function surfaceReturn(outletGround: number, lowSpotEdge: number, ridge: number | null, distance: number): SurfaceReturn {
  requireFinite({ outletGround, lowSpotEdge, ridge: ridge ?? 0 });
  requirePositive({ distance });
  const slope = (outletGround - lowSpotEdge) / distance;
  return { slope, returns: slope > 0 && (ridge === null || ridge < outletGround) };
}

/**
 * Depth and velocity of water that runs over ground in a sheet: for the lot line before and after the work.
 *
 *   y = (n*Q/(b*S^(1/2)))^(3/5);  v = Q/(b*y)
 *
 * @param flow Q [m3/s], >= 0
 * @param width b of the sheet [m], > 0
 * @param slope S [-], > 0
 * @param roughness n of overland flow, > 0
 * @returns depth [m] and velocity [m/s]
 * Limits: wide sheet, the sides not counted
 * Source: Manning for a wide section
 * Checked against: manningVelocity at R = y, 1e-12
 */
export function sheetAtLine(flow: number, width: number, slope: number, roughness: number): { readonly depth: number; readonly velocity: number } {
  requireNotNegative({ flow });
  requirePositive({ width, slope, roughness });
  if (flow === 0) return { depth: 0, velocity: 0 };
  const depth = pow((roughness * flow) / (width * Math.sqrt(slope)), 3 / 5);
  return { depth, velocity: flow / (width * depth) };
}
