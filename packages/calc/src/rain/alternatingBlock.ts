import { CalcProblem } from '../common/problem.ts';
import { requireNotNegative, requirePositive } from '../common/require.ts';
import type { RainTable } from '../document/document.ts';
import { depthAt } from './depthAt.ts';

const MOST_BLOCKS = 20000;

/**
 * Nested storm from cumulative depths: increments sorted, the largest in the block that
 * STARTS at the middle of the storm, then one to its right, one to its left, and so on.
 *
 * @param cumulative depth [mm] of the wettest span of a duration [s]
 * @param duration [s], a whole number of blocks
 * @param block [s]
 * @returns depth [mm] of each block
 * Source: Chow, Maidment and Mays 1988, section 14.4
 * Checked against: fixtures/rain/rainfall.json, row 3b (Denver 10-year formula, from memory), 1e-3 in
 */
export function arrangeBlocks(cumulative: (duration: number) => number, duration: number, block: number): number[] {
  requirePositive({ duration, block });
  const count = Math.floor(duration / block + 0.5);
  if (Math.abs(count * block - duration) > 1e-6 * duration || count > MOST_BLOCKS) {
    throw new CalcProblem('storm.unevenBlocks', 'storm/block', { duration, block });
  }
  const increments: number[] = [];
  let before = 0;
  for (let i = 1; i <= count; i += 1) {
    const depth = cumulative(i * block);
    increments.push(Math.max(depth - before, 0));
    before = Math.max(depth, before);
  }
  increments.sort((a, b) => b - a);
  return spread(increments);
}

function spread(sorted: readonly number[]): number[] {
  const storm = new Array<number>(sorted.length).fill(0);
  const middle = Math.floor(sorted.length / 2);
  let right = middle + 1;
  let left = middle - 1;
  sorted.forEach((depth, rank) => {
    if (rank === 0) storm[middle] = depth;
    else if ((rank % 2 === 1 && right < sorted.length) || left < 0) storm[right++] = depth;
    else storm[left--] = depth;
  });
  return storm;
}

/**
 * Design storm by alternating block from a depth-duration-frequency table.
 *
 * @param table        depths [mm]
 * @param returnPeriod [years]
 * @param duration     [s], within the table
 * @param block        [s], not shorter than the table's shortest duration
 * @param allowance    climate allowance, share added to every depth [-]
 * @param depths       `table.depths` or one of its limits
 * @returns depth [mm] of each block; the sum is the table's depth for the duration
 * Source: Chow, Maidment and Mays 1988, section 14.4
 * Checked against: the table's own day and 5-minute depths in one storm, 1e-9
 */
export function alternatingBlock(
  table: RainTable, returnPeriod: number, duration: number, block: number, allowance = 0, depths: RainTable['depths'] = table.depths,
): number[] {
  requireNotNegative({ allowance });
  return arrangeBlocks((d) => depthAt(table, d, returnPeriod, depths) * (1 + allowance), duration, block);
}
