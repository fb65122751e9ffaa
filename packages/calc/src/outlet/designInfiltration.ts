import { requirePositive } from '../common/require.ts';
import { infiltrationFromHole } from './percolationTest.ts';

export interface HoleReading {
  /** [s] */
  readonly interval: number;
  /** Height of water over the bottom when the interval began [m]. */
  readonly startDepth: number;
  /** [m], > 0 */
  readonly drop: number;
}

export interface DesignInfiltration {
  /** Slowest of the last readings, the walls taken off [m/s]. */
  readonly measured: number;
  /** Half of it [m/s]. */
  readonly design: number;
  /** The last three differ by no more than a tenth. */
  readonly settled: boolean;
  /** The design rate lies in the range in which soakage may be relied upon. */
  readonly usable: boolean;
}

/**
 * Readings that must agree, the share by which they may differ, the safety factor, and the range of design rates, 0.5 and 10 in/h [m/s].
 * Source: New Jersey Stormwater BMP Manual, chapter 9.3 (2016): factor of safety of 2 and that range; three readings within a tenth: common practice, no source.
 */
export const DESIGN_INFILTRATION = { readings: 3, within: 0.1, safety: 2, least: (0.5 * 0.0254) / 3600, most: (10 * 0.0254) / 3600 } as const;

/**
 * Infiltration rate to design with, from the timed drops of water in a round hole.
 *
 *   f_i = drop*r / (interval*(r + 2*h_mean));  design = min of the last three / 2
 *
 * @param radius   of the hole [m], > 0
 * @param readings after the soak, in their order
 * @returns rates, whether they have settled and are usable; null without a reading
 * Limits: hole without gravel, water that fell in every interval; a hole that drops nothing has no rate
 * Source: inverse borehole (Porchet) method, from memory; safety factor of the New Jersey Stormwater BMP Manual 9.3
 * Checked against: water balance of the hole, by hand
 */
export function designInfiltration(radius: number, readings: readonly HoleReading[]): DesignInfiltration | null {
  requirePositive({ radius });
  const rates = readings.map(({ interval, startDepth, drop }) => infiltrationFromHole(radius, startDepth, drop, interval));
  const last = rates.slice(-DESIGN_INFILTRATION.readings);
  if (last.length === 0) return null;
  const measured = Math.min(...last);
  const design = measured / DESIGN_INFILTRATION.safety;
  const mean = last.reduce((sum, rate) => sum + rate, 0) / last.length;
  const settled = last.length === DESIGN_INFILTRATION.readings && Math.max(...last) - measured <= DESIGN_INFILTRATION.within * mean * (1 + 1e-12);
  const usable = design >= DESIGN_INFILTRATION.least * (1 - 1e-12) && design <= DESIGN_INFILTRATION.most * (1 + 1e-12);
  return { measured, design, settled, usable };
}
