import { INCH } from '../common/constants.ts';
import { requireNotNegative, requirePositive } from '../common/require.ts';
import { PI } from '../math/constants.ts';
import { darcyWeisbachSlope, PLASTIC_ROUGHNESS } from './darcyWeisbach.ts';
import { HAZEN_WILLIAMS_VELOCITY, hazenWilliamsSlope } from './hazenWilliams.ts';

/** Inside diameters for which the Hazen-Williams form is used: 1 1/4 to 3 in nominal [m]. Source: ours, after handbooks. */
export const HAZEN_WILLIAMS_DIAMETER = { from: 1.25 * INCH, to: 3.1 * INCH } as const;

export interface LineWall {
  readonly hazenWilliamsC: number;
  /** Roughness for the other formula [m]. */
  readonly roughness?: number;
}

export interface LineFriction {
  readonly slope: number;
  readonly velocity: number;
  readonly method: 'hazenWilliams' | 'darcyWeisbach';
}

/** Whether size [m] and velocity [m/s] lie in the range of Hazen-Williams. */
export function hazenWilliamsHolds(diameter: number, velocity: number): boolean {
  const inSize = diameter >= HAZEN_WILLIAMS_DIAMETER.from && diameter <= HAZEN_WILLIAMS_DIAMETER.to;
  return inSize && velocity >= HAZEN_WILLIAMS_VELOCITY.from && velocity <= HAZEN_WILLIAMS_VELOCITY.to;
}

/**
 * Friction of a pump line by the formula that holds for it.
 *
 * Hazen-Williams from 1 1/4 to 3 in and 2 to 8 ft/s, Darcy-Weisbach with Colebrook outside.
 *
 * @param flow Q [m3/s], >= 0
 * @param diameter D, inside [m], > 0
 * @param wall C and roughness
 * @returns head lost per length [-], velocity [m/s], formula
 * Limits: the two formulas differ by some percent where they meet, so the slope steps there; a duty point takes one of them
 * Source: handbooks of pipe flow; the choice: ours
 * Checked against: both formulas on both sides of each limit
 */
export function lineFriction(flow: number, diameter: number, wall: LineWall): LineFriction {
  requireNotNegative({ flow });
  requirePositive({ diameter, hazenWilliamsC: wall.hazenWilliamsC });
  const velocity = flow / ((PI / 4) * diameter * diameter);
  if (hazenWilliamsHolds(diameter, velocity)) return { slope: hazenWilliamsSlope(flow, diameter, wall.hazenWilliamsC), velocity, method: 'hazenWilliams' };
  return { slope: darcyWeisbachSlope(flow, diameter, wall.roughness ?? PLASTIC_ROUGHNESS), velocity, method: 'darcyWeisbach' };
}
