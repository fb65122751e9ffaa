import { HOUR } from '../common/constants.ts';
import { CalcProblem } from '../common/problem.ts';
import { at, requireNotNegative, requirePositive } from '../common/require.ts';
import { curvilinearOrdinate, gammaOrdinate, LEAST_SHAPE, MOST_SHAPE, UNIT_PEAK_RATE } from './dimensionlessHydrograph.ts';

/** Below an acre the method is not used: the kinematic plane is. Source: ours. */
export const LEAST_AREA = 4046.8564224;
/** Longest block of rain, as a share of the time of concentration. Source: NEH 630 chapter 16. */
export const LONGEST_BLOCK = 0.133;
/** Lag over time of concentration. Source: NEH 630 chapter 16. */
export const LAG_SHARE = 0.6;
/** The peak rate factor that goes with the curvilinear shape. Source: NEH 630 chapter 16. */
export const STANDARD_PEAK_RATE = 484;

const MOST_ORDINATES = 20000;
/** Share of the volume in the tail beyond which the gamma form is cut. */
const TAIL = 1e-7;
const ROUNDING = 1e-9;

export interface UnitHydrographSite {
  readonly area: number;
  readonly timeOfConcentration: number;
  /** Duration of one block of rain. */
  readonly duration: number;
  /** The printed curve, or m of the gamma form. */
  readonly shape: 'curvilinear' | number;
}

/** Time from the start of a block to the peak [s]: D/2 + 0.6*Tc. Source: NEH 630 chapter 16. */
export function timeToPeak(timeOfConcentration: number, duration: number): number {
  requirePositive({ timeOfConcentration, duration });
  return duration / 2 + LAG_SHARE * timeOfConcentration;
}

/**
 * Peak of a unit hydrograph.
 *
 *   q_p = PRF * A * Q / T_p     cfs, mi2, in, h;  in SI q_p = (PRF/645.333) * A * Q / T_p
 *
 * @param area A [m2], > 0
 * @param toPeak T_p [s], > 0
 * @param depth Q of runoff [m], >= 0
 * @param factor PRF
 * @returns q_p [m3/s]
 * Source: NEH 630 chapter 16 (2007)
 * Checked against: fixtures/runoff/unitHydrograph.json, row 5.13
 */
export function unitPeak(area: number, toPeak: number, depth: number, factor: number = STANDARD_PEAK_RATE): number {
  requirePositive({ area, toPeak, factor });
  requireNotNegative({ depth });
  return ((factor / UNIT_PEAK_RATE) * area * depth) / toPeak;
}

function requireSite(site: UnitHydrographSite): void {
  requirePositive({ area: site.area, timeOfConcentration: site.timeOfConcentration, duration: site.duration });
  if (site.shape !== 'curvilinear' && !(site.shape >= LEAST_SHAPE && site.shape <= MOST_SHAPE)) throw new CalcProblem('runoff.hydrographShape', 'shape', { shape: String(site.shape), least: LEAST_SHAPE, most: MOST_SHAPE });
  if (site.area < LEAST_AREA * (1 - ROUNDING)) throw new CalcProblem('runoff.areaTooSmall', 'area', { area: site.area, least: LEAST_AREA });
  const longest = LONGEST_BLOCK * site.timeOfConcentration;
  if (site.duration > longest * (1 + ROUNDING)) throw new CalcProblem('runoff.blockTooLong', 'duration', { duration: site.duration, longest });
}

/**
 * Ordinates of the NRCS unit hydrograph of a block of rain, for each meter of runoff.
 *
 *   T_p = D/2 + 0.6*Tc;  q(t) = q_p * f(t/T_p), scaled so that the volume is A times one meter
 *
 * @param site area [m2], time of concentration [s], block [s], shape
 * @returns flow [m3/s per m] at 0, D, 2D, ...; their sum times D is the area
 * Limits: from one acre, blocks up to 0.133*Tc; m 0.01 to 20; throws runoff.areaTooSmall, runoff.blockTooLong and runoff.hydrographShape
 * Source: NEH 630 chapter 16 (2007)
 * Checked against: volume to 1e-12 by the scaling, which moves the peak less than 0.5 % from PRF 484
 */
export function unitHydrograph(site: UnitHydrographSite): number[] {
  requireSite(site);
  const peakTime = timeToPeak(site.timeOfConcentration, site.duration);
  const { shape } = site;
  const ordinates: number[] = [];
  let sum = 0;
  for (let i = 0; i < MOST_ORDINATES; i += 1) {
    const ratio = (i * site.duration) / peakTime;
    const value = shape === 'curvilinear' ? curvilinearOrdinate(ratio) : gammaOrdinate(shape, ratio);
    if (ratio > 1 && value <= TAIL * sum) break;
    ordinates.push(value);
    sum += value;
  }
  const scale = site.area / (sum * site.duration);
  return ordinates.map((value) => value * scale);
}

/**
 * Hydrograph of a storm: every block's runoff times the unit hydrograph, added up.
 *
 * @param site as above
 * @param excess runoff depth of each block [m], blocks of the site's duration
 * @returns flow [m3/s] at 0, D, 2D, ..., until the last block has run off
 * Source: NEH 630 chapter 16 (2007), by superposition
 * Checked against: runoff volume, 1e-12; one block is the unit hydrograph itself
 */
export function unitHydrographStorm(site: UnitHydrographSite, excess: readonly number[]): number[] {
  const unit = unitHydrograph(site);
  const flow = new Array<number>(excess.length + unit.length - 1).fill(0);
  excess.forEach((depth, block) => {
    requireNotNegative({ [`excess/${block}`]: depth });
    if (depth === 0) return;
    for (let i = 0; i < unit.length; i += 1) flow[block + i] = at(flow, block + i) + depth * at(unit, i);
  });
  return flow;
}

/** Longest block of rain of a site in whole minutes [s], at least one minute; null when even that is too long. */
export function blockFor(timeOfConcentration: number): number | null {
  requirePositive({ timeOfConcentration });
  const minutes = Math.floor((LONGEST_BLOCK * timeOfConcentration) / (HOUR / 60) + ROUNDING);
  return minutes < 1 ? null : minutes * (HOUR / 60);
}
