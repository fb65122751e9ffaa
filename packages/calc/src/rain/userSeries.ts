import { CalcProblem } from '../common/problem.ts';
import { at, requireFinite, requireNotNegative, requirePositive } from '../common/require.ts';

/** A reading of a gauge: seconds from the start, and depth that has fallen since the reading before it [mm]. */
export interface RainReading {
  readonly time: number;
  readonly depth: number;
}

const MOST_BLOCKS = 200000;

function requireReadings(readings: readonly RainReading[]): void {
  if (readings.length < 2) throw new CalcProblem('storm.tooFewReadings', 'readings', { count: readings.length });
  readings.forEach((reading, i) => {
    requireFinite({ [`readings/${i}/time`]: reading.time });
    requireNotNegative({ [`readings/${i}/depth`]: reading.depth });
    if (i > 0 && reading.time <= at(readings, i - 1).time) throw new CalcProblem('storm.notForward', `readings/${i}/time`, { time: reading.time });
  });
}

/**
 * Storm in equal blocks from readings at any times: what fell between two readings fell evenly.
 *
 * @param readings rising times [s] with depths [mm]; the depth of the first reading fell before the series and is left out
 * @param block [s]
 * @returns depth [mm] of each block from the first time on; the sum is that of the readings
 * Limits: throws storm.tooFewReadings, storm.notForward, storm.unevenBlocks for more than 200 000 blocks
 * Source: volume balance
 * Checked against: series.test.ts, sums to 1e-12, cases by hand
 */
export function userSeries(readings: readonly RainReading[], block: number): number[] {
  requireReadings(readings);
  requirePositive({ block });
  const start = at(readings, 0).time;
  const count = Math.floor((at(readings, readings.length - 1).time - start) / block + 1 - 1e-9);
  if (count > MOST_BLOCKS) throw new CalcProblem('storm.unevenBlocks', 'block', { block });
  const depths = new Array<number>(count).fill(0);
  for (let i = 1; i < readings.length; i += 1) spreadOver(depths, block, at(readings, i - 1).time - start, at(readings, i).time - start, at(readings, i).depth);
  return depths;
}

function spreadOver(depths: number[], block: number, from: number, to: number, depth: number): void {
  let time = from;
  for (let b = Math.min(Math.floor(from / block + 1e-9), depths.length - 1); time < to; b += 1) {
    const end = b >= depths.length - 1 ? to : Math.min((b + 1) * block, to);
    depths[b] = at(depths, b) + (depth * (end - time)) / (to - from);
    time = end;
  }
}
