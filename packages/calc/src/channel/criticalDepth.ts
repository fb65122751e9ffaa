import { GRAVITY } from '../common/constants.ts';
import { requireNotNegative, requirePositive } from '../common/require.ts';
import { bracketedRoot } from '../math/bracketedRoot.ts';
import { cbrt } from '../math/cbrt.ts';
import { circleSection } from '../pipe/circleSection.ts';

/**
 * Critical depth in a rectangular channel.
 *
 *   y_c = (Q^2 / (g*B^2))^(1/3)
 *
 * @param flow  Q [m3/s], >= 0
 * @param width B [m], > 0
 * @returns y_c [m]
 * Source: Chow 1959, Open-Channel Hydraulics, chapter 4
 * Checked against: fixtures/channel/lateralInflow.csv, column yc_outlet, 1e-5
 */
export function criticalDepth(flow: number, width: number): number {
  requireNotNegative({ flow });
  requirePositive({ width });
  const perWidth = flow / width;
  return cbrt((perWidth * perWidth) / GRAVITY);
}

/**
 * Critical depth in a pipe that does not run full.
 *
 *   Q^2 * T = g * A^3
 *
 * @param flow Q [m3/s], >= 0
 * @param diameter D [m], > 0
 * @returns y_c [m], below D
 * Source: Chow 1959, chapter 4
 * Checked against: its own equation, 1e-9
 */
export function criticalDepthInPipe(flow: number, diameter: number): number {
  requireNotNegative({ flow });
  requirePositive({ diameter });
  if (flow === 0) return 0;
  const excess = (ratio: number): number => {
    const { area, topWidth } = circleSection(diameter, ratio);
    return area * Math.sqrt((GRAVITY * area) / topWidth) - flow;
  };
  const almostFull = 1 - 1e-12;
  if (excess(almostFull) <= 0) return diameter;
  return bracketedRoot(excess, 1e-9, almostFull, 1e-14) * diameter;
}
