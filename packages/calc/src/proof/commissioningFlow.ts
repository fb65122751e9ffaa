import { CalcProblem } from '../common/problem.ts';
import { requireFinite } from '../common/require.ts';
import type { DesignDocument } from '../document/document.ts';
import { dutyPoint, type Duty } from '../pump/dutyPoint.ts';
import { C_NEW_PLASTIC } from '../pump/hazenWilliams.ts';
import { partsOf } from '../routing/pathParts.ts';
import { dischargePath, pumpLineOf, weepAt } from '../routing/pumpLine.ts';

export interface CommissioningFlow {
  readonly duty: Duty;
  /** What the weep hole gives back to the basin [m3/s]. */
  readonly weepFlow: number;
  /** What a pump-down between two marks measures: duty less weep hole [m3/s]. */
  readonly netFlow: number;
}

/**
 * Flow that a pump-down of a new system should measure at a basin level.
 *
 *   Q = duty at the level with the friction of new plastic pipe, less the weep hole
 *
 * @param document   the build revision
 * @param pumpId     of the pump under test
 * @param basinLevel mean level of the marks [m]
 * @returns duty [m3/s, m, m/s], weep hole and net flow [m3/s]
 * Limits: one pump on its own line, the line full
 * Source: dutyPoint, weepHoleFlow; C = 150 for new plastic pipe, handbooks
 * Checked against: commissioningFlow.test.ts, by hand against dutyPoint and the hand-calculated lines of the demo site
 */
export function commissioningFlow(document: DesignDocument, pumpId: string, basinLevel: number): CommissioningFlow {
  requireFinite({ basinLevel });
  const pump = partsOf(document, 'pump').find((part) => part.id === pumpId);
  if (pump === undefined) throw new CalcProblem('proof.noPump', 'pump', { id: pumpId });
  const line = pumpLineOf(document, pump);
  const duty = dutyPoint(line.curve, dischargePath(line, basinLevel, 1, C_NEW_PLASTIC));
  const weepFlow = weepAt(line, duty.head);
  return { duty, weepFlow, netFlow: Math.max(0, duty.flow - weepFlow) };
}
