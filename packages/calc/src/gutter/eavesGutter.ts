import { at, requireNotNegative, requirePositive } from '../common/require.ts';
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
  /** Fall toward the outlet [-]; level without it. */
  readonly slope?: number;
}

/** Falls of the table [-]. Source: EN 12056-3:2000 table 6, from memory. */
const FALLS = [0.003, 0.004, 0.006, 0.008, 0.01] as const;

/**
 * Share by length over depth, for a gutter that is level or falls at most 3 mm/m, and for the falls above it.
 * Source: EN 12056-3:2000 table 6; the level column at 50 to 200 as a makers' page prints it, the rest from memory.
 */
const LENGTH_SHARES: readonly (readonly [number, readonly number[]])[] = [
  [50, [1, 1, 1, 1, 1]], [100, [0.93, 1.03, 1.08, 1.13, 1.18]], [150, [0.86, 1.07, 1.17, 1.27, 1.37]], [200, [0.8, 1.1, 1.25, 1.4, 1.55]],
];

function straight(x: number, x1: number, x2: number, y1: number, y2: number): number {
  return y1 + ((y2 - y1) * (x - x1)) / (x2 - x1);
}

/** Share of one column of the table. */
function columnShare(ratio: number, column: number): number {
  for (let i = 1; i < LENGTH_SHARES.length; i += 1) {
    const [x1, y1] = at(LENGTH_SHARES, i - 1);
    const [x2, y2] = at(LENGTH_SHARES, i);
    if (ratio <= x2) return straight(ratio, x1, x2, at(y1, column), at(y2, column));
  }
  return at(at(LENGTH_SHARES, LENGTH_SHARES.length - 1)[1], column);
}

/** Share by length over depth and fall, read between the entries of the table. */
export function lengthFactor(ratio: number, slope: number): number {
  if (ratio <= 50) return 1;
  if (slope <= FALLS[0]) return columnShare(ratio, 0);
  for (let i = 1; i < FALLS.length; i += 1) {
    if (slope <= at(FALLS, i)) return straight(slope, at(FALLS, i - 1), at(FALLS, i), columnShare(ratio, i - 1), columnShare(ratio, i));
  }
  return columnShare(ratio, FALLS.length - 1);
}

/** Share left by a bend: under 2 m from the outlet 0.8, under 4 m 0.9. Same source, from older practice. */
function bendFactor(bendAt: number | null): number {
  if (bendAt === null || bendAt >= 4) return 1;
  return bendAt < 2 ? 0.8 : 0.9;
}

/**
 * Flow that an eaves gutter carries to a free outlet at its end.
 *
 *   Q = 0.9 * k * A^1.25 * F_d * F_L * F_bend;   k = 3.48e-5 rectangular, 2.78e-5 half round (L/s, mm2)
 *   F_d = (depth/width)^(1/4) for a rectangular gutter, at most 1
 *
 * @param gutter size and length
 * @returns Q [m3/s]
 * Limits: falls up to 10 mm/m are counted, steeper ones as that; the outlet must itself carry the flow (gutterOutletFlow); beyond L/depth = 200 the factor of 200
 * Source: EN 12056-3:2000 clause 5, formulas from memory; F_d follows from the frictionless level channel, ours
 * Checked against: fixtures/gutter/eavesGutter.json
 */
export function eavesGutterCapacity(gutter: EavesGutter): number {
  requirePositive({ width: gutter.width, depth: gutter.depth, drainageLength: gutter.drainageLength });
  const slope = gutter.slope ?? 0;
  requireNotNegative({ slope });
  const halfRound = gutter.shape === 'halfRound';
  const area = (halfRound ? (PI / 4) * gutter.width * gutter.depth : gutter.width * gutter.depth) * 1e6;
  const litres = (halfRound ? 2.78e-5 : 3.48e-5) * pow(area, 1.25);
  const depthFactor = halfRound ? 1 : Math.min(1, Math.sqrt(Math.sqrt(gutter.depth / gutter.width)));
  const shares = depthFactor * lengthFactor(gutter.drainageLength / gutter.depth, slope) * bendFactor(gutter.bendAt);
  return (0.9 * litres * shares) / 1000;
}
