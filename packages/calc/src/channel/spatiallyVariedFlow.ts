import { GRAVITY } from '../common/constants.ts';
import { CalcProblem } from '../common/problem.ts';
import { at, requireFinite, requireNotNegative, requirePositive } from '../common/require.ts';
import { cbrt } from '../math/cbrt.ts';
import { criticalDepth } from './criticalDepth.ts';

export interface LateralChannel {
  readonly width: number;
  readonly length: number;
  /** Fall per length toward the outlet; 0 for a level channel. */
  readonly slope: number;
  /** Manning n; 0 for a frictionless channel. */
  readonly roughness: number;
}

export interface WaterSurface {
  /** From the closed upstream end (x = 0) to the outlet. */
  readonly profile: readonly { readonly x: number; readonly depth: number }[];
  readonly depthUpstream: number;
  readonly depthAtOutlet: number;
  readonly depthMax: number;
  readonly xOfDepthMax: number;
  readonly criticalDepth: number;
}

const INNER_STEPS = 60;
const SETTLED = 1e-10;
/** Newton doubles its digits: what moved so little is right to rounding. */
const NEWTON_SETTLED = 1e-9;

/** Subcritical depth at which a section carries Q with a specific force M: Q^2/(g*B*y) + B*y^2/2 = M. */
function subcriticalDepth(force: number, flow: number, width: number, critical: number): number {
  if (force <= 1.5 * width * critical * critical) return critical;
  const momentum = (flow * flow) / (GRAVITY * width);
  let y = Math.sqrt((2 * force) / width);
  for (let i = 0; i < INNER_STEPS; i += 1) {
    const change = (momentum / y + (width * y * y) / 2 - force) / (width * y - momentum / (y * y));
    if (!Number.isFinite(change)) return critical;
    y = Math.max(y - change, critical);
    if (Math.abs(change) <= NEWTON_SETTLED * y) break;
  }
  return y;
}

/** A * (S0 - Sf), the force that the floor and the walls add per length. */
function forceGradient(channel: LateralChannel, flow: number, depth: number): number {
  const area = channel.width * depth;
  if (area === 0) return 0;
  const radius = area / (channel.width + 2 * depth);
  const n = channel.roughness;
  const friction = n === 0 ? 0 : (n * n * flow * flow) / (area * area * radius * cbrt(radius));
  return area * (channel.slope - friction);
}

function stepUpstream(channel: LateralChannel, from: { force: number; gradient: number; depth: number }, dx: number, flow: number): { force: number; gradient: number; depth: number } {
  const perWidth = flow / channel.width;
  const critical = cbrt((perWidth * perWidth) / GRAVITY);
  let depth = from.depth;
  let force = from.force;
  let gradient = from.gradient;
  for (let i = 0; i < INNER_STEPS; i += 1) {
    gradient = forceGradient(channel, flow, depth);
    force = from.force - 0.5 * dx * (from.gradient + gradient);
    const next = subcriticalDepth(force, flow, channel.width, critical);
    const settled = Math.abs(next - depth) <= SETTLED * next;
    depth = next;
    if (settled) break;
  }
  return { force: Math.max(force, 1.5 * channel.width * critical * critical), gradient, depth };
}

/**
 * Water surface in a rectangular channel that takes the same inflow along its whole length,
 * worked upstream from its real end.
 *
 *   d(Q^2/(g*A) + A*y/2)/dx = A*(S0 - Sf);  Q = Q_end * x/L
 *
 * @param channel width, length [m], slope, Manning n
 * @param flow    at the outlet [m3/s], >= 0
 * @param endDepth depth that the outlet needs [m]; null for a free end, which runs at critical depth
 * @param steps   of the march, closer together toward the outlet
 * @returns depths [m]
 * Limits: inflow at right angles, momentum factor 1, subcritical; a reach that would run faster is put at critical depth, which is high, not low
 * Source: Chow 1959, section 12-2; Beij 1934, J. Research NBS 12, RP644: level and frictionless gives sqrt(3)*y_c (citations from memory)
 * Checked against: fixtures/channel/lateralInflow.csv, 10 profiles, 0.5 %; sqrt(3)*y_c to 1e-6
 */
export function spatiallyVariedFlow(channel: LateralChannel, flow: number, endDepth: number | null, steps = 100): WaterSurface {
  requirePositive({ width: channel.width, length: channel.length, steps });
  requireNotNegative({ roughness: channel.roughness, flow });
  requireFinite({ slope: channel.slope });
  if (endDepth !== null) requireNotNegative({ endDepth });
  if (flow === 0) return stillWater(channel, endDepth ?? 0);
  const critical = criticalDepth(flow, channel.width);
  const depth = Math.max(endDepth ?? critical, critical);
  let here = { depth, force: (flow * flow) / (GRAVITY * channel.width * depth) + (channel.width * depth * depth) / 2, gradient: forceGradient(channel, flow, depth) };
  const upward = [{ x: channel.length, depth }];
  let x = channel.length;
  for (let i = 1; i <= steps; i += 1) {
    const back = i / steps;
    const nextX = i === steps ? 0 : channel.length * (1 - back * back);
    here = stepUpstream(channel, here, x - nextX, (flow * nextX) / channel.length);
    x = nextX;
    upward.push({ x, depth: here.depth });
  }
  return summarize(upward.reverse(), critical);
}

function stillWater(channel: LateralChannel, depth: number): WaterSurface {
  const up = Math.max(depth - channel.slope * channel.length, 0);
  return summarize([{ x: 0, depth: up }, { x: channel.length, depth }], 0);
}

function summarize(profile: { x: number; depth: number }[], critical: number): WaterSurface {
  let top = at(profile, 0);
  for (const point of profile) if (point.depth > top.depth) top = point;
  if (!Number.isFinite(top.depth)) throw new CalcProblem('channel.noProfile', '', {});
  return {
    profile, depthUpstream: at(profile, 0).depth, depthAtOutlet: at(profile, profile.length - 1).depth,
    depthMax: top.depth, xOfDepthMax: top.x, criticalDepth: critical,
  };
}

/** Depth at a place of a profile [m], straight between its points. */
export function depthAtStation(surface: WaterSurface, x: number): number {
  const { profile } = surface;
  for (let i = 1; i < profile.length; i += 1) {
    const right = at(profile, i);
    const left = at(profile, i - 1);
    if (x <= right.x) return left.depth + ((right.depth - left.depth) * (x - left.x)) / (right.x - left.x);
  }
  return surface.depthAtOutlet;
}
