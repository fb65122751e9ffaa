import { GRAVITY } from '../common/constants.ts';
import { requireNotNegative, requirePositive } from '../common/require.ts';
import { bracketedRoot } from '../math/bracketedRoot.ts';
import { PI } from '../math/constants.ts';
import { circleSection } from '../pipe/circleSection.ts';
import { fullPipe, partFullPipe } from '../pipe/manning.ts';
import { criticalDepth, criticalDepthInPipe } from './criticalDepth.ts';

/** Constants of a circular pipe with a square edge in a headwall, chart 1 scale 1; the exponent M is 2. Source: FHWA HDS-5, table A.1. */
const K = 0.0098;
const C = 0.0398;
const Y = 0.67;
/** SI form of the discharge group Q/(A*D^0.5). */
const K_U = 1.811;
/** Discharge group at which the unsubmerged form ends and the submerged form begins. */
const UNSUBMERGED_TO = 3.5;
const SUBMERGED_FROM = 4;
/** Entrance loss of a square edge. Source: HDS-5, entrance loss 0.5 of a square edge with headwall. */
const ENTRANCE_LOSS = 0.5;

export interface OutletPipe {
  readonly length: number;
  readonly slope: number;
  readonly roughness: number;
  /** Water above the invert of the pipe's lower end [m]. */
  readonly tailwater: number;
}

export interface OutletHead {
  /** Energy head above the invert of the outlet [m]. */
  readonly head: number;
  /** Depth of water in the channel at the outlet [m]. */
  readonly depth: number;
  readonly control: 'critical' | 'weir' | 'entrance' | 'pipe';
}

function unsubmerged(flow: number, diameter: number, slope: number): number {
  const group = (K_U * flow) / (((PI / 4) * diameter * diameter) * Math.sqrt(diameter));
  const depth = criticalDepthInPipe(flow, diameter);
  const { area } = circleSection(diameter, Math.min(depth / diameter, 1));
  const velocity = flow / area;
  const critical = depth + (velocity * velocity) / (2 * GRAVITY);
  return critical + diameter * (K * group * group - 0.5 * slope);
}

function submerged(group: number, diameter: number, slope: number): number {
  return diameter * (C * group * group + Y - 0.5 * slope);
}

/**
 * Head that the entrance of a circular outlet needs (inlet control).
 *
 *   unsubmerged HW/D = H_c/D + K*(K_u*Q/(A*D^0.5))^2 - 0.5*S
 *   submerged   HW/D = c*(K_u*Q/(A*D^0.5))^2 + Y - 0.5*S
 *
 * @param flow [m3/s], > 0
 * @param diameter D [m], > 0
 * @param slope S of the pipe [-]; 0 when not known
 * @returns head above the invert [m]; between the two forms a straight line
 * Limits: measured on culverts; a 4 in mouth in the end wall of a channel is taken to act alike (ours)
 * Source: FHWA HDS-5, appendix A, inlet control equations; table A.1, square edge with headwall
 * Checked against: fixtures/channel/ternHollow.json through the channel's own profile
 */
export function entranceHead(flow: number, diameter: number, slope = 0): number {
  requirePositive({ flow, diameter });
  const perGroup = ((PI / 4) * diameter * diameter * Math.sqrt(diameter)) / K_U;
  const group = flow / perGroup;
  if (group <= UNSUBMERGED_TO) return unsubmerged(flow, diameter, slope);
  if (group >= SUBMERGED_FROM) return submerged(group, diameter, slope);
  const low = unsubmerged(UNSUBMERGED_TO * perGroup, diameter, slope);
  const high = submerged(SUBMERGED_FROM, diameter, slope);
  return low + ((high - low) * (group - UNSUBMERGED_TO)) / (SUBMERGED_FROM - UNSUBMERGED_TO);
}

/**
 * Head that the pipe below the entrance needs (outlet control), 0 when the pipe is steep and free.
 * Source: FHWA HDS-5, outlet control with entrance, friction and velocity; free outfall at (d_c + D)/2
 */
function pipeHead(flow: number, diameter: number, pipe: OutletPipe): number {
  const gravityPipe = { diameter, slope: pipe.slope, roughness: pipe.roughness };
  const critical = criticalDepthInPipe(flow, diameter);
  const normal = partFullPipe(gravityPipe, flow);
  const velocityHead = (v: number): number => ((1 + ENTRANCE_LOSS) * v * v) / (2 * GRAVITY);
  const drowned = pipe.tailwater > pipe.slope * pipe.length + normal.depth;
  if (!normal.surcharged && !drowned) return normal.depth > critical ? normal.depth + velocityHead(normal.velocity) : 0;
  const full = fullPipe(gravityPipe);
  const ratio = flow / full.flow;
  const friction = pipe.slope * ratio * ratio * pipe.length;
  const exit = Math.max(pipe.tailwater, 0.5 * (critical + diameter));
  return Math.max(exit + friction - pipe.slope * pipe.length + velocityHead(full.velocity * ratio), 0);
}

/** Subcritical depth in a channel that has an energy head: y + Q^2/(2*g*B^2*y^2) = E. */
function depthOfEnergy(energy: number, flow: number, width: number): { depth: number; critical: boolean } {
  const lowest = criticalDepth(flow, width);
  if (energy <= 1.5 * lowest) return { depth: lowest, critical: true };
  const perWidth = flow / width;
  const f = (y: number): number => y + (perWidth * perWidth) / (2 * GRAVITY * y * y) - energy;
  return { depth: bracketedRoot(f, lowest, energy, 1e-12), critical: false };
}

/**
 * Depth in a channel at an end outlet whose invert is flush with the floor.
 *
 * The outlet draws as a weir while its mouth is not full, then as an entrance, or the pipe below
 * rules. The head counts the velocity of the channel's own flow, since the whole flow arrives along it.
 *
 * @param flow [m3/s], >= 0
 * @param width of the channel [m]
 * @param diameter of the outlet [m]
 * @param pipe the outlet pipe, null when it is not known to rule
 * @param approachFlow that comes along the channel from one side [m3/s]; half of the flow at a middle outlet
 * @returns head and depth at the outlet [m], and what rules; the depth is never less than critical
 * Limits: one outlet at the floor of the channel
 * Source: FHWA HDS-5 (see entranceHead); counting the approach velocity: HDS-5, energy form
 * Checked against: fixtures/channel/ternHollow.json
 */
export function outletDepth(flow: number, width: number, diameter: number, pipe: OutletPipe | null, approachFlow: number = flow): OutletHead {
  requireNotNegative({ flow, approachFlow });
  requirePositive({ width, diameter });
  if (flow === 0) return { head: 0, depth: 0, control: 'critical' };
  const entrance = entranceHead(flow, diameter, pipe?.slope ?? 0);
  const below = pipe === null ? 0 : pipeHead(flow, diameter, pipe);
  const head = Math.max(entrance, below);
  const { depth, critical } = depthOfEnergy(head, approachFlow, width);
  if (critical) return { head: 1.5 * depth, depth, control: 'critical' };
  if (below > entrance) return { head, depth, control: 'pipe' };
  return { head, depth, control: head < 1.2 * diameter ? 'weir' : 'entrance' };
}
