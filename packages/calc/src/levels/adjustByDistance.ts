import { CalcProblem } from '../common/problem.ts';
import { requireFinite, requireNotNegative, requirePositive } from '../common/require.ts';

/**
 * Corrections of a level run that does not close, in proportion to the distance from the start, or to set-ups.
 *
 *   c_i = -e * d_i / D
 *
 * @param misclosure e, computed less known level at the end [m]
 * @param along d_i, distance or number of set-ups to each point, 0 to D
 * @param total D, of the whole run, > 0, in the same unit
 * @returns correction of each point [m], to be added
 * Limits: throws levels.beyondRun for a point beyond the end
 * Source: NAVEDTRA 14071, adjustment of intermediate bench marks; FM 5-233 appendix B
 * Checked against: fixtures/levels/levelling.json, rows 1.3 and 1.4
 */
export function adjustByDistance(misclosure: number, along: readonly number[], total: number): number[] {
  requireFinite({ misclosure });
  requirePositive({ total });
  return along.map((distance, i) => {
    requireNotNegative({ [`along/${i}`]: distance });
    if (distance > total) throw new CalcProblem('levels.beyondRun', `along/${i}`, { distance, total });
    return distance === 0 ? 0 : (-misclosure * distance) / total;
  });
}
