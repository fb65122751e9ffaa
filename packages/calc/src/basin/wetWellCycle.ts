import { HOUR } from '../common/constants.ts';
import { requireNotNegative, requirePositive } from '../common/require.ts';

/**
 * Time from one start to the next of a pump that stops and starts on levels.
 *
 *   T = V/(Q_p - Q) + V/Q
 *
 * @param volume V between the levels, less what runs back [m3], > 0
 * @param pumpFlow Q_p [m3/s], > 0
 * @param inflow Q [m3/s], >= 0
 * @returns T [s]; Infinity without inflow (never starts) and from Q_p upward (never stops)
 * Source: MIL-HDBK-1005/9A section 2.5.3.6, equation 1; UFC 3-240-04A; HEC-24
 * Checked against: fixtures/basin/wetWell.json, row 15.1, 1e-9
 */
export function cycleTime(volume: number, pumpFlow: number, inflow: number): number {
  requirePositive({ volume, pumpFlow });
  requireNotNegative({ inflow });
  if (inflow === 0 || inflow >= pumpFlow) return Infinity;
  return volume / (pumpFlow - inflow) + volume / inflow;
}

/** Shortest cycle [s], at an inflow of half the pump: T = 4*V/Q_p. Same source, equation 2. */
export function shortestCycle(volume: number, pumpFlow: number): number {
  requirePositive({ volume, pumpFlow });
  return (4 * volume) / pumpFlow;
}

/** Most starts in an hour, at the worst inflow. Same source. */
export function worstStartsPerHour(volume: number, pumpFlow: number): number {
  return HOUR / shortestCycle(volume, pumpFlow);
}

/** Working volume [m3] that keeps every cycle as long as `time` [s]: V = T*Q_p/4. Same source. */
export function workingVolumeFor(time: number, pumpFlow: number): number {
  requirePositive({ time, pumpFlow });
  return (time * pumpFlow) / 4;
}

/** Time [s] of one pump-down with nothing flowing in. */
export function aloneRunTime(volume: number, pumpFlow: number): number {
  requirePositive({ volume, pumpFlow });
  return volume / pumpFlow;
}
