import { requireNotNegative, requirePositive } from '../common/require.ts';
import { PI } from '../math/constants.ts';

/**
 * Water that stands in a full line, and runs back to the basin without a check valve.
 *
 *   V = pi/4 * D^2 * L
 *
 * @param innerDiameter D [m], > 0
 * @param length L [m], >= 0
 * @returns V [m3]
 * Limits: a line that sags keeps what lies below its outlet
 * Source: geometry; extension tables of gallons per 100 ft, from memory
 * Checked against: fixtures/pump/drainBack.json, row 14.3, 0.005 gal
 */
export function lineVolume(innerDiameter: number, length: number): number {
  requirePositive({ innerDiameter });
  requireNotNegative({ length });
  return (PI / 4) * innerDiameter * innerDiameter * length;
}
