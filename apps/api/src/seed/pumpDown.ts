import { commissioningFlow, type DesignDocument } from '@yardfall/calc';
import type { PumpDownRun } from '@yardfall/contracts';

/** How the stopwatch read against the curve, run by run; the first fills an empty line. */
const factors = [1.12, 1.035, 1.02, 1.045];

/** Readings between two marks of the basin, as a crew with a stopwatch would take them: some percent slower than the curve. */
export function pumpDownRuns(document: DesignDocument, pumpId: string): PumpDownRun[] {
  const pump = document.system.parts.find((part) => part.id === pumpId);
  const basin = document.system.parts.find((part) => pump?.kind === 'pump' && part.id === pump.basin);
  if (basin?.kind !== 'basin') throw new Error(`${pumpId} stands in no basin`);
  const [upperLevel, lowerLevel] = [basin.onLevel, basin.offLevel];
  const volume = (Math.PI / 4) * basin.diameter ** 2 * (upperLevel - lowerLevel);
  const { netFlow } = commissioningFlow(document, pumpId, (upperLevel + lowerLevel) / 2);
  return factors.map((factor, index) => ({ upperLevel, lowerLevel, volume, seconds: Math.round((volume / netFlow) * factor * 10) / 10, emptyLine: index === 0 }));
}
