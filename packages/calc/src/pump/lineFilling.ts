import { at, requireFinite, requireNotNegative, requirePositive } from '../common/require.ts';
import { PI } from '../math/constants.ts';
import { dutyPoint } from './dutyPoint.ts';
import { highestUpTo, requireProfile, type LinePoint } from './lineProfile.ts';
import type { PumpCurve } from './pumpCurve.ts';

const PIECES = 200;

export interface FillingLine {
  /** From the pump to the outlet. */
  readonly points: readonly LinePoint[];
  readonly innerDiameter: number;
  readonly hazenWilliamsC: number;
  /** Equivalent length of the fittings, spread along the line [m]. */
  readonly fittingLength: number;
}

export interface Filling {
  /** Time until the first water leaves [s]; null when the pump cannot lift it over the line. */
  readonly time: number | null;
  /** Water that the line takes before anything is delivered [m3]. */
  readonly volume: number;
  /** Where the front stops [m]; null when it gets through. */
  readonly stallsAt: number | null;
  /** Mean flow of the pump while it fills [m3/s]; 0 when it stalls. */
  readonly meanFlow: number;
}

/**
 * Filling of an empty discharge line: the head grows as the front of the water climbs and the wetted length grows.
 *
 *   dt = A*dx/Q(x);  Q from H(Q) = highest point passed - basin + (wetted length with its fittings)*S(Q)
 *
 * @param curve of the pump
 * @param line points [m], size, fittings
 * @param basinLevel [m]
 * @returns time [s], volume [m3], where it stalls
 * Limits: quasi-steady, the water fills the pipe behind its front; nothing is delivered meanwhile
 * Source: water balance with the duty at each front; ours
 * Checked against: constant-flow pump fills in V/Q, 1e-9; a level line against the integral by quadrature
 */
export function lineFilling(curve: PumpCurve, line: FillingLine, basinLevel: number): Filling {
  requireProfile(line.points);
  requireFinite({ basinLevel });
  requirePositive({ innerDiameter: line.innerDiameter, hazenWilliamsC: line.hazenWilliamsC });
  requireNotNegative({ fittingLength: line.fittingLength });
  const { x: length } = at(line.points, line.points.length - 1);
  const area = (PI / 4) * line.innerDiameter * line.innerDiameter;
  requireFinite({ area });
  const dx = length / PIECES;
  let time = 0;
  for (let i = 0; i < PIECES; i += 1) {
    const x = (i + 0.5) * dx;
    const { flow } = dutyPoint(curve, {
      staticHead: highestUpTo(line.points, x) - basinLevel, equivalentLength: x * (1 + line.fittingLength / length),
      innerDiameter: line.innerDiameter, hazenWilliamsC: line.hazenWilliamsC, openingHead: 0,
    });
    if (flow <= 0) return { time: null, volume: area * i * dx, stallsAt: i * dx, meanFlow: 0 };
    time += (area * dx) / flow;
  }
  return { time, volume: area * length, stallsAt: null, meanFlow: (area * length) / time };
}
