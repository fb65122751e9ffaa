/**
 * The line that falls by at least a given slope and lies nearest to shot levels, by the sum of the moves: few places move, the rest stay.
 *
 *   least sum |y_i - z_i|  with  y_i - y_(i+1) >= least * (x_(i+1) - x_i)
 *
 * @param at     x, distances along the line, rising [m]
 * @param levels z, shot levels [m], as many
 * @param least  fall per length [-], >= 0
 * @returns y, the levels to bring each place to [m]; of several lines that move as little, the one that lies lower
 * Source: isotonic regression by absolute values (Robertson and Wright 1980, Annals of Statistics 8); best lines pass through shot levels
 * Checked against: every choice of levels by trial, in leastMoves.test.ts
 */
export function leastMoves(at: readonly number[], levels: readonly number[], least: number): number[] {
  // Along a line that falls by just the least slope every place has one height; what is asked for is that these never rise.
  const heights = levels.map((level, i) => level + least * at[i]!);
  const choices = [...new Set(heights)].sort((a, b) => a - b);
  /** Row i: the least sum of moves up to place i when it comes to choice k or any higher one before it. */
  const from: number[][] = [];
  let sums = choices.map(() => 0);
  for (const height of heights) {
    // A place may follow any that is at least as high.
    const best = choices.map((_, k) => k);
    for (let k = choices.length - 2; k >= 0; k -= 1) if (sums[best[k + 1]!]! < sums[k]!) best[k] = best[k + 1]!;
    from.push(best);
    sums = choices.map((choice, k) => sums[best[k]!]! + Math.abs(choice - height));
  }
  let k = 0;
  choices.forEach((_, other) => { if (sums[other]! < sums[k]!) k = other; });
  const chosen = new Array<number>(heights.length);
  for (let i = heights.length - 1; i >= 0; i -= 1) {
    chosen[i] = choices[k]! - least * at[i]!;
    k = from[i]![k]!;
  }
  return chosen;
}
