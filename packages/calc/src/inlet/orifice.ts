import { GRAVITY } from '../common/constants.ts';
import { requireNotNegative } from '../common/require.ts';

/**
 * Flow through an opening under a head.
 *
 *   Q = C * A * sqrt(2*g*h)
 *
 * @param coefficient C [-]
 * @param area A [m2]
 * @param head h to the middle of the opening, or the difference of two levels [m]
 * @returns Q [m3/s]
 * Source: Torricelli; C 0.67 for grates in FHWA HEC-22, 0.60 for a drilled hole in N.J.A.C. 7:9A-9.7
 * Checked against: fixtures/pump/orificeNewJersey.csv, 30 values, 2 %
 */
export function orificeFlow(coefficient: number, area: number, head: number): number {
  requireNotNegative({ coefficient, area, head });
  return coefficient * area * Math.sqrt(2 * GRAVITY * head);
}
