import { HOUR } from '../common/constants.ts';
import { CalcProblem } from '../common/problem.ts';
import { at } from '../common/require.ts';

export const SCS_TYPES = ['I', 'IA', 'II', 'III'] as const;
export type ScsType = (typeof SCS_TYPES)[number];

const HOURS: readonly number[] = [0, 2, 4, 6, 7, 8, 8.5, 9, 9.5, 9.75, 10, 10.5, 11, 11.5, 11.75, 12, 12.5, 13, 13.5, 14, 16, 20, 24];

const FRACTIONS: Readonly<Record<ScsType, readonly number[]>> = {
  I: [0.0, 0.035, 0.076, 0.125, 0.156, 0.194, 0.219, 0.254, 0.303, 0.362, 0.515, 0.583, 0.624, 0.654, 0.669, 0.682, 0.706, 0.727, 0.748, 0.767, 0.83, 0.926, 1.0],
  IA: [0.0, 0.05, 0.116, 0.206, 0.268, 0.425, 0.48, 0.52, 0.55, 0.564, 0.577, 0.601, 0.624, 0.645, 0.655, 0.664, 0.683, 0.701, 0.719, 0.736, 0.8, 0.906, 1.0],
  II: [0.0, 0.022, 0.048, 0.08, 0.098, 0.12, 0.133, 0.147, 0.163, 0.172, 0.181, 0.204, 0.235, 0.283, 0.357, 0.663, 0.735, 0.772, 0.799, 0.82, 0.88, 0.952, 1.0],
  III: [0.0, 0.02, 0.043, 0.072, 0.089, 0.115, 0.13, 0.148, 0.167, 0.178, 0.189, 0.216, 0.25, 0.298, 0.339, 0.5, 0.702, 0.751, 0.785, 0.811, 0.886, 0.957, 1.0],
};

/**
 * Share of the 24-hour depth that has fallen by a time of the day, for reference beside the nested storm.
 *
 * @param type NRCS rainfall type
 * @param time from the start of the day [s], 0 to 86400
 * @returns fraction [-], straight between the 23 printed points
 * Limits: the points are 15 to 240 minutes apart: too coarse where the response is under 15 minutes
 * Source: SCS TP-149 (1973); TR-55 (1986) appendix B; Chow, Maidment and Mays 1988, section 14.4
 * Checked against: fixtures/rain/scsDistributions.csv, all 92 numbers
 */
export function scsFraction(type: ScsType, time: number): number {
  const hour = time / HOUR;
  if (!(hour >= 0 && hour <= 24)) throw new CalcProblem('storm.outsideDay', 'time', { time });
  const fractions = FRACTIONS[type];
  let i = HOURS.length - 2;
  while (i > 0 && at(HOURS, i) > hour) i -= 1;
  const share = (hour - at(HOURS, i)) / (at(HOURS, i + 1) - at(HOURS, i));
  return at(fractions, i) + (at(fractions, i + 1) - at(fractions, i)) * share;
}
