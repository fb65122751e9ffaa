import { CalcProblem } from '../common/problem.ts';
import { requireNotNegative, requirePositive } from '../common/require.ts';
import { cbrt } from '../math/cbrt.ts';
import { pow } from '../math/pow.ts';

/** Flatter planes are taken at this slope: the kinematic wave has none of the back-water that drives them. Source: ours. */
export const LEAST_PLANE_SLOPE = 0.001;

const TWO_THIRDS = 2 / 3;
const NEWTON_STEPS = 60;
/** Newton doubles its digits, and what a cell passes on is b less its depth: nothing is lost either way. */
const NEWTON_SETTLED = 1e-7;
/** An implicit step smears the rise; this one keeps a lawn's minute peaks within some percent [s]. Source: ours, see the test. */
const LONGEST_SUBSTEP = 20;

export interface Plane {
  readonly length: number;
  readonly slope: number;
  /** Manning n of overland flow. */
  readonly roughness: number;
}

/**
 * u with u^3 + k*u^5 = b, where u^3 is the depth h of h + k*h^(5/3) = b: no root has to be drawn in the loop.
 * The function is convex and rising for u > 0, so Newton's steps end on the root from any guess above zero.
 */
function rootOfDepth(b: number, k: number, guess: number): number {
  if (b <= 0) return 0;
  let u = guess > 0 ? guess : cbrt(b);
  for (let i = 0; i < NEWTON_STEPS; i += 1) {
    const square = u * u;
    const next = u - (square * u * (1 + k * square) - b) / (square * (3 + 5 * k * square));
    const settled = Math.abs(next - u) <= NEWTON_SETTLED * next;
    u = next;
    if (settled) break;
  }
  return u;
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
 * @returns mean outflow of each step per meter of width [m2/s], and the depth that is left [m]
 * Limits: no back-water; slope floored at 0.1 %; steps over 20 s are divided
 * Source: Henderson and Wooding 1964, J. Geophys. Res. 69, 1531; Wooding 1965, J. Hydrology 3, 254
 * Use: give the rain in steps of the routing, a minute or so; outflow is a mean over each step, so long steps flatten the peak
 * Checked against: analytic rising limb q = alpha*(i*t)^(5/3) and equilibrium q = i*L, 1 % on a fine grid
 */
export function kinematicPlane(
  plane: Plane, excess: readonly number[], step: number, cells = 10,
): { readonly outflow: readonly number[]; readonly stored: number } {
  requirePositive({ length: plane.length, roughness: plane.roughness, step, cells });
  requireNotNegative({ slope: plane.slope });
  const alpha = Math.sqrt(Math.max(plane.slope, LEAST_PLANE_SLOPE)) / plane.roughness;
  const substeps = Math.floor((step - 1e-9) / LONGEST_SUBSTEP) + 1;
  const time = step / substeps;
  const dx = plane.length / cells;
  const k = (alpha * time) / dx;
  const state: PlaneState = { depths: new Float64Array(cells), roots: new Float64Array(cells), wet: false };
  const outflow = excess.map((rain, i) => {
    if (!(rain >= 0 && rain < Infinity)) requireNotNegative({ [`excess/${i}`]: rain });
    if (!state.wet && rain === 0) return 0;
    let passed = 0;
    for (let n = 0; n < substeps; n += 1) passed += advance(state, rain * time, k);
    if (!Number.isFinite(passed)) throw new CalcProblem('plane.notComputable', `excess/${i}`, { rain });
    return (passed * dx) / step;
  });
  let stored = 0;
  for (const depth of state.depths) stored += depth * dx;
  return { outflow, stored };
}

interface PlaneState {
  readonly depths: Float64Array;
  /** Cube roots of the depths, the next step's first guess. */
  readonly roots: Float64Array;
  wet: boolean;
}

/** One step of every cell from the top; gives back the depth that the last one passes on. */
function advance(state: PlaneState, rain: number, k: number): number {
  const { depths, roots } = state;
  let inflow = 0;
  let wet = false;
  for (let c = 0; c < depths.length; c += 1) {
    const b = (depths[c] ?? 0) + rain + inflow;
    const root = rootOfDepth(b, k, roots[c] ?? 0);
    const depth = Math.min(root * root * root, b);
    inflow = b - depth;
    depths[c] = depth;
    roots[c] = root;
    if (depth > 0) wet = true;
  }
  state.wet = wet;
  return inflow;
}

/** Time until the whole plane runs [s] under a steady excess [m/s]: (L / (alpha * i^(2/3)))^(3/5). Same source. */
export function planeEquilibriumTime(plane: Plane, excess: number): number {
  requirePositive({ length: plane.length, roughness: plane.roughness, excess });
  const alpha = Math.sqrt(Math.max(plane.slope, LEAST_PLANE_SLOPE)) / plane.roughness;
  return pow(plane.length / (alpha * pow(excess, TWO_THIRDS)), 3 / 5);
}
