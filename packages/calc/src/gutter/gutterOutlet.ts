import { requireNotNegative, requirePositive } from '../common/require.ts';

/** Outlet with a sharp edge; 1 for a tapered one. Source: EN 12056-3, from memory. */
export const SHARP_OUTLET = 0.5;

/**
 * Flow that an outlet in the sole of a gutter takes under the water that stands over it.
 *
 *   weir Q = D*h^1.5/7500 up to h = D/2;  orifice Q = D^2*h^0.5/15000 above     L/s, mm, for a tapered outlet
 *
 * @param diameter D of the outlet [m], > 0
 * @param depth h over the outlet [m], >= 0
 * @param shape 1 for a tapered outlet, 0.5 for a sharp one
 * @returns Q [m3/s]
 * Limits: no strainer (half of it with one); the two forms meet at D/2
 * Source: EN 12056-3:2000, outlets of gutters, from memory
 * Checked against: fixtures/gutter/eavesGutter.json, row en.outlet, worked by hand
 */
export function gutterOutletFlow(diameter: number, depth: number, shape: number = 1): number {
  requirePositive({ diameter, shape });
  requireNotNegative({ depth });
  const d = diameter * 1000;
  const h = depth * 1000;
  const litres = h <= d / 2 ? (d * h * Math.sqrt(h)) / 7500 : (d * d * Math.sqrt(h)) / 15000;
  return (shape * litres) / 1000;
}
