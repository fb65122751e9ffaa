import type { HandDifference } from '../results/handDifference.ts';
import { explainHandDifference } from '../routing/handDifference.ts';
import type { EvaluationContext } from './context.ts';

/** Why the coupled model differs from the hand calculation in every storm, on the model and the runs that the evaluation has already made. */
export function handDifferences(context: EvaluationContext): HandDifference[] {
  return context.periods.flatMap((returnPeriod) => explainHandDifference(context.document, returnPeriod, {
    stores: context.model, coupled: (pond) => context.run(returnPeriod, 'system', { mode: 'real' }).maxPond[pond]!,
  }) ?? []);
}
