import { FOOT, HOUR, INCH } from '../common/constants.ts';
import { requirePositive } from '../common/require.ts';
import { pow } from '../math/pow.ts';

/**
 * Width of a level rectangular gutter for a roof (Beij), for the hand check.
 *
 *   W = 0.0106 * M^(-4/7) * L^(3/28) * (I*A)^(5/14)     ft, ft, in/h, ft2; M = depth/width
 *
 * @param depthRatio M [-], > 0
 * @param length L of gutter to one outlet [m], > 0
 * @param intensity I of rain [m/s], > 0
 * @param area A of roof in plan [m2], > 0
 * @returns W [m]
 * Limits: with the friction of sheet metal; the frictionless channel needs some 13 % less
 * Source: Beij 1934, J. Research NBS 12, 193-213, RP644 (from memory)
 * Checked against: fixtures/gutter/eavesGutter.json, row 8.beij
 */
export function beijGutterWidth(depthRatio: number, length: number, intensity: number, area: number): number {
  requirePositive({ depthRatio, length, intensity, area });
  const inches = (intensity * HOUR) / INCH;
  const squareFeet = area / (FOOT * FOOT);
  return 0.0106 * pow(depthRatio, -4 / 7) * pow(length / FOOT, 3 / 28) * pow(inches * squareFeet, 5 / 14) * FOOT;
}
