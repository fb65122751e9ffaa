import type { EvaluationContext } from '../evaluate/context.ts';
import type { Results, Working } from '../results/results.ts';
import { basinWorkings } from './basinWorkings.ts';
import { channelWorkings, grateWorkings } from './channelWorkings.ts';
import { bandWorkings, protectionWorkings, whatIfWorkings } from './decisionWorkings.ts';
import { gutterWorkings, peakWorkings } from './flowWorkings.ts';
import { dryWellWorkings, outletWorkings, wellWorkings } from './outletWorkings.ts';
import { pipeWorkings, roofLineWorkings, swaleWorkings } from './pipeWorkings.ts';
import { pumpWorkings } from './pumpWorkings.ts';
import { quantityWorkings } from './quantityWorkings.ts';
import { recordedWorkings } from './recordedWorkings.ts';
import { existingDrainWorkings, gravityWorkings, lowSpotWorkings } from './siteWorkings.ts';
import { familyWorkings, freeboardWorkings, handWorkings, outageWorkings, stormWorkings } from './stormWorkings.ts';
import { underdrainWorkings } from './underdrainWorkings.ts';
import type { WorkingInput } from './working.ts';

type Make = (input: WorkingInput) => Working[];

const topics: readonly Make[] = [
  gravityWorkings, lowSpotWorkings, existingDrainWorkings, peakWorkings, gutterWorkings, roofLineWorkings, grateWorkings, channelWorkings, underdrainWorkings, pipeWorkings, swaleWorkings,
  basinWorkings, pumpWorkings, outletWorkings, dryWellWorkings, wellWorkings, familyWorkings, freeboardWorkings, stormWorkings, recordedWorkings, outageWorkings, whatIfWorkings, bandWorkings, protectionWorkings, handWorkings,
  quantityWorkings,
];

/** A working for every number of the results, in the order in which a reader follows the water. */
export function allWorkings(context: EvaluationContext, results: Results): Working[] {
  const input: WorkingInput = { context, document: context.document, results };
  return topics.flatMap((make) => make(input));
}
