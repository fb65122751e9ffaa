import { DAY, MINUTE } from '../common/constants.ts';
import { CalcProblem } from '../common/problem.ts';
import { requireNotNegative, requirePositive } from '../common/require.ts';
import { scsFraction, type ScsType } from './scsDistribution.ts';

/** Below this response time of a surface the printed points are too coarse. Source: ours. */
export const COARSE_BELOW = 15 * MINUTE;
const MOST_BLOCKS = 20000;

export interface ScsHyetograph {
  /** Depth of each block [mm]; the last one may be short. */
  readonly depths: readonly number[];
  /** The surface answers faster than the points of the curve stand. */
  readonly tooCoarse: boolean;
}

/**
 * NRCS 24-hour storm in blocks of any length, for reference beside the nested storm.
 *
 *   P_i = P24 * (F(t_i) - F(t_(i-1)))
 *
 * @param type NRCS rainfall type
 * @param rain 24-hour depth P24 [mm], >= 0
 * @param block length [s], up to a day
 * @param response time of the surface [s]; null when not asked
 * @returns depths that add up to P24, and whether the curve is too coarse for the response
 * Limits: caution under 15 minutes of response; throws storm.unevenBlocks for more than 20 000 blocks
 * Source: TR-55 (1986) appendix B; SCS TP-149 (1973)
 * Checked against: fixtures/rain/rainfall.json, rows 3a.depth and 3a.austin; the sum at any block length, 1e-12
 */
export function scsHyetograph(type: ScsType, rain: number, block: number, response: number | null = null): ScsHyetograph {
  requireNotNegative({ rain, response: response ?? 0 });
  requirePositive({ block });
  const count = Math.floor(DAY / block + 1 - 1e-9);
  if (block > DAY || count > MOST_BLOCKS) throw new CalcProblem('storm.unevenBlocks', 'block', { block });
  let before = 0;
  const depths = Array.from({ length: count }, (_, i) => {
    const fraction = scsFraction(type, Math.min((i + 1) * block, DAY));
    const depth = rain * (fraction - before);
    before = fraction;
    return depth;
  });
  return { depths, tooCoarse: response !== null && response < COARSE_BELOW };
}
