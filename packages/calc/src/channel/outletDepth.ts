import { requireNotNegative, requirePositive } from '../common/require.ts';
import { bracketedRoot } from '../math/bracketedRoot.ts';
import { entranceHead, ENTRANCES, type EntranceKind } from './entranceControl.ts';
import { pipeHead, type OutletPipe } from './pipeControl.ts';
import { requireShape, type ChannelShape } from './section.ts';
import { depthOfEnergy, leastEnergy } from './specificEnergy.ts';

export type { OutletPipe } from './pipeControl.ts';

export interface OutletHead {
  /** Energy head above the invert of the outlet [m]. */
  readonly head: number;
  /** Depth of water in the channel at the outlet [m]. */
  readonly depth: number;
  readonly control: 'critical' | 'weir' | 'entrance' | 'pipe';
}

/** Head over the diameter above which a mouth no longer acts as a weir. Source: HDS-5, end of the unsubmerged form. */
const MOUTH_FULL = 1.2;

/**
 * Depth in a channel at an end outlet whose invert is flush with the floor.
 *
 * The outlet draws as a weir while its mouth is not full, then as an entrance, or the pipe below
 * rules. The head counts the velocity of the channel's own flow, since the whole flow arrives along it.
 *
 * @param flow [m3/s], >= 0
 * @param channel width of a rectangular channel [m], or its shape
 * @param diameter of the outlet [m]
 * @param pipe the outlet pipe, null when it is not known to rule
 * @param approachFlow that comes along the channel from one side [m3/s]; half of the flow at a middle outlet
 * @param kind of the entrance
 * @returns head and depth at the outlet [m], and what rules; the depth is never less than critical
 * Limits: one outlet at the floor of the channel
 * Source: FHWA HDS-5 (see entranceHead, pipeHead); counting the approach velocity: HDS-5, energy form
 * Checked against: fixtures/channel/ternHollow.json
 */
export function outletDepth(
  flow: number, channel: number | ChannelShape, diameter: number, pipe: OutletPipe | null, approachFlow: number = flow, kind: EntranceKind = ENTRANCES.squareEdge,
): OutletHead {
  const shape: ChannelShape = typeof channel === 'number' ? { kind: 'rectangular', width: channel } : channel;
  requireShape(shape);
  requireNotNegative({ flow, approachFlow });
  requirePositive({ diameter });
  if (flow === 0) return { head: 0, depth: 0, control: 'critical' };
  const entrance = entranceHead(flow, diameter, pipe?.slope ?? 0, kind);
  const below = pipe === null ? 0 : pipeHead(flow, diameter, pipe, kind.loss);
  const head = Math.max(entrance, below);
  const { depth, critical } = depthOfEnergy(shape, approachFlow, head);
  if (critical) return { head: leastEnergy(shape, approachFlow, depth), depth, control: 'critical' };
  if (below > entrance) return { head, depth, control: 'pipe' };
  return { head, depth, control: head < MOUTH_FULL * diameter ? 'weir' : 'entrance' };
}

/**
 * Flow that an outlet draws under a standing head: a pond over the grate, where no profile along the channel is left.
 *
 *   max(entrance head(Q), pipe head(Q)) = h
 *
 * @param head h of still water above the outlet's invert [m], >= 0
 * @param diameter of the outlet [m]
 * @param pipe the outlet pipe, null when it is not known to rule
 * @param kind of the entrance
 * @returns Q [m3/s]; 0 while the pipe is drowned to the head or the head is nothing
 * Source: FHWA HDS-5, the two controls turned round
 * Checked against: outletDepth, whose head it gives back, 1e-9
 */
export function outletCapacity(head: number, diameter: number, pipe: OutletPipe | null, kind: EntranceKind = ENTRANCES.squareEdge): number {
  requireNotNegative({ head });
  requirePositive({ diameter });
  const least = diameter * diameter * 1e-9;
  const needed = (flow: number): number => Math.max(entranceHead(flow, diameter, pipe?.slope ?? 0, kind), pipe === null ? 0 : pipeHead(flow, diameter, pipe, kind.loss)) - head;
  if (head === 0 || needed(least) >= 0) return 0;
  let high = diameter * diameter;
  while (needed(high) < 0) high *= 2;
  return bracketedRoot(needed, least, high, 1e-13 * high);
}
