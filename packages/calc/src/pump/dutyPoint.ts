import { requireFinite, requireNotNegative, requirePositive } from '../common/require.ts';
import { bracketedRoot } from '../math/bracketedRoot.ts';
import { PI } from '../math/constants.ts';
import { darcyWeisbachSlope } from './darcyWeisbach.ts';
import { hazenWilliamsSlope } from './hazenWilliams.ts';
import { hazenWilliamsHolds } from './lineFriction.ts';
import { headAtFlow } from './pumpCurve.ts';
import type { PumpCurve } from './pumpCurve.ts';

export interface DischargePath {
  /** Level that the water must reach less the level in the basin [m]; may be negative. */
  readonly staticHead: number;
  /** Length of the line with its fittings as straight pipe [m]. */
  readonly equivalentLength: number;
  readonly innerDiameter: number;
  readonly hazenWilliamsC: number;
  /** Head that does not depend on the flow: an emitter's lid [m]. */
  readonly openingHead: number;
  /** Roughness of the wall [m]: with it Darcy-Weisbach stands in where the answer by Hazen-Williams lies outside its range. */
  readonly wallRoughness?: number;
}

export interface Duty {
  readonly flow: number;
  readonly head: number;
  readonly velocity: number;
  /** Where the answer lies on the datasheet. */
  readonly place: 'onCurve' | 'noFlow' | 'beyondRunOut';
}

/** Head that a line asks for at a flow [m]; by Darcy-Weisbach when a wall roughness is given here. */
export function systemHead(path: DischargePath, flow: number, wallRoughness: number | null = null): number {
  const slope = wallRoughness === null ? hazenWilliamsSlope(flow, path.innerDiameter, path.hazenWilliamsC) : darcyWeisbachSlope(flow, path.innerDiameter, wallRoughness);
  return path.staticHead + path.openingHead + path.equivalentLength * slope;
}

/**
 * Flow at which a pump and its line agree.
 *
 *   H(Q) = static + opening head + L_e * S(Q)
 *
 * @param curve of the pump
 * @param path  of the water
 * @returns flow [m3/s], head [m], velocity in the line [m/s]; no flow when the pump cannot lift so high, run-out when the line asks less than the last point of the datasheet
 * Limits: the head of the pump falls and that of the line rises, so there is one answer; outside the range of Hazen-Williams a wall roughness is needed
 * Source: handbooks; friction see hazenWilliamsSlope and darcyWeisbachSlope
 * Checked against: fixtures/pump/dutyPoint.json, row 14.4 (0.002 gpm) and the demo lines
 */
export function dutyPoint(curve: PumpCurve, path: DischargePath): Duty {
  requireFinite({ staticHead: path.staticHead });
  requirePositive({ innerDiameter: path.innerDiameter, hazenWilliamsC: path.hazenWilliamsC });
  requireNotNegative({ equivalentLength: path.equivalentLength, openingHead: path.openingHead });
  const { wallRoughness } = path;
  if (wallRoughness !== undefined) requireNotNegative({ wallRoughness });
  const duty = agree(curve, path, null);
  if (wallRoughness === undefined || hazenWilliamsHolds(path.innerDiameter, duty.velocity)) return duty;
  return agree(curve, path, wallRoughness);
}

function agree(curve: PumpCurve, path: DischargePath, wallRoughness: number | null): Duty {
  const area = (PI / 4) * path.innerDiameter * path.innerDiameter;
  const excess = (flow: number): number => headAtFlow(curve, flow) - systemHead(path, flow, wallRoughness);
  if (excess(0) <= 0) return { flow: 0, head: headAtFlow(curve, 0), velocity: 0, place: 'noFlow' };
  const beyond = excess(curve.runOut) > 0;
  const flow = beyond ? curve.runOut : bracketedRoot(excess, 0, curve.runOut, 1e-13);
  return { flow, head: headAtFlow(curve, flow), velocity: flow / area, place: beyond ? 'beyondRunOut' : 'onCurve' };
}
