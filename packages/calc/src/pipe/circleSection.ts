import { requirePositive, requireShare } from '../common/require.ts';
import { acos } from '../math/atan.ts';
import { PI } from '../math/constants.ts';
import { sin } from '../math/trig.ts';

export interface CircleSection {
  readonly area: number;
  readonly wettedPerimeter: number;
  readonly hydraulicRadius: number;
  readonly topWidth: number;
}

/**
 * Section of a circular pipe filled to a share of its diameter.
 *
 *   theta = 2*acos(1 - 2*y/D);  A = D^2*(theta - sin(theta))/8;  P = theta*D/2
 *
 * @param diameter D [m], > 0
 * @param depthRatio y/D [-], 0 to 1
 * @returns area [m2], wetted perimeter, hydraulic radius and width of the surface [m]
 * Source: geometry; hydraulic elements of Chow 1959 table 2-1
 * Checked against: fixtures/pipe/partFullCircle.csv, 20 rows, 1e-6
 */
export function circleSection(diameter: number, depthRatio: number): CircleSection {
  requirePositive({ diameter });
  requireShare({ depthRatio });
  if (depthRatio === 0) return { area: 0, wettedPerimeter: 0, hydraulicRadius: 0, topWidth: 0 };
  const theta = depthRatio === 1 ? 2 * PI : 2 * acos(1 - 2 * depthRatio);
  const area = (diameter * diameter * (theta - sin(theta))) / 8;
  const wettedPerimeter = (theta * diameter) / 2;
  const topWidth = 2 * diameter * Math.sqrt(Math.max(depthRatio * (1 - depthRatio), 0));
  return { area, wettedPerimeter, hydraulicRadius: area / wettedPerimeter, topWidth };
}
