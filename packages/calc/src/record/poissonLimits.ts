import { CalcProblem } from '../common/problem.ts';
import { requireNotNegative } from '../common/require.ts';
import { bracketedRoot } from '../math/bracketedRoot.ts';
import { exp } from '../math/exp.ts';
import { log } from '../math/log.ts';

/** Share of the limits of a count, both sides together. Source: the usual convention. */
export const COUNT_CONFIDENCE = 0.95;
const MOST_COUNT = 1_000_000;
const SUMMED = 64;

/** log(n!): summed while short, then Stirling's series, which is then exact to the last digits. Source: Stirling, from memory. */
function logFactorial(n: number): number {
  if (n <= SUMMED) {
    let sum = 0;
    for (let k = 2; k <= n; k += 1) sum += log(k);
    return sum;
  }
  const x = n + 1;
  const half = 0.9189385332046727;
  return (x - 0.5) * log(x) - x + half + 1 / (12 * x) - 1 / (360 * x * x * x);
}

const term = (n: number, mean: number): number => exp(n * log(mean) - mean - logFactorial(n));

/** Chance of n or fewer events where `mean` are expected. */
export function poissonAtMost(n: number, mean: number): number {
  if (mean === 0) return 1;
  if (n > mean) return 1 - upperTail(n + 1, mean);
  let share = 1;
  let sum = 1;
  for (let k = n; k > 0; k -= 1) {
    share *= k / mean;
    sum += share;
    if (share < 1e-17 * sum) break;
  }
  return term(n, mean) * sum;
}

/** Chance of n or more events, for n above the mean, by its falling series. */
function upperTail(n: number, mean: number): number {
  let share = 1;
  let sum = 1;
  for (let k = n + 1; share > 1e-17 * sum; k += 1) {
    share *= mean / k;
    sum += share;
  }
  return term(n, mean) * sum;
}

export interface CountLimits {
  readonly lower: number;
  readonly upper: number;
}

/**
 * Exact limits of the expected number of events when a whole number of them was counted.
 *
 *   lower: chance of `count` or more = (1 - confidence)/2;  upper: chance of `count` or fewer = (1 - confidence)/2
 *
 * @param count events, a whole number
 * @param confidence both sides together [-], between 0 and 1
 * @returns limits of the mean [events in the same time]
 * Limits: events must be independent of each other; up to a million of them
 * Source: Garwood 1936, Biometrika 28, 437-442
 * Checked against: fixtures/record/poissonLimits.json, the printed limits, from memory, half a unit of their last digit
 */
export function poissonLimits(count: number, confidence: number = COUNT_CONFIDENCE): CountLimits {
  requireNotNegative({ count });
  if (count !== Math.floor(count) || count > MOST_COUNT) throw new CalcProblem('record.count', 'count', { count });
  if (!(confidence > 0 && confidence < 1)) throw new CalcProblem('record.confidence', 'confidence', { confidence });
  const tail = (1 - confidence) / 2;
  const tolerance = 1e-10 * (count + 1);
  const lower = count === 0 ? 0 : bracketedRoot((mean) => 1 - poissonAtMost(count - 1, mean) - tail, 0, count, tolerance);
  let high = 2 * count + 4;
  while (poissonAtMost(count, high) > tail) high *= 2;
  const upper = bracketedRoot((mean) => tail - poissonAtMost(count, mean), count, high, tolerance);
  return { lower, upper };
}
