import { CalcProblem } from '../common/problem.ts';
import { requireNotNegative, requireShare } from '../common/require.ts';

/**
 * Area-weighted runoff coefficient.
 *
 *   C = sum(C_i * A_i) / sum(A_i)
 *
 * @param surfaces coefficient [-] and area [m2] of each
 * @returns C [-]
 * Source: FHWA HEC-22 chapter 3
 * Checked against: fixtures/runoff/rational.json, row 4.3
 */
export function compositeCoefficient(surfaces: readonly { readonly coefficient: number; readonly area: number }[]): number {
  let weighted = 0;
  let total = 0;
  for (const { coefficient, area } of surfaces) {
    requireShare({ coefficient });
    requireNotNegative({ area });
    weighted += coefficient * area;
    total += area;
  }
  if (total === 0) throw new CalcProblem('runoff.noArea', 'surfaces', {});
  return weighted / total;
}
