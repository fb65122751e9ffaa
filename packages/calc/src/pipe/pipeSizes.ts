import { INCH } from '../common/constants.ts';
import { CalcProblem } from '../common/problem.ts';
import { requirePositive } from '../common/require.ts';

export type PipeSeries = 'schedule40' | 'schedule80' | 'sdr35';

type Sizes = Readonly<Record<string, readonly [outside: number, wall: number]>>;

/** Outside diameter and least wall by nominal size [in]. Source: ASTM D1785 and D2665 (schedules), ASTM D3034 (SDR 35; 3 in and 8 in from memory). */
const SIZES: Readonly<Record<PipeSeries, Sizes>> = {
  schedule40: { '1.25': [1.66, 0.14], '1.5': [1.9, 0.145], '2': [2.375, 0.154], '3': [3.5, 0.216], '4': [4.5, 0.237], '6': [6.625, 0.28] },
  schedule80: { '1.25': [1.66, 0.191], '1.5': [1.9, 0.2], '2': [2.375, 0.218], '3': [3.5, 0.3], '4': [4.5, 0.337], '6': [6.625, 0.432] },
  sdr35: { '3': [3.25, 0.125], '4': [4.215, 0.12], '6': [6.275, 0.18], '8': [8.4, 0.24] },
};

export interface PipeSize {
  readonly outside: number;
  readonly wall: number;
  readonly inside: number;
}

/** Inside diameter [m] from outside diameter and wall: OD - 2*w; throws pipe.wallTooThick when nothing is left. */
export function insideDiameter(outside: number, wall: number): number {
  requirePositive({ outside, wall });
  if (2 * wall >= outside) throw new CalcProblem('pipe.wallTooThick', 'wall', { outside, wall });
  return outside - 2 * wall;
}

/**
 * Dimensions of a pipe by its series and nominal size.
 *
 * @param series schedule 40, schedule 80 or SDR 35
 * @param nominal size as it is called, inches: "1.25", "1.5", "2", ...
 * @returns outside diameter, least wall and inside diameter from it [m]
 * Limits: with the least wall; the mean inside diameter of a made pipe is 1 % less; throws pipe.unknownSize
 * Source: ASTM D1785, D2665 and D3034
 * Checked against: fixtures/pump/pipeDimensions.csv and fixtures/pipe/sewerPipeDimensions.csv, every line
 */
export function pipeSize(series: PipeSeries, nominal: string): PipeSize {
  const size = SIZES[series][nominal];
  if (size === undefined) throw new CalcProblem('pipe.unknownSize', 'nominal', { series, nominal });
  const outside = size[0] * INCH;
  const wall = size[1] * INCH;
  return { outside, wall, inside: insideDiameter(outside, wall) };
}
