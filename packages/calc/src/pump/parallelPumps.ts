import { CalcProblem } from '../common/problem.ts';
import { requireFinite, requireNotNegative, requirePositive } from '../common/require.ts';
import { bracketedRoot } from '../math/bracketedRoot.ts';
import { PI } from '../math/constants.ts';
import { dutyPoint, systemHead, type DischargePath, type Duty } from './dutyPoint.ts';
import { headAtFlow, type PumpCurve } from './pumpCurve.ts';

export interface ParallelDuty {
  readonly flow: number;
  readonly head: number;
  readonly velocity: number;
  /** Flow of each pump; 0 behind its own check valve when it cannot reach the head. */
  readonly flows: readonly number[];
}

/**
 * Flow of a pump at a head: its curve turned round.
 *
 * @param curve of the pump
 * @param head [m]
 * @returns flow [m3/s]; 0 from shut-off upward, the last point of the datasheet below its head
 * Source: as pumpCurve
 * Checked against: headAtFlow, which it gives back, 1e-9
 */
export function flowAtHead(curve: PumpCurve, head: number): number {
  requireFinite({ head });
  if (head >= headAtFlow(curve, 0)) return 0;
  if (head <= headAtFlow(curve, curve.runOut)) return curve.runOut;
  return bracketedRoot((flow) => headAtFlow(curve, flow) - head, 0, curve.runOut, 1e-14);
}

/**
 * Pumps in parallel that share one line, each behind its own check valve.
 *
 *   sum of Q_i(H) = Q with H = static + opening head + L_e*S(Q)
 *
 * @param curves of the pumps that run, at least one
 * @param path of the shared line
 * @returns flow of the line and of each pump [m3/s], head [m], velocity [m/s]
 * Limits: the short pieces between each pump and the line are not counted; throws pump.noPumps without any
 * Source: handbooks of pump systems: curves add at one head
 * Checked against: one pump gives dutyPoint; two pumps lie on the doubled curve, 1e-9
 */
export function parallelOneLine(curves: readonly PumpCurve[], path: DischargePath): ParallelDuty {
  requireFinite({ staticHead: path.staticHead });
  requirePositive({ innerDiameter: path.innerDiameter, hazenWilliamsC: path.hazenWilliamsC });
  requireNotNegative({ equivalentLength: path.equivalentLength, openingHead: path.openingHead });
  if (curves.length === 0) throw new CalcProblem('pump.noPumps', 'curves', {});
  const flowsAt = (head: number): number[] => curves.map((curve) => flowAtHead(curve, head));
  const total = (flows: readonly number[]): number => {
    let sum = 0;
    for (const flow of flows) sum += flow;
    return sum;
  };
  const most = total(curves.map((curve) => curve.runOut));
  const excess = (flow: number): number => total(flowsAt(systemHead(path, flow))) - flow;
  const flow = excess(0) <= 0 ? 0 : excess(most) >= 0 ? most : bracketedRoot(excess, 0, most, 1e-14);
  const head = systemHead(path, flow);
  return { flow, head, velocity: flow / ((PI / 4) * path.innerDiameter * path.innerDiameter), flows: flowsAt(head) };
}

/**
 * Pumps in parallel, each with a line of its own: their flows add up.
 *
 * @param pumps curve and path of each
 * @returns flow together [m3/s] and each pump's duty
 * Source: as dutyPoint
 * Checked against: dutyPoint of each
 */
export function parallelOwnLines(pumps: readonly { readonly curve: PumpCurve; readonly path: DischargePath }[]): { readonly flow: number; readonly duties: readonly Duty[] } {
  const duties = pumps.map(({ curve, path }) => dutyPoint(curve, path));
  let flow = 0;
  for (const duty of duties) flow += duty.flow;
  return { flow, duties };
}
