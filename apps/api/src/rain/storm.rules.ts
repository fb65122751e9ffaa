import { alternatingBlock, type RainTable } from '@yardfall/calc';

const day = 86_400;
const fiveMinutes = 300;

export interface Storm {
  readonly returnPeriod: number;
  readonly block: number;
  readonly depths: number[];
  readonly total: number;
}

/** A day's storm in blocks of five minutes, or as long and as fine as the table allows. Throws a CalcProblem beyond the table. */
export function stormOf(table: RainTable, returnPeriod: number): Storm {
  const block = Math.max(fiveMinutes, table.durations[0] ?? fiveMinutes);
  const longest = Math.min(day, table.durations.at(-1) ?? day);
  const depths = alternatingBlock(table, returnPeriod, Math.floor(longest / block) * block, block);
  return { returnPeriod, block, depths, total: depths.reduce((sum, depth) => sum + depth, 0) };
}
