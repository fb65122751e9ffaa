import { requireFinite, requireNotNegative } from '../common/require.ts';

/** Length added for fittings in a worksheet: 25 %. Source: University of Minnesota pump-selection worksheet. */
export const FITTING_ALLOWANCE = 1.25;

/**
 * Total head of a pump by the worksheet, for the hand check.
 *
 *   H = lift + special head + friction per 100 ft * 1.25*L/100
 *
 * @param lift from the water in the basin to the outlet [m]
 * @param special head at the outlet [m], >= 0
 * @param length L of the line [m], >= 0
 * @param frictionSlope of the pipe at the flow [-], >= 0
 * @param allowance factor on the length for fittings
 * @returns head [m], friction part [m]
 * Source: University of Minnesota on-site sewage manual, pump-selection worksheet
 * Checked against: fixtures/pump/totalHead.json, rows 14.1 and 14.2
 */
export function worksheetHead(
  lift: number, special: number, length: number, frictionSlope: number, allowance: number = FITTING_ALLOWANCE,
): { readonly head: number; readonly friction: number } {
  requireFinite({ lift });
  requireNotNegative({ special, length, frictionSlope, allowance });
  const friction = frictionSlope * length * allowance;
  return { head: lift + special + friction, friction };
}
