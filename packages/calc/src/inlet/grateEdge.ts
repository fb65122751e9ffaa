import { CalcProblem } from '../common/problem.ts';
import { requirePositive } from '../common/require.ts';

/**
 * Edge of a rectangular grate over which water enters. A side against a curb or wall, or that slopes away, is left out.
 *
 *   P = l*L + w*W, l and w the number of long and of short sides that take water
 *
 * @param length L [m], > 0
 * @param width  W [m], > 0
 * @param longSides  0, 1 or 2; a channel drain that is fed from one side has 1
 * @param shortSides 0, 1 or 2
 * @returns P [m]
 * Limits: throws inlet.noSide when none is left, inlet.sides for another number
 * Source: FHWA HEC-22 and TxDOT: the perimeter leaves out the side against the curb
 * Checked against: fixtures/inlet/sagGrate.json, the 4 by 4 in box of row 7.4
 */
export function grateEdge(length: number, width: number, longSides: number, shortSides: number): number {
  requirePositive({ length, width });
  for (const [name, sides] of [['longSides', longSides], ['shortSides', shortSides]] as const) {
    if (sides !== 0 && sides !== 1 && sides !== 2) throw new CalcProblem('inlet.sides', name, { sides });
  }
  if (longSides + shortSides === 0) throw new CalcProblem('inlet.noSide', 'longSides', {});
  return longSides * length + shortSides * width;
}
