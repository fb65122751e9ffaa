import type { DesignDocument, Outlet, Swale } from '../document/document.ts';
import { PI } from '../math/constants.ts';
import { pow } from '../math/pow.ts';
import { partFullPipe } from '../pipe/manning.ts';
import type { PumpResult } from '../results/results.ts';
import { flowThrough } from './flows.ts';

export interface Exit {
  /** Flow of the design storm that leaves [m3/s]. */
  readonly flow: number;
  /** Its velocity in the throat [m/s]. */
  readonly velocity: number;
}

const bore = (diameter: number): number => (PI / 4) * diameter * diameter;

/**
 * Velocity of uniform flow in a V-shaped swale.
 *
 *   Q = A*R^(2/3)*sqrt(S)/n;  A = z*y^2;  R = z*y / (2*sqrt(1 + z^2));  v = Q/A
 *
 * @param swale slope S > 0, side slope z (run over rise) > 0, roughness n > 0
 * @param flow Q [m3/s], >= 0
 * @returns v [m/s]
 * Source: Manning, triangular section
 */
export function swaleVelocity(swale: Pick<Swale, 'slope' | 'sideSlope' | 'roughness'>, flow: number): number {
  const { slope, sideSlope: z, roughness } = swale;
  if (flow <= 0 || slope <= 0) return 0;
  const shape = z * pow(z / (2 * Math.sqrt(1 + z * z)), 2 / 3);
  const depth = pow((flow * roughness) / (shape * Math.sqrt(slope)), 3 / 8);
  return flow / (z * depth * depth);
}

/** What leaves at an outlet in the design storm; null where nothing that is computed leads there. The fastest of several ways counts. */
export function exitOf(document: DesignDocument, outlet: Outlet, pumps: readonly Pick<PumpResult, 'line' | 'dutyAtOff'>[]): Exit | null {
  const period = document.rain.designReturnPeriod;
  const throat = (flow: number, diameter: number): Exit => ({ flow, velocity: flow / bore(outlet.exitDiameter ?? diameter) });
  const exits = document.system.parts.filter(({ drainsTo }) => drainsTo === outlet.id).flatMap((part): Exit[] => {
    if (part.kind === 'dischargeLine') {
      const flow = pumps.filter((pump) => pump.line === part.id).reduce((sum, pump) => sum + pump.dutyAtOff.flow, 0);
      return [throat(flow, part.innerDiameter)];
    }
    if (part.kind !== 'pipe' && part.kind !== 'roofLine' && part.kind !== 'swale') return [];
    const flow = flowThrough(document, part, period);
    if (part.kind === 'roofLine') return [throat(flow, part.diameter)];
    if (part.kind === 'swale') return [{ flow, velocity: swaleVelocity(part, flow) }];
    const slope = (part.invertUp - part.invertDown) / part.length;
    if (outlet.exitDiameter !== null || slope <= 0) return [throat(flow, part.diameter)];
    return [{ flow, velocity: partFullPipe({ diameter: part.diameter, slope, roughness: part.roughness }, flow).velocity }];
  });
  return exits.reduce<Exit | null>((most, exit) => (most === null || exit.velocity > most.velocity ? exit : most), null);
}
