import { INCH } from '../common/constants.ts';
import { CalcProblem } from '../common/problem.ts';
import { requireFinite, requirePositive } from '../common/require.ts';

export interface PumpDownRun {
  /** Volume between the two calibrated marks [m3], their distance [m], and the time [s]. */
  readonly volume: number;
  readonly drop: number;
  readonly time: number;
  /** The line was empty when the run began: such a run fills the line and is left out. */
  readonly lineEmpty: boolean;
}

export interface PumpDownLimits {
  readonly pass: number;
  readonly warn: number;
  /** Uncertainty above which a bigger drop is asked for. */
  readonly uncertainty: number;
}

/** Source: ours. */
export const PUMP_DOWN_LIMITS: PumpDownLimits = { pass: 0.1, warn: 0.2, uncertainty: 0.05 };
/** Reading of a wet mark, and of a stop watch at both ends. Source: ours. */
export const MARK_ERROR = 0.18 * INCH;
export const WATCH_ERROR = 1;
/** Calibration of the volume between the marks, the same in every run. Source: ours. */
export const CALIBRATION_SHARE = 0.02;

export interface PumpDownResult {
  readonly flows: readonly number[];
  readonly meanFlow: number;
  /** Largest less smallest over the mean [-]. */
  readonly spread: number;
  /** Share of one run's flow from marks and watch [-]. */
  readonly runUncertainty: number;
  /** Share of the mean flow: runs by chance, calibration in common [-]. */
  readonly uncertainty: number;
  readonly biggerDropNeeded: boolean;
  /** Measured over predicted less one [-]. */
  readonly deviation: number;
  readonly verdict: 'pass' | 'warn' | 'fail';
}

/** u = sqrt((mark/drop)^2 + (watch/time)^2), share of the flow [-]. Source: root of squares of independent errors. */
export function runUncertainty(drop: number, time: number): number {
  requirePositive({ drop, time });
  const mark = MARK_ERROR / drop;
  const watch = WATCH_ERROR / time;
  return Math.sqrt(mark * mark + watch * watch);
}

/**
 * Flow of a pump from pump-downs between calibrated marks, against the predicted duty.
 *
 *   Q = V/t;  u = sqrt(mean(u_run^2)/n + u_calibration^2)
 *
 * @param runs at least one with a full line; three are asked for
 * @param predicted flow at the mean level of the marks [m3/s], > 0
 * @param limits of deviation and uncertainty
 * @returns mean flow [m3/s], shares, verdict
 * Limits: no water may flow in during a run; a weep hole's return is part of the predicted flow
 * Source: volume over time; limits ours
 * Checked against: fixtures/proof/pumpDown.json, 7.9 % and 2.4 %, 0.05 %
 */
export function pumpDown(runs: readonly PumpDownRun[], predicted: number, limits: PumpDownLimits = PUMP_DOWN_LIMITS): PumpDownResult {
  requirePositive({ predicted });
  runs.forEach((run, i) => requirePositive({ [`runs/${i}/volume`]: run.volume, [`runs/${i}/drop`]: run.drop, [`runs/${i}/time`]: run.time }));
  const counted = runs.filter((run) => !run.lineEmpty);
  if (counted.length === 0) throw new CalcProblem('proof.noRuns', 'runs', { count: runs.length });
  const flows = counted.map((run) => run.volume / run.time);
  const meanFlow = mean(flows);
  requireFinite({ meanFlow });
  const squares = counted.map((run) => runUncertainty(run.drop, run.time)).map((u) => u * u);
  const uncertainty = Math.sqrt(mean(squares) / counted.length + CALIBRATION_SHARE * CALIBRATION_SHARE);
  const deviation = meanFlow / predicted - 1;
  const size = Math.abs(deviation);
  return {
    flows, meanFlow, spread: (Math.max(...flows) - Math.min(...flows)) / meanFlow,
    runUncertainty: Math.sqrt(mean(squares)), uncertainty, biggerDropNeeded: Math.sqrt(mean(squares)) > limits.uncertainty,
    deviation, verdict: size <= limits.pass ? 'pass' : size <= limits.warn ? 'warn' : 'fail',
  };
}

function mean(values: readonly number[]): number {
  let sum = 0;
  for (const value of values) sum += value;
  return sum / values.length;
}
