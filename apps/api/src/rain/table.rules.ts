import type { RainTable } from '@yardfall/calc';

/** Where a typed table cannot be right: row and column count from 1, durations down, return periods across. */
export interface TableProblem {
  readonly reason: 'tooFew' | 'notRising' | 'shape' | 'notPositive' | 'longerIsShallower' | 'rarerIsShallower' | 'limitsCross';
  readonly row: number;
  readonly column: number;
}

const problem = (reason: TableProblem['reason'], row: number, column: number): TableProblem => ({ reason, row: row + 1, column: column + 1 });

/** The first thing that is wrong with a typed table, or null. */
export function tableProblem(table: RainTable): TableProblem | null {
  const { durations, returnPeriods, depths, lower, upper } = table;
  if (durations.length < 2 || returnPeriods.length < 1) return problem('tooFew', 0, 0);
  const unsortedRow = firstFall(durations);
  if (unsortedRow >= 0) return problem('notRising', unsortedRow, 0);
  const unsortedColumn = firstFall(returnPeriods);
  if (unsortedColumn >= 0) return problem('notRising', 0, unsortedColumn);
  const shapes = [depths, lower, upper].flatMap((grid) => (grid === null ? [] : [shapeProblem(grid, durations.length, returnPeriods.length)]));
  return shapes.find((found) => found !== null) ?? depthProblem(depths) ?? limitProblem(depths, lower, upper);
}

function firstFall(values: readonly number[]): number {
  return values.findIndex((value, index) => index > 0 && value <= (values[index - 1] ?? value));
}

function shapeProblem(grid: readonly (readonly number[])[], rows: number, columns: number): TableProblem | null {
  if (grid.length !== rows) return problem('shape', Math.min(grid.length, rows), 0);
  const bad = grid.findIndex((row) => row.length !== columns);
  return bad < 0 ? null : problem('shape', bad, Math.min(grid[bad]?.length ?? 0, columns));
}

function depthProblem(depths: readonly (readonly number[])[]): TableProblem | null {
  for (const [r, row] of depths.entries()) {
    for (const [c, depth] of row.entries()) {
      if (depth <= 0) return problem('notPositive', r, c);
      if (r > 0 && depth < (depths[r - 1]?.[c] ?? 0)) return problem('longerIsShallower', r, c);
      if (c > 0 && depth < (row[c - 1] ?? 0)) return problem('rarerIsShallower', r, c);
    }
  }
  return null;
}

function limitProblem(depths: RainTable['depths'], lower: RainTable['lower'], upper: RainTable['upper']): TableProblem | null {
  for (const [r, row] of depths.entries()) {
    const c = row.findIndex((depth, at) => (lower?.[r]?.[at] ?? depth) > depth || (upper?.[r]?.[at] ?? depth) < depth);
    if (c >= 0) return problem('limitsCross', r, c);
  }
  return null;
}
