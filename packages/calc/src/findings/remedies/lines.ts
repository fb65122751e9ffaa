import type { DesignDocument, Pump } from '../../document/document.ts';
import { dutyAt, pumpLineOf } from '../../routing/pumpLine.ts';
import type { Remedy } from '../../results/results.ts';
import { judge } from '../limit.ts';
import type { Limits } from '../overrides.ts';
import { firstThat, setFields } from '../patch.ts';

/** Inner diameters of schedule 40 plastic pipe [m]. Source: ASTM D1785, from memory. */
const lineSizes: readonly (readonly [nominal: string, innerDiameter: number])[] = [
  ['1 1/4 in', 0.035052], ['1 1/2 in', 0.040894], ['2 in', 0.052502], ['3 in', 0.077927],
];

export interface LineDuty {
  readonly flow: number;
  readonly velocity: number;
  /** Flow over the greatest of the curve [-]. */
  readonly share: number;
}

/** The line of a pump in another size, if its duty then does what is asked and runs at a velocity without a stop. */
export function otherLine(document: DesignDocument, pump: Pump, limits: Limits, does: (duty: LineDuty) => boolean): Remedy | null {
  const { line } = pumpLineOf(document, pump);
  const candidates = lineSizes.filter(([, size]) => Math.abs(size - line.innerDiameter) > 1e-5)
    .sort((a, b) => Math.abs(a[1] - line.innerDiameter) - Math.abs(b[1] - line.innerDiameter))
    .map(([nominal, innerDiameter]) => setFields(document, line, { innerDiameter, nominal }, 'remedy.otherLine', { pump: pump.name, size: innerDiameter }));
  return firstThat(document, candidates, (left) => {
    const path = pumpLineOf(left, pump);
    const { flow, velocity } = dutyAt(path, path.basin.offLevel);
    const runs = judge(velocity, limits.P4Slow) !== 'fail' && judge(velocity, limits.P4Fast) !== 'fail';
    return flow > 0 && runs && does({ flow, velocity, share: flow / path.curve.runOut });
  });
}

