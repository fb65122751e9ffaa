import { GRAVITY } from '../common/constants.ts';
import { requireFinite, requirePositive } from '../common/require.ts';
import { PI } from '../math/constants.ts';
import { pow } from '../math/pow.ts';
import { circleSection } from '../pipe/circleSection.ts';
import { criticalDepthInPipe } from './criticalDepth.ts';

/** Constants of one kind of entrance; `slope` is what the fall of the pipe does, `loss` the K_e of outlet control. */
export interface EntranceKind {
  readonly k: number;
  readonly m: number;
  readonly c: number;
  readonly y: number;
  readonly slope: number;
  readonly loss: number;
}

/** Circular pipes. Source: FHWA HDS-5, table A.1 charts 1 to 3 and the table of entrance losses; read in public copies. */
export const ENTRANCES = {
  squareEdge: { k: 0.0098, m: 2, c: 0.0398, y: 0.67, slope: -0.5, loss: 0.5 },
  grooveEnd: { k: 0.0018, m: 2, c: 0.0292, y: 0.74, slope: -0.5, loss: 0.2 },
  grooveProjecting: { k: 0.0045, m: 2, c: 0.0317, y: 0.69, slope: -0.5, loss: 0.2 },
  corrugatedHeadwall: { k: 0.0078, m: 2, c: 0.0379, y: 0.69, slope: -0.5, loss: 0.5 },
  corrugatedMitered: { k: 0.021, m: 1.33, c: 0.0463, y: 0.75, slope: 0.7, loss: 0.7 },
  corrugatedProjecting: { k: 0.034, m: 1.5, c: 0.0553, y: 0.54, slope: -0.5, loss: 0.9 },
} as const satisfies Record<string, EntranceKind>;

/** SI form of the discharge group Q/(A*D^0.5). */
const K_U = 1.811;
/** Discharge group at which the unsubmerged form ends and the submerged form begins. */
const UNSUBMERGED_TO = 3.5;
const SUBMERGED_FROM = 4;

function unsubmerged(flow: number, diameter: number, slope: number, kind: EntranceKind): number {
  const group = (K_U * flow) / (((PI / 4) * diameter * diameter) * Math.sqrt(diameter));
  const depth = criticalDepthInPipe(flow, diameter);
  const { area } = circleSection(diameter, depth / diameter);
  const velocity = flow / area;
  const critical = depth + (velocity * velocity) / (2 * GRAVITY);
  const loss = kind.m === 2 ? group * group : pow(group, kind.m);
  return critical + diameter * (kind.k * loss + kind.slope * slope);
}

function submerged(group: number, diameter: number, slope: number, kind: EntranceKind): number {
  return diameter * (kind.c * group * group + kind.y + kind.slope * slope);
}

/**
 * Head that the entrance of a circular pipe needs (inlet control).
 *
 *   unsubmerged HW/D = H_c/D + K*(K_u*Q/(A*D^0.5))^M + k_s*S
 *   submerged   HW/D = c*(K_u*Q/(A*D^0.5))^2 + Y + k_s*S
 *
 * @param flow [m3/s], > 0
 * @param diameter D [m], > 0
 * @param slope S of the pipe [-]; 0 when not known
 * @param kind of the entrance
 * @returns head above the invert [m]; between the two forms a straight line
 * Limits: measured on culverts; a 4 in mouth in the end wall of a channel is taken to act alike (ours)
 * Source: FHWA HDS-5, appendix A, inlet control equations and table A.1
 * Checked against: fixtures/channel/entranceControl.json (chart 1 of HDS-5, from memory) and the demo channel's own profile
 */
export function entranceHead(flow: number, diameter: number, slope = 0, kind: EntranceKind = ENTRANCES.squareEdge): number {
  requirePositive({ flow, diameter });
  requireFinite({ slope });
  const perGroup = ((PI / 4) * diameter * diameter * Math.sqrt(diameter)) / K_U;
  const group = flow / perGroup;
  if (group <= UNSUBMERGED_TO) return unsubmerged(flow, diameter, slope, kind);
  if (group >= SUBMERGED_FROM) return submerged(group, diameter, slope, kind);
  const low = unsubmerged(UNSUBMERGED_TO * perGroup, diameter, slope, kind);
  const high = submerged(SUBMERGED_FROM, diameter, slope, kind);
  return low + ((high - low) * (group - UNSUBMERGED_TO)) / (SUBMERGED_FROM - UNSUBMERGED_TO);
}
