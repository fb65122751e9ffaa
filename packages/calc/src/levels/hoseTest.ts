import { requirePositive } from '../common/require.ts';
import { PI } from '../math/constants.ts';

/**
 * Volume that a buried drain took before it backed up, and the length of pipe that holds so much.
 *
 *   V = Q*t;  L = V / (pi/4 * D^2)
 *
 * @param flow     Q, calibrated hose flow [m3/s], > 0
 * @param time     t, until water stood at the inlet [s], > 0
 * @param diameter D, inside diameter of the drain [m], > 0
 * @returns volume [m3] and blind length [m]
 * Limits: a guide to where the plug is; seepage and a flat pipe that holds air make it long or short
 * Source: common practice, volume of a cylinder
 * Checked against: fixtures/levels/ternHollow.json, row hose: 45 gal in a 4 in drain is about 68 ft
 */
export function hoseTest(flow: number, time: number, diameter: number): { readonly volume: number; readonly blindLength: number } {
  requirePositive({ flow, time, diameter });
  const volume = flow * time;
  return { volume, blindLength: volume / ((PI / 4) * diameter * diameter) };
}
