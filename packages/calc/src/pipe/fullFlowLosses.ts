import { GRAVITY } from '../common/constants.ts';
import { CalcProblem } from '../common/problem.ts';
import { at, requireFinite, requireNotNegative, requirePositive } from '../common/require.ts';
import { criticalDepthInPipe } from '../channel/criticalDepth.ts';
import { PI } from '../math/constants.ts';
import { pow } from '../math/pow.ts';

export interface FullPipe {
  readonly diameter: number;
  readonly length: number;
  /** Manning n. */
  readonly roughness: number;
  readonly invertUp: number;
  readonly invertDown: number;
  /** Losses in velocity heads: where the water comes to rest, bends and joints along the way, and the entrance. */
  readonly exitLoss: number;
  readonly minorLoss: number;
  readonly entranceLoss: number;
}

export interface FullFlow {
  readonly velocity: number;
  readonly frictionSlope: number;
  readonly exit: number;
  readonly friction: number;
  readonly minor: number;
  readonly entrance: number;
  /** Still water that the pipe needs above it, and water that it works against [m]. */
  readonly levelUp: number;
  readonly levelDown: number;
  /** Pressure line inside the pipe at its upper end stands over the crown: it does run full. */
  readonly full: boolean;
}

/** Source: FHWA HEC-22 and HDS-5; see the channel's entrance kinds for others. */
export const USUAL_LOSSES = { exit: 1, entrance: 0.5 } as const;

/**
 * Friction slope of a pipe running full under pressure.
 *
 *   Sf = n^2*v^2 / (D/4)^(4/3)
 *
 * @param flow Q [m3/s], >= 0
 * @param diameter D [m], > 0
 * @param roughness n, > 0
 * @returns Sf [-]
 * Source: Manning, full pipe; FHWA HEC-22
 * Checked against: fullPipe, whose slope it gives back, 1e-12
 */
export function fullFrictionSlope(flow: number, diameter: number, roughness: number): number {
  requireNotNegative({ flow });
  requirePositive({ diameter, roughness });
  const velocity = flow / ((PI / 4) * diameter * diameter);
  return (roughness * roughness * velocity * velocity) / pow(diameter / 4, 4 / 3);
}

/**
 * Level of still water that a full pipe needs above its upper end.
 *
 *   level up = max(tailwater, invert + (d_c + D)/2) + (K_exit + Sf*L*2g/v^2 + K_minor + K_entrance - K_kept)*v^2/(2*g)
 *
 * With a tailwater the pipe gives its velocity head to the water it enters (K_exit); at a free end it keeps
 * it, and the whole velocity head counts.
 *
 * @param pipe size [m], n, inverts [m], losses in velocity heads
 * @param flow Q [m3/s], >= 0
 * @param tailwater level of the water that the pipe enters [m]
 * @returns losses [m] and levels [m]
 * Limits: throws pipe.noFall without fall, since a drain pipe always falls; not for a pipe that runs part full (see `full`)
 * Source: FHWA HEC-22 chapter 7 and HDS-5, energy losses of full flow; free outfall at (d_c + D)/2
 * Checked against: fixtures/pipe/fullFlow.json, worked by hand
 */
export function fullFlowLosses(pipe: FullPipe, flow: number, tailwater: number): FullFlow {
  requirePositive({ diameter: pipe.diameter, length: pipe.length, roughness: pipe.roughness });
  requireNotNegative({ flow, exitLoss: pipe.exitLoss, minorLoss: pipe.minorLoss, entranceLoss: pipe.entranceLoss });
  requireFinite({ tailwater, invertUp: pipe.invertUp, invertDown: pipe.invertDown });
  if (pipe.invertUp <= pipe.invertDown) throw new CalcProblem('pipe.noFall', 'invertUp', { invertUp: pipe.invertUp, invertDown: pipe.invertDown });
  const frictionSlope = fullFrictionSlope(flow, pipe.diameter, pipe.roughness);
  const velocity = flow / ((PI / 4) * pipe.diameter * pipe.diameter);
  const head = (velocity * velocity) / (2 * GRAVITY);
  const free = pipe.invertDown + (criticalDepthInPipe(flow, pipe.diameter) + pipe.diameter) / 2;
  const levelDown = Math.max(tailwater, free);
  const exit = tailwater >= free ? pipe.exitLoss * head : head;
  const friction = frictionSlope * pipe.length;
  const minor = pipe.minorLoss * head;
  const entrance = pipe.entranceLoss * head;
  const levelUp = levelDown + exit + friction + minor + entrance;
  return { velocity, frictionSlope, exit, friction, minor, entrance, levelUp, levelDown, full: levelUp - entrance - head >= pipe.invertUp + pipe.diameter };
}

/**
 * Levels of still water at the heads of pipes in a row, worked up from the basin.
 *
 * @param pipes from the lowest to the highest, each with its own flow [m3/s]
 * @param tailwater level in the basin [m]
 * @returns answer of each pipe; the level above one is the tailwater of the next
 * Limits: a box or joint between two pipes is taken as still water, which is high, not low; throws pipe.noPipes without any
 * Source: as fullFlowLosses
 * Checked against: fullFlowLosses pipe by pipe, exact
 */
export function fullFlowProfile(pipes: readonly { readonly pipe: FullPipe; readonly flow: number }[], tailwater: number): FullFlow[] {
  if (pipes.length === 0) throw new CalcProblem('pipe.noPipes', 'pipes', {});
  const answers: FullFlow[] = [];
  pipes.forEach(({ pipe, flow }, i) => {
    answers.push(fullFlowLosses(pipe, flow, i === 0 ? tailwater : at(answers, i - 1).levelUp));
  });
  return answers;
}
