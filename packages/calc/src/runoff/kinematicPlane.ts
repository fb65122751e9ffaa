import { requireNotNegative, requirePositive } from '../common/require.ts';
import { cbrt } from '../math/cbrt.ts';
import { pow } from '../math/pow.ts';

/** Flatter planes are taken at this slope: the kinematic wave has none of the back-water that drives them. Source: ours. */
export const LEAST_PLANE_SLOPE = 0.001;

const TWO_THIRDS = 2 / 3;
const FIVE_THIRDS = 5 / 3;
const NEWTON_STEPS = 40;
/** Newton doubles its digits, and what a cell passes on is b less its depth: nothing is lost either way. */
const NEWTON_SETTLED = 1e-7;

export interface Plane {
  readonly length: number;
  readonly slope: number;
  /** Manning n of overland flow. */
  readonly roughness: number;
}

/** Depth h with h + k*h^(5/3) = b: the function is convex and rising, so steps from b come down to the root. */
function depthOf(b: number, k: number, guess: number): number {
  if (b <= 0) return 0;
  let h = guess > 0 && guess < b ? guess : b;
  for (let i = 0; i < NEWTON_STEPS; i += 1) {
    const root = cbrt(h);
    const p = k * root * root;
    const next = h - (h + p * h - b) / (1 + FIVE_THIRDS * p);
    const settled = Math.abs(next - h) <= NEWTON_SETTLED * b;
    h = next > 0 ? next : 0.5 * h;
    if (settled) break;
  }
  return h;
}

/**
 * Runoff from a plane under rain excess, as a kinematic wave.
 *
 *   dh/dt + dq/dx = i_e;  q = sqrt(S)/n * h^(5/3)
 *
 * Solved cell by cell from the top, implicit and upwind: stable at any step, and what enters
 * is stored or leaves to rounding.
 *
 * @param plane  length [m], slope [-], roughness n
 * @param excess rain excess of each step [m/s]
 * @param step   [s]
 * @param cells  along the plane
 * @returns mean outflow of each step per metre of width [m2/s], and the depth that is left [m]
 * Limits: no back-water; slope floored at 0.1 %
 * Source: Henderson and Wooding 1964, J. Geophys. Res. 69, 1531; Wooding 1965, J. Hydrology 3, 254
 * Checked against: analytic rising limb q = alpha*(i*t)^(5/3) and equilibrium q = i*L, 1 % on a fine grid
 */
export function kinematicPlane(
  plane: Plane, excess: readonly number[], step: number, cells = 10,
): { readonly outflow: readonly number[]; readonly stored: number } {
  requirePositive({ length: plane.length, roughness: plane.roughness, step, cells });
  requireNotNegative({ slope: plane.slope });
  const alpha = Math.sqrt(Math.max(plane.slope, LEAST_PLANE_SLOPE)) / plane.roughness;
  const dx = plane.length / cells;
  const k = (alpha * step) / dx;
  const depths = new Array<number>(cells).fill(0);
  let wet = false;
  const outflow = excess.map((rain, i) => {
    if (!(rain >= 0)) requireNotNegative({ [`excess/${i}`]: rain });
    if (!wet && rain === 0) return 0;
    const result = advance(depths, rain * step, k, dx / step);
    wet = result.wet;
    return result.outflow;
  });
  let stored = 0;
  for (const depth of depths) stored += depth * dx;
  return { outflow, stored };
}

function advance(depths: number[], rain: number, k: number, perStep: number): { outflow: number; wet: boolean } {
  let inflow = 0;
  let wet = false;
  for (let c = 0; c < depths.length; c += 1) {
    const before = depths[c] ?? 0;
    const b = before + rain + inflow;
    const depth = depthOf(b, k, before);
    inflow = b - depth;
    depths[c] = depth;
    if (depth > 0) wet = true;
  }
  return { outflow: inflow * perStep, wet };
}

/** Time until the whole plane runs [s] under a steady excess [m/s]: (L / (alpha * i^(2/3)))^(3/5). Same source. */
export function planeEquilibriumTime(plane: Plane, excess: number): number {
  requirePositive({ length: plane.length, roughness: plane.roughness, excess });
  const alpha = Math.sqrt(Math.max(plane.slope, LEAST_PLANE_SLOPE)) / plane.roughness;
  return pow(plane.length / (alpha * pow(excess, TWO_THIRDS)), 3 / 5);
}
