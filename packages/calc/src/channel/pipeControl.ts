import { GRAVITY } from '../common/constants.ts';
import { requireNotNegative, requirePositive } from '../common/require.ts';
import { fullPipe, partFullPipe } from '../pipe/manning.ts';
import { criticalDepthInPipe } from './criticalDepth.ts';
import { ENTRANCES } from './entranceControl.ts';

export interface OutletPipe {
  readonly length: number;
  readonly slope: number;
  readonly roughness: number;
  /** Water above the invert of the pipe's lower end [m]. */
  readonly tailwater: number;
}

/**
 * Head that the pipe below an entrance needs (outlet control).
 *
 *   H = max(TW, (d_c + D)/2) + Sf*L - S*L + (1 + K_e)*v^2/(2*g) for a full pipe; normal depth with its velocity head for a slow open one
 *
 * @param flow [m3/s], > 0
 * @param diameter D [m], > 0
 * @param pipe length [m], slope [-], Manning n, tailwater over its lower invert [m]
 * @param entranceLoss K_e [-]
 * @returns head above the upper invert [m]; 0 when the pipe is steep and free and the entrance rules
 * Source: FHWA HDS-5, outlet control with entrance, friction and velocity; free outfall at (d_c + D)/2
 * Checked against: fixtures/channel/entranceControl.json, full flow worked by hand
 */
export function pipeHead(flow: number, diameter: number, pipe: OutletPipe, entranceLoss: number = ENTRANCES.squareEdge.loss): number {
  requirePositive({ flow, diameter, length: pipe.length });
  requireNotNegative({ tailwater: pipe.tailwater, entranceLoss });
  const gravityPipe = { diameter, slope: pipe.slope, roughness: pipe.roughness };
  const critical = criticalDepthInPipe(flow, diameter);
  const normal = partFullPipe(gravityPipe, flow);
  const velocityHead = (v: number): number => ((1 + entranceLoss) * v * v) / (2 * GRAVITY);
  const drowned = pipe.tailwater > pipe.slope * pipe.length + normal.depth;
  if (!normal.surcharged && !drowned) return normal.depth > critical ? normal.depth + velocityHead(normal.velocity) : 0;
  const full = fullPipe(gravityPipe);
  const ratio = flow / full.flow;
  const friction = pipe.slope * ratio * ratio * pipe.length;
  const exit = Math.max(pipe.tailwater, 0.5 * (critical + diameter));
  return Math.max(exit + friction - pipe.slope * pipe.length + velocityHead(full.velocity * ratio), 0);
}
