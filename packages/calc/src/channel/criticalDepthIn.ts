import { GRAVITY } from '../common/constants.ts';
import { requireNotNegative } from '../common/require.ts';
import { bracketedRoot } from '../math/bracketedRoot.ts';
import { criticalDepth } from './criticalDepth.ts';
import { requireShape, sectionAt, type ChannelShape } from './section.ts';

const SETTLED = 1e-13;

/** Flow that a depth carries at critical speed [m3/s]: A*sqrt(g*A/T). */
export function criticalFlow(shape: ChannelShape, depth: number): number {
  const { area, topWidth } = sectionAt(shape, depth);
  return area === 0 ? 0 : area * Math.sqrt((GRAVITY * area) / topWidth);
}

/**
 * Critical depth in an open channel of any of the shapes.
 *
 *   Q^2*T = g*A^3
 *
 * @param shape of the channel [m]
 * @param flow Q [m3/s], >= 0
 * @returns y_c [m]
 * Source: Chow 1959, chapter 4
 * Checked against: closed forms of the rectangle and the triangle, 1e-9
 */
export function criticalDepthIn(shape: ChannelShape, flow: number): number {
  requireShape(shape);
  requireNotNegative({ flow });
  if (shape.kind === 'rectangular') return criticalDepth(flow, shape.width);
  let high = 0.01;
  while (criticalFlow(shape, high) < flow) high *= 2;
  return bracketedRoot((depth) => criticalFlow(shape, depth) - flow, 0, high, SETTLED * high);
}
