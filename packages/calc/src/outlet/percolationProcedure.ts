import { INCH, MINUTE } from '../common/constants.ts';
import { CalcProblem } from '../common/problem.ts';
import { at, requireNotNegative, requirePositive } from '../common/require.ts';
import { percolationRate } from './percolationTest.ts';

export interface PercolationReading {
  readonly interval: number;
  readonly drop: number;
}

export interface PercolationLimits {
  /** Interval of a slow hole, of a fast one, and the drop in the slow interval that makes a hole fast. */
  readonly slowInterval: number;
  readonly fastInterval: number;
  readonly fastDrop: number;
  /** Readings that must be like, and the drop by which they may differ. */
  readonly likeReadings: number;
  readonly likeWithin: number;
  /** Slowest rate that is suitable [s/m]. */
  readonly slowest: number;
}

/**
 * Source: Rostraver Twp PA procedure (30-minute readings of 6 in, 10-minute ones when more than 6 in is lost);
 * Wayne County IN code (three like readings); Vienna IL code 53.078 (over 60 min/in unsuitable); 1/16 in: common practice.
 */
export const PERCOLATION_LIMITS: PercolationLimits = {
  slowInterval: 30 * MINUTE, fastInterval: 10 * MINUTE, fastDrop: 6 * INCH, likeReadings: 3, likeWithin: INCH / 16, slowest: (60 * MINUTE) / INCH,
};

export interface PercolationVerdict {
  /** Rate of the last reading [s/m]; null when the water did not fall. */
  readonly rate: number | null;
  readonly settled: boolean;
  /** Drop of a slow interval that calls for short ones. */
  readonly useFastInterval: boolean;
  readonly suitable: boolean;
}

/**
 * What a percolation test shows: the last reading counts, when the last three are alike.
 *
 * @param readings interval [s] and drop [m] after the presoak, in their order, at least one
 * @param limits of the local procedure
 * @returns rate [s/m], whether it has settled, whether it is suitable
 * Limits: procedures differ by county, so the limits are data; throws percolation.noReadings
 * Source: US local codes of on-site systems, see PERCOLATION_LIMITS
 * Checked against: fixtures/outlet/pits.json, rows perc.1 and perc.2, and each limit on both sides
 */
export function percolationVerdict(readings: readonly PercolationReading[], limits: PercolationLimits = PERCOLATION_LIMITS): PercolationVerdict {
  if (readings.length === 0) throw new CalcProblem('percolation.noReadings', 'readings', {});
  readings.forEach((reading, i) => {
    requirePositive({ [`readings/${i}/interval`]: reading.interval });
    requireNotNegative({ [`readings/${i}/drop`]: reading.drop });
  });
  const last = at(readings, readings.length - 1);
  const alike = readings.slice(-limits.likeReadings);
  const drops = alike.map(({ drop }) => drop);
  const settled = alike.length === limits.likeReadings && alike.every(({ interval }) => interval === last.interval)
    && Math.max(...drops) - Math.min(...drops) <= limits.likeWithin + 1e-12;
  const rate = last.drop === 0 ? null : percolationRate(last.interval, last.drop);
  const useFastInterval = last.interval >= limits.slowInterval && last.drop > limits.fastDrop;
  return { rate, settled, useFastInterval, suitable: rate !== null && rate <= limits.slowest * (1 + 1e-12) };
}
