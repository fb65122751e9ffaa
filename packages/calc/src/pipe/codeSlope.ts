import { INCH } from '../common/constants.ts';
import { at, requirePositive } from '../common/require.ts';

const inchPerFoot = 1 / 12;

/** Least fall of horizontal drainage pipe by nominal size [in]. Source: Chicago code table 18-29-704.1, as model plumbing code 704.1. */
export const CODE_SLOPES: readonly { readonly upTo: number; readonly slope: number }[] = [
  { upTo: 2.5, slope: 0.25 * inchPerFoot }, { upTo: 6, slope: 0.125 * inchPerFoot }, { upTo: Infinity, slope: 0.0625 * inchPerFoot },
];

/** Building sewers of houses. Source: Davison MI code 1046: 6 in 1/8 in/ft (1 %), 4 in 1/4 in/ft (2 %). */
export const BUILDING_SEWER_SLOPES = { inches4: 0.25 * inchPerFoot, inches6: 0.125 * inchPerFoot } as const;

/**
 * Least fall that a plumbing code asks of a horizontal pipe.
 *
 *   up to 2 1/2 in 1/4 in/ft; 3 to 6 in 1/8; 8 in and over 1/16
 *
 * @param nominal size [m], > 0
 * @returns slope [-]
 * Limits: local codes differ; between 6 and 8 in the flatter value
 * Source: model plumbing code 704.1
 * Checked against: fixtures/pipe/codeSlopes.json, row 10.5
 */
export function codeSlope(nominal: number): number {
  requirePositive({ nominal });
  let i = 0;
  while (nominal / INCH > at(CODE_SLOPES, i).upTo + 1e-9) i += 1;
  return at(CODE_SLOPES, i).slope;
}
