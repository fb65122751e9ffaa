import type { DesignDocument } from '../document/document.ts';
import type { Results, Working } from '../results/results.ts';
import { channelWorkings, gravityWorkings, peakWorkings, pipeWorkings } from './gravityWorkings.ts';
import { basinWorkings, freeboardWorkings, pumpWorkings } from './pumpedWorkings.ts';

/** Workings of the main results, in the order in which a reader follows the water. */
export function allWorkings(document: DesignDocument, results: Results): Working[] {
  const input = { document, results };
  return [gravityWorkings, peakWorkings, channelWorkings, pipeWorkings, basinWorkings, pumpWorkings, freeboardWorkings].flatMap((make) => make(input));
}
