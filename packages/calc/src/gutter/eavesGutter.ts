import { at, requirePositive } from '../common/require.ts';
import { PI } from '../math/constants.ts';
import { pow } from '../math/pow.ts';

export interface EavesGutter {
  readonly shape: 'rectangular' | 'halfRound';
  /** Width at the top and depth to the edge that spills first [m]. */
  readonly width: number;
  readonly depth: number;
  /** Length that drains to the outlet from one side [m]. */
  readonly drainageLength: number;
  /** Distance from the outlet to a bend sharper than 10 degrees [m], null without one. */
  readonly bendAt: number | null;
}

/** Share left by length over depth for a level gutter. Source: makers' page after EN 12056-3. */
const LENGTH_OVER_DEPTH = [50, 100, 150, 200] as const;
const LENGTH_FACTOR = [1, 0.93, 0.86, 0.8] as const;

function lengthFactor(ratio: number): number {
  if (ratio <= LENGTH_OVER_DEPTH[0]) return 1;
  for (let i = 1; i < LENGTH_OVER_DEPTH.length; i += 1) {
    const x1 = at(LENGTH_OVER_DEPTH, i - 1);
    const x2 = at(LENGTH_OVER_DEPTH, i);
    const y1 = at(LENGTH_FACTOR, i - 1);
    if (ratio <= x2) return y1 + ((at(LENGTH_FACTOR, i) - y1) * (ratio - x1)) / (x2 - x1);
  }
  return LENGTH_FACTOR[3];
}

/** Share left by a bend: under 2 m from the outlet 0.8, under 4 m 0.9. Same source, from older practice. */
function bendFactor(bendAt: number | null): number {
  if (bendAt === null || bendAt >= 4) return 1;
  return bendAt < 2 ? 0.8 : 0.9;
}

/**
 * Flow that a level eaves gutter carries to a free outlet at its end.
 *
 *   Q = 0.9 * k * A^1.25 * F_d * F_L * F_bend;   k = 3.48e-5 rectangular, 2.78e-5 half round (L/s, mm2)
 *   F_d = (depth/width)^(1/4) for a rectangular gutter, at most 1
 *
 * @param gutter size and length
 * @returns Q [m3/s]
 * Limits: level or under 3 mm/m (a fall is not counted); the outlet must itself carry the flow; beyond L/depth = 200 the factor of 200
 * Source: EN 12056-3:2000 clause 5, formulas from memory; F_d follows from the frictionless level channel, ours
 * Checked against: fixtures/gutter/eavesGutter.json
 */
export function eavesGutterCapacity(gutter: EavesGutter): number {
  requirePositive({ width: gutter.width, depth: gutter.depth, drainageLength: gutter.drainageLength });
  const halfRound = gutter.shape === 'halfRound';
  const area = (halfRound ? (PI / 4) * gutter.width * gutter.depth : gutter.width * gutter.depth) * 1e6;
  const litres = (halfRound ? 2.78e-5 : 3.48e-5) * pow(area, 1.25);
  const depthFactor = halfRound ? 1 : Math.min(1, Math.sqrt(Math.sqrt(gutter.depth / gutter.width)));
  const shares = depthFactor * lengthFactor(gutter.drainageLength / gutter.depth) * bendFactor(gutter.bendAt);
  return (0.9 * litres * shares) / 1000;
}
