import { at, requireNotNegative, requirePositive } from '../common/require.ts';
import { bracketedRoot } from '../math/bracketedRoot.ts';
import { exp } from '../math/exp.ts';
import { log } from '../math/log.ts';

/** Time over time to peak, and flow over peak flow. Source: NEH 630 chapter 16 (2007), table 16-1. */
export const CURVILINEAR: readonly (readonly [number, number])[] = [
  [0, 0], [0.1, 0.03], [0.2, 0.1], [0.3, 0.19], [0.4, 0.31], [0.5, 0.47], [0.6, 0.66], [0.7, 0.82], [0.8, 0.93], [0.9, 0.99], [1, 1],
  [1.1, 0.99], [1.2, 0.93], [1.3, 0.86], [1.4, 0.78], [1.5, 0.68], [1.6, 0.56], [1.7, 0.46], [1.8, 0.39], [1.9, 0.33], [2, 0.28],
  [2.2, 0.207], [2.4, 0.147], [2.6, 0.107], [2.8, 0.077], [3, 0.055], [3.2, 0.04], [3.4, 0.029], [3.6, 0.021], [3.8, 0.015], [4, 0.011],
  [4.5, 0.005], [5, 0],
];

/** Peak rate factor of a hydrograph whose dimensionless curve holds an area of one: 640 acres in a square mile times 1.00833. */
export const UNIT_PEAK_RATE = 645.333;

/** Range of m; the printed factors lie from 0.26 (101) to 5 (566). Source: ours, round NEH 630 chapter 16, table 16-5. */
export const LEAST_SHAPE = 0.01;
export const MOST_SHAPE = 20;

const LANCZOS_G = 7;
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059, 12.507343278686905, -0.13857109526572012,
  9.9843695780195716e-6, 1.5056327351493116e-7,
] as const;
const HALF_LOG_TWO_PI = 0.9189385332046728;

/** ln of the gamma function for x >= 1. Source: Lanczos 1964, g = 7 with nine terms, from memory; checked against factorials. */
export function logGamma(x: number): number {
  const z = x - 1;
  let sum: number = LANCZOS[0];
  for (let i = 1; i < LANCZOS.length; i += 1) sum += at(LANCZOS, i) / (z + i);
  const t = z + LANCZOS_G + 0.5;
  return HALF_LOG_TWO_PI + (z + 0.5) * log(t) - t + log(sum);
}

/**
 * Flow over peak flow of the NRCS curvilinear unit hydrograph, straight between the printed points.
 *
 * @param ratio time over time to peak [-], >= 0
 * @returns q/q_p [-]; 0 from 5 onward
 * Source: NEH 630 chapter 16 (2007), table 16-1
 * Checked against: fixtures/runoff/dimensionlessHydrograph.csv, 33 points; its area, 1.33595
 */
export function curvilinearOrdinate(ratio: number): number {
  requireNotNegative({ ratio });
  if (ratio >= 5) return 0;
  let i = CURVILINEAR.length - 2;
  while (i > 0 && at(CURVILINEAR, i)[0] > ratio) i -= 1;
  const [x1, y1] = at(CURVILINEAR, i);
  const [x2, y2] = at(CURVILINEAR, i + 1);
  return y1 + ((y2 - y1) * (ratio - x1)) / (x2 - x1);
}

/**
 * Flow over peak flow of the gamma unit hydrograph.
 *
 *   q/q_p = e^m * (t/T_p)^m * e^(-m*t/T_p)
 *
 * @param shape m [-], > 0
 * @param ratio time over time to peak [-], >= 0
 * @returns q/q_p [-], 1 at the peak
 * Source: NEH 630 chapter 16 (2007), equation of table 16-5
 * Checked against: fixtures/runoff/gammaHydrograph.csv through peakRateFactor
 */
export function gammaOrdinate(shape: number, ratio: number): number {
  requirePositive({ shape });
  requireNotNegative({ ratio });
  return ratio === 0 ? 0 : exp(shape * (1 - ratio + log(ratio)));
}

/**
 * Peak rate factor of the gamma unit hydrograph.
 *
 *   PRF = 645.333 / (e^m * G(m+1) / m^(m+1))
 *
 * @param shape m [-], 0.01 to 20
 * @returns PRF in its usual unit (cfs for a square mile, an inch and an hour)
 * Source: NEH 630 chapter 16 (2007), table 16-5; the area is the gamma function
 * Checked against: fixtures/runoff/gammaHydrograph.csv, 7 factors, 0.8 (printed whole)
 */
export function peakRateFactor(shape: number): number {
  requirePositive({ shape });
  return UNIT_PEAK_RATE * exp((shape + 1) * log(shape) - shape - logGamma(shape + 1));
}

/** The shape m of a peak rate factor; throws root.notBracketed outside 10 to 1150. Same source, turned round. */
export function shapeOfPeakRate(factor: number): number {
  requirePositive({ factor });
  return bracketedRoot((m) => peakRateFactor(m) - factor, LEAST_SHAPE, MOST_SHAPE, 1e-12);
}
