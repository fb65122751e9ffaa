import { requireNotNegative, requireShare } from '../common/require.ts';

/**
 * Peak flow of a small surface.
 *
 *   Q = C * i * A
 *
 * @param coefficient C [-], 0 to 1
 * @param intensity   i [m/s]
 * @param area        A [m2]
 * @returns Q [m3/s]
 * Limits: for small areas whose response is shorter than the averaging time of the rain
 * Source: FHWA HEC-22 chapter 3; TxDOT Hydraulic Design Manual chapter 4
 * Checked against: fixtures/runoff/rational.json, rows 4.1 to 4.6, 0.01 %; row 4.1 with Ku = 1 in US units is 0.8 % low by definition
 */
export function rationalFlow(coefficient: number, intensity: number, area: number): number {
  requireShare({ coefficient });
  requireNotNegative({ intensity, area });
  return coefficient * intensity * area;
}
