import { CalcProblem } from '../common/problem.ts';
import { requireNotNegative, requirePositive } from '../common/require.ts';

/**
 * Volume between the on and the off level that really counts: what runs back from the line fills it again at once.
 *
 *   V_eff = V - V_runback
 *
 * @param volume V between the levels [m3], > 0
 * @param runBack out of the line when the pump stops [m3], >= 0
 * @returns V_eff [m3]
 * Limits: throws basin.runBackFills when the line alone starts the pump again: it would never rest
 * Source: volume balance
 * Checked against: marks.test.ts, a cycle stepped by hand
 */
export function effectiveVolume(volume: number, runBack: number): number {
  requirePositive({ volume });
  requireNotNegative({ runBack });
  if (runBack >= volume) throw new CalcProblem('basin.runBackFills', 'runBack', { volume, runBack });
  return volume - runBack;
}

/**
 * Time from one start to the next with a line that runs back.
 *
 *   T = V/(Q_p - Q) + (V - V_runback)/Q
 *
 * @param volume V between the levels [m3]
 * @param runBack [m3]
 * @param pumpFlow Q_p [m3/s]
 * @param inflow Q [m3/s]
 * @returns T [s]; Infinity without inflow and from Q_p upward
 * Source: as cycleTime, with the run-back filling first
 * Checked against: cycleTime without run-back, exact
 */
export function cycleWithRunBack(volume: number, runBack: number, pumpFlow: number, inflow: number): number {
  const effective = effectiveVolume(volume, runBack);
  requirePositive({ pumpFlow });
  requireNotNegative({ inflow });
  if (inflow === 0 || inflow >= pumpFlow) return Infinity;
  return volume / (pumpFlow - inflow) + effective / inflow;
}

/**
 * Time left between the alarm and water over the basin, with the pump dead.
 *
 *   t = V / Q
 *
 * @param volume between alarm level and the level that floods [m3], >= 0
 * @param inflow Q [m3/s], >= 0
 * @returns t [s]; Infinity without inflow
 * Source: volume balance
 * Checked against: arithmetic
 */
export function alarmReserve(volume: number, inflow: number): number {
  requireNotNegative({ volume, inflow });
  return inflow === 0 ? Infinity : volume / inflow;
}
