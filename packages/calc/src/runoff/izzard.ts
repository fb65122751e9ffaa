import { FOOT, HOUR, INCH, MINUTE } from '../common/constants.ts';
import { CalcProblem } from '../common/problem.ts';
import { requireNotNegative, requirePositive } from '../common/require.ts';
import { cbrt } from '../math/cbrt.ts';

/** Retardance c. Source: Izzard 1946, Proceedings Highway Research Board 26, as in Chow, Maidment and Mays 1988 table 15.1.2; read in public copies. */
export const RETARDANCE = { smoothAsphalt: 0.007, tarAndSand: 0.0075, concrete: 0.012, tarAndGravel: 0.017, clippedSod: 0.046, denseBluegrass: 0.06 } as const;

/** Most intensity times length of the tests [in/h * ft]: beyond it the flow is no longer laminar. Same source. */
const MOST_INTENSITY_LENGTH = 500;

/** Water on the plot at equilibrium over width, and flow over width, in feet: D = (0.0007*i + c)/S^(1/3) * L * q^(1/3). */
function detentionFeet(retardance: number, feet: number, slope: number, inches: number): { depth: number; flow: number } {
  const flow = (inches * feet) / 43200;
  return { depth: ((0.0007 * inches + retardance) / cbrt(slope)) * feet * cbrt(flow), flow };
}

/**
 * Time until a plot under steady rain runs off as much as falls (Izzard).
 *
 *   t_e = 2*D_e/(60*q_e) = 41.025*(0.0007*i + c)*L^(1/3) / (S^(1/3)*i^(2/3))     min, in/h, ft
 *
 * @param retardance c [-], >= 0
 * @param length L [m], > 0
 * @param slope S [-], > 0
 * @param intensity i of the rain that runs off [m/s], > 0
 * @returns t_e [s]
 * Limits: intensity times length up to 500 in/h*ft; throws runoff.outsideTests beyond
 * Source: Izzard 1946, Proceedings Highway Research Board 26, 129-146 (from memory)
 * Checked against: the kinematic plane on smooth asphalt and on sod, same order; the short form 41.025, 0.1 %
 */
export function izzardTime(retardance: number, length: number, slope: number, intensity: number): number {
  requireNotNegative({ retardance });
  requirePositive({ length, slope, intensity });
  const inches = (intensity * HOUR) / INCH;
  const feet = length / FOOT;
  if (inches * feet > MOST_INTENSITY_LENGTH * (1 + 1e-9)) throw new CalcProblem('runoff.outsideTests', 'length', { product: inches * feet, most: MOST_INTENSITY_LENGTH });
  const { depth, flow } = detentionFeet(retardance, feet, slope, inches);
  return (depth / (30 * flow)) * MINUTE;
}

/** Water that stands on the plot at equilibrium, over its width [m2]. Same source and limits. */
export function izzardDetention(retardance: number, length: number, slope: number, intensity: number): number {
  const time = izzardTime(retardance, length, slope, intensity);
  return (time * intensity * length) / 2;
}
