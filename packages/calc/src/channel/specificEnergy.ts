import { GRAVITY } from '../common/constants.ts';
import { requireNotNegative } from '../common/require.ts';
import { bracketedRoot } from '../math/bracketedRoot.ts';
import { criticalDepthIn } from './criticalDepthIn.ts';
import { sectionAt, type ChannelShape } from './section.ts';

const SETTLED = 1e-12;

/** Depth plus velocity head [m]: y + Q^2/(2*g*A^2); the depth alone without flow. */
export function specificEnergy(shape: ChannelShape, flow: number, depth: number): number {
  if (flow === 0) return depth;
  if (shape.kind === 'rectangular') {
    const perWidth = flow / shape.width;
    return depth + (perWidth * perWidth) / (2 * GRAVITY * depth * depth);
  }
  const { area } = sectionAt(shape, depth);
  return depth + (flow * flow) / (2 * GRAVITY * area * area);
}

/** Least energy head of a flow [m], which it has at critical depth; 1.5*y_c in a rectangle. */
export function leastEnergy(shape: ChannelShape, flow: number, critical: number): number {
  return shape.kind === 'rectangular' ? 1.5 * critical : specificEnergy(shape, flow, critical);
}

/**
 * Slow depth at which a flow has an energy head.
 *
 *   y + Q^2/(2*g*A^2) = E, y >= y_c
 *
 * @param shape of the channel [m]
 * @param flow Q [m3/s], >= 0
 * @param energy E above the floor [m], >= 0
 * @returns depth [m]; critical where the energy does not suffice for a slow flow
 * Source: Chow 1959, chapter 3
 * Checked against: its own equation, 1e-9; rectangle at critical depth has E = 1.5*y_c
 */
export function depthOfEnergy(shape: ChannelShape, flow: number, energy: number): { readonly depth: number; readonly critical: boolean } {
  requireNotNegative({ energy });
  const critical = criticalDepthIn(shape, flow);
  if (energy <= leastEnergy(shape, flow, critical)) return { depth: critical, critical: true };
  return { depth: bracketedRoot((y) => specificEnergy(shape, flow, y) - energy, critical, energy, SETTLED), critical: false };
}
