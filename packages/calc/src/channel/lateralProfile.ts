import { GRAVITY } from '../common/constants.ts';
import { CalcProblem } from '../common/problem.ts';
import { at, requireFinite, requireNotNegative, requirePositive } from '../common/require.ts';
import { cbrt } from '../math/cbrt.ts';
import { criticalDepthIn } from './criticalDepthIn.ts';
import { requireShape, sectionAt, type ChannelShape } from './section.ts';
import type { WaterSurface } from './spatiallyVariedFlow.ts';
import { depthOfEnergy, specificEnergy } from './specificEnergy.ts';

export interface ChannelReach {
  readonly length: number;
  /** Fall per length toward the outlet; 0 level, below 0 adverse. */
  readonly slope: number;
  /** Step down in the floor at the lower end of the reach [m]. */
  readonly drop: number;
}

export interface LateralRun {
  readonly shape: ChannelShape;
  /** From the upper end to the outlet. */
  readonly reaches: readonly ChannelReach[];
  /** Manning n; 0 for a frictionless channel. */
  readonly roughness: number;
  /** Flow that enters at the upper end [m3/s]; 0 for a closed end. */
  readonly headFlow: number;
}

interface Station {
  readonly depth: number;
  readonly force: number;
  readonly gradient: number;
}

const INNER_STEPS = 80;
const SETTLED = 1e-10;

function specificForce(shape: ChannelShape, flow: number, depth: number): number {
  const { area, moment } = sectionAt(shape, depth);
  return flow === 0 ? moment : (flow * flow) / (GRAVITY * area) + moment;
}

/** Slow depth of a specific force, by Newton's steps on a function that is convex above critical depth. */
function slowDepth(shape: ChannelShape, force: number, flow: number, critical: number, guess: number): number {
  if (force <= specificForce(shape, flow, critical)) return critical;
  let y = Math.max(guess, critical * 1.0001, 1e-9);
  for (let i = 0; i < INNER_STEPS; i += 1) {
    const { area, topWidth } = sectionAt(shape, y);
    const slope = area - (flow * flow * topWidth) / (GRAVITY * area * area);
    const next = Math.max(y - (specificForce(shape, flow, y) - force) / slope, (y + critical) / 2);
    const settled = Math.abs(next - y) <= SETTLED * next;
    y = next;
    if (settled) break;
  }
  return y;
}

/** A*(S0 - Sf): what floor and walls add to the force in a length. */
function gradientOf(run: LateralRun, slope: number, flow: number, depth: number): number {
  const { area, wettedPerimeter } = sectionAt(run.shape, depth);
  if (area === 0) return 0;
  const radius = area / wettedPerimeter;
  const n = run.roughness;
  return area * (slope - (n * n * flow * flow) / (area * area * radius * cbrt(radius)));
}

function stationAt(run: LateralRun, slope: number, flow: number, depth: number): Station {
  return { depth, force: specificForce(run.shape, flow, depth), gradient: gradientOf(run, slope, flow, depth) };
}

function stepUp(run: LateralRun, slope: number, from: Station, dx: number, flow: number): Station {
  const critical = criticalDepthIn(run.shape, flow);
  let { depth } = from;
  for (let i = 0; i < INNER_STEPS; i += 1) {
    const force = from.force - 0.5 * dx * (from.gradient + gradientOf(run, slope, flow, depth));
    const next = slowDepth(run.shape, force, flow, critical, depth);
    const settled = Math.abs(next - depth) <= SETTLED * next;
    depth = next;
    if (settled) break;
  }
  return stationAt(run, slope, flow, depth);
}

function requireRun(run: LateralRun, flow: number, endDepth: number | null, steps: number): number {
  requireShape(run.shape);
  requirePositive({ steps });
  requireNotNegative({ roughness: run.roughness, headFlow: run.headFlow, flow, inflow: flow - run.headFlow });
  if (endDepth !== null) requireNotNegative({ endDepth });
  if (run.reaches.length === 0) throw new CalcProblem('channel.noReach', 'reaches', {});
  let length = 0;
  run.reaches.forEach((reach, i) => {
    requirePositive({ [`reaches/${i}/length`]: reach.length });
    requireFinite({ [`reaches/${i}/slope`]: reach.slope });
    requireNotNegative({ [`reaches/${i}/drop`]: reach.drop });
    length += reach.length;
  });
  return length;
}

/**
 * Water surface of a channel of any shape that takes the same inflow along its whole length,
 * in reaches of different fall with steps between them, worked upstream from its real end.
 *
 *   d(Q^2/(g*A) + A*y_bar)/dx = A*(S0 - Sf);  over a step the energy head stays
 *
 * @param run shape, reaches [m], Manning n, flow at the upper end [m3/s]
 * @param flow at the outlet [m3/s], not less than that of the upper end
 * @param endDepth depth that the outlet needs [m]; null for a free end, which runs at critical depth
 * @param steps of the march in each reach, closer together toward its lower end
 * @returns depths above the floor [m]; a step has two points at one x
 * Limits: inflow at right angles, momentum factor 1; a reach that would run faster than critical is put at critical depth, which is high, not low
 * Source: Chow 1959, section 12-2 (from memory); energy over a step: ours
 * Checked against: fixtures/channel/lateralInflow.csv, 0.5 %; spatiallyVariedFlow for rectangles, 1e-8; closed forms of the level frictionless V and trapezoid; a Runge-Kutta march
 */
export function lateralProfile(run: LateralRun, flow: number, endDepth: number | null, steps = 100): WaterSurface {
  const length = requireRun(run, flow, endDepth, steps);
  const flowAt = (x: number): number => run.headFlow + ((flow - run.headFlow) * x) / length;
  const critical = criticalDepthIn(run.shape, flow);
  let depth = Math.max(endDepth ?? critical, critical);
  let foot = length;
  const upward = [{ x: foot, depth }];
  for (let r = run.reaches.length - 1; r >= 0; r -= 1) {
    const reach = at(run.reaches, r);
    if (reach.drop > 0) {
      const energy = Math.max(specificEnergy(run.shape, flowAt(foot), depth) - reach.drop, 0);
      depth = depthOfEnergy(run.shape, flowAt(foot), energy).depth;
      upward.push({ x: foot, depth });
    }
    let here = stationAt(run, reach.slope, flowAt(foot), depth);
    let x = foot;
    for (let i = 1; i <= steps; i += 1) {
      const share = i / steps;
      const nextX = i === steps ? foot - reach.length : foot - reach.length * share * share;
      here = stepUp(run, reach.slope, here, x - nextX, flowAt(Math.max(nextX, 0)));
      x = nextX;
      upward.push({ x: Math.max(x, 0), depth: here.depth });
    }
    depth = here.depth;
    foot = x;
  }
  return summary(upward.reverse(), critical);
}

function summary(profile: readonly { readonly x: number; readonly depth: number }[], critical: number): WaterSurface {
  let top = at(profile, 0);
  for (const point of profile) {
    if (!Number.isFinite(point.depth)) throw new CalcProblem('channel.noProfile', '', { x: point.x });
    if (point.depth > top.depth) top = point;
  }
  return {
    profile, depthUpstream: at(profile, 0).depth, depthAtOutlet: at(profile, profile.length - 1).depth,
    depthMax: top.depth, xOfDepthMax: top.x, criticalDepth: critical,
  };
}
