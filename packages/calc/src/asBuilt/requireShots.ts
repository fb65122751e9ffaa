import { CalcProblem } from '../common/problem.ts';
import { requireFinite } from '../common/require.ts';
import type { PipeShot } from './pipeProfile.ts';

/** Throws unless there are two shots or more, whose distances rise. */
export function requireShots(shots: readonly PipeShot[]): void {
  if (shots.length < 2) throw new CalcProblem('asBuilt.fewShots', 'shots', { count: shots.length });
  shots.forEach(({ at, level }, i) => {
    requireFinite({ at, level });
    if (i > 0 && at <= shots[i - 1]!.at) throw new CalcProblem('asBuilt.notRising', `shots/${i}/at`, { at });
  });
}
