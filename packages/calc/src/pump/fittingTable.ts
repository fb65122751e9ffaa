import { FOOT } from '../common/constants.ts';
import { CalcProblem } from '../common/problem.ts';

/** Nominal sizes of the table [in]. */
export const FITTING_SIZES = ['0.5', '0.75', '1', '1.25', '1.5', '2', '2.5', '3'] as const;
export type FittingSize = (typeof FITTING_SIZES)[number];

/** Equivalent lengths in feet by size; null where the table is blank. Source: Illinois Administrative Code 77-890 appendix A table Q. */
export const FITTING_FEET = {
  wroughtBend45: [0.5, 0.5, 1, 1, 2, 2, 3, 4],
  wroughtBend90: [0.5, 1, 1, 2, 2, 2, 2, 3],
  wroughtTeeRun: [0.5, 0.5, 0.5, 0.5, 1, 1, 2, null],
  wroughtTeeBranch: [1, 2, 3, 4, 5, 7, 9, null],
  castBend45: [0.5, 1, 2, 2, 3, 5, 8, 11],
  castBend90: [1, 2, 4, 5, 8, 11, 14, 18],
  castTeeRun: [0.5, 0.5, 0.5, 1.5, 1, 2, 2, 2],
  castTeeBranch: [2, 3, 5, 7, 9, 12, 16, 20],
  compressionStop: [13, 21, 30, null, null, null, null, null],
  globeValve: [null, null, null, 53, 66, 90, null, null],
  gateValve: [null, null, 1, 1, 2, 2, 2, 2],
} as const satisfies Record<string, readonly (number | null)[]>;
export type FittingKind = keyof typeof FITTING_FEET;

/**
 * Equivalent length of solvent, sweat and cast fittings by size.
 *
 * @param kind of fitting
 * @param size nominal [in]
 * @returns length of straight pipe [m]
 * Limits: throws pump.fittingNotListed where the table is blank
 * Source: Illinois Administrative Code 77-890 appendix A table Q, a regulation's rounded allowances
 * Checked against: fixtures/pump/fittingsIllinois.csv, every number
 */
export function listedFittingLength(kind: FittingKind, size: FittingSize): number {
  const feet = FITTING_FEET[kind][FITTING_SIZES.indexOf(size)];
  if (feet === undefined || feet === null) throw new CalcProblem('pump.fittingNotListed', 'size', { kind, size });
  return feet * FOOT;
}
