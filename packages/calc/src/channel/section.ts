import { CalcProblem } from '../common/problem.ts';
import { requireNotNegative, requirePositive } from '../common/require.ts';
import { acos } from '../math/atan.ts';
import { PI } from '../math/constants.ts';
import { sin } from '../math/trig.ts';

export type ChannelShape =
  | { readonly kind: 'rectangular'; readonly width: number }
  /** Floor `width`, 0 for a V; `sideSlope` is horizontal over vertical, the same on both sides. */
  | { readonly kind: 'trapezoidal'; readonly width: number; readonly sideSlope: number }
  /** Half circle of the channel's width under upright walls. */
  | { readonly kind: 'roundBottom'; readonly width: number };

export interface ChannelSection {
  readonly area: number;
  readonly wettedPerimeter: number;
  readonly topWidth: number;
  /** First moment of the area about the water surface [m3]: what the water presses, over its weight. */
  readonly moment: number;
}

const NOTHING: ChannelSection = { area: 0, wettedPerimeter: 0, topWidth: 0, moment: 0 };

export function requireShape(shape: ChannelShape): void {
  if (shape.kind !== 'trapezoidal') requirePositive({ width: shape.width });
  else {
    requireNotNegative({ width: shape.width, sideSlope: shape.sideSlope });
    if (shape.width === 0 && shape.sideSlope === 0) throw new CalcProblem('channel.noWidth', 'width', {});
  }
}

function trapezoid(width: number, side: number, depth: number): ChannelSection {
  return {
    area: (width + side * depth) * depth,
    wettedPerimeter: width + 2 * depth * Math.sqrt(1 + side * side),
    topWidth: width + 2 * side * depth,
    moment: depth * depth * (width / 2 + (side * depth) / 3),
  };
}

function roundBottom(width: number, depth: number): ChannelSection {
  const radius = width / 2;
  if (depth >= radius) {
    const above = depth - radius;
    const half = (PI / 2) * radius * radius;
    return {
      area: half + width * above, wettedPerimeter: PI * radius + 2 * above, topWidth: width,
      moment: (2 / 3) * radius * radius * radius + half * above + radius * above * above,
    };
  }
  const angle = 2 * acos(1 - depth / radius);
  const topWidth = 2 * Math.sqrt(depth * (width - depth));
  const area = (radius * radius * (angle - sin(angle))) / 2;
  return { area, wettedPerimeter: radius * angle, topWidth, moment: (topWidth * topWidth * topWidth) / 12 - (radius - depth) * area };
}

/**
 * Section of a channel that stands full to a depth.
 *
 *   rectangular A = B*y;  trapezoidal A = (b + z*y)*y;  round bottom A = r^2*(t - sin t)/2, t = 2*acos(1 - y/r)
 *
 * @param shape of the channel [m]
 * @param depth y [m], >= 0
 * @returns area [m2], wetted perimeter and width of the surface [m], first moment about the surface [m3]
 * Limits: walls go up as high as the water; throws channel.noWidth for a V without sides
 * Source: geometry; Chow 1959, table 2-1
 * Checked against: geometry of the half circle and the triangle, and the moment as the integral of the area
 */
export function sectionAt(shape: ChannelShape, depth: number): ChannelSection {
  if (depth === 0) return NOTHING;
  if (shape.kind === 'rectangular') return trapezoid(shape.width, 0, depth);
  return shape.kind === 'trapezoidal' ? trapezoid(shape.width, shape.sideSlope, depth) : roundBottom(shape.width, depth);
}
