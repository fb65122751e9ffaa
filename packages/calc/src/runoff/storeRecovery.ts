import { HOUR } from '../common/constants.ts';
import { requirePositive } from '../common/require.ts';
import { exp } from '../math/exp.ts';

export interface Recovery {
  /** Length of one step of the record [s]. */
  readonly step: number;
  /** Dry time after which nothing is left of what a surface took [s]. */
  readonly full: number;
  /** Time in which a share 1/e of it is left [s]. */
  readonly timeConstant: number;
}

/** Full reset after 24 dry hours, and a third of that as time constant, which leaves 5 % just before. Source: ours. */
export const FULL_RECOVERY = 24 * HOUR;
export const RECOVERY_TIME = 8 * HOUR;

export function recoveryOf(step: number): Recovery {
  requirePositive({ step });
  return { step, full: FULL_RECOVERY, timeConstant: RECOVERY_TIME };
}

/**
 * What is left, after one more dry step, of a store that a surface has used.
 *
 *   u = u0*e^(-step/T); nothing from `full` dry hours on
 *
 * @param used before the step, any unit, >= 0
 * @param dry  time without rain up to the end of the step [s]
 * @param recovery step, full reset and time constant [s]
 * @returns used store after the step, same unit
 * Source: ours, stated: full reset after 24 dry hours, exponential between
 * Checked against: e^-1 after a time constant whatever the step, nothing after 24 h
 */
export function afterDryStep(used: number, dry: number, recovery: Recovery): number {
  requirePositive({ step: recovery.step, full: recovery.full, timeConstant: recovery.timeConstant });
  return dry >= recovery.full ? 0 : used * exp(-recovery.step / recovery.timeConstant);
}
