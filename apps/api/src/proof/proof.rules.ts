import { CalcProblem, commissioningFlow, type DesignDocument, pumpDown } from '@yardfall/calc';
import type { ProofTest, PumpDownRun } from '@yardfall/contracts';

/** Fewer counted runs prove nothing: a mean without a spread. Common practice. */
export const runsNeeded = 3;

export type Figures = Pick<ProofTest, 'meanFlow' | 'uncertainty' | 'spread' | 'predictedFlow' | 'meanLevel' | 'difference' | 'verdict'>;

/** Readings that no pump-down can give. */
export class InvalidRuns extends Error {
  readonly reason: string;
  readonly path: string;
  constructor(reason: string, path: string, options?: ErrorOptions) {
    super(`${reason} at ${path}`, options);
    this.name = 'InvalidRuns';
    this.reason = reason;
    this.path = path;
  }
}

/** Mean flow of the runs against what the design promises at the mean level of their marks, with new pipe. */
export function judgeRuns(document: DesignDocument, pump: string, runs: readonly PumpDownRun[]): Figures {
  const counted = runs.filter(({ emptyLine }) => !emptyLine);
  const backward = runs.findIndex(({ upperLevel, lowerLevel }) => upperLevel <= lowerLevel);
  if (backward >= 0) throw new InvalidRuns('levels', `runs/${String(backward)}`);
  if (counted.length === 0) throw new InvalidRuns('noRuns', 'runs');
  const meanLevel = counted.reduce((sum, { upperLevel, lowerLevel }) => sum + (upperLevel + lowerLevel) / 2, 0) / counted.length;
  try {
    const predictedFlow = commissioningFlow(document, pump, meanLevel).netFlow;
    const measured = pumpDown(runs.map(({ upperLevel, lowerLevel, volume, seconds, emptyLine }) => ({ volume, drop: upperLevel - lowerLevel, time: seconds, lineEmpty: emptyLine })), predictedFlow);
    const { meanFlow, uncertainty, spread, deviation } = measured;
    const again = measured.biggerDropNeeded || counted.length < runsNeeded;
    return { meanFlow, uncertainty, spread, predictedFlow, meanLevel, difference: deviation, verdict: again ? 'repeat' : verdicts[measured.verdict] };
  } catch (error) {
    if (error instanceof CalcProblem) throw new InvalidRuns(error.code, error.path, { cause: error });
    throw error;
  }
}

const verdicts = { pass: 'pass', warn: 'explain', fail: 'fail' } as const;

/** A test that lets the job go on: passed, or within the wider limit and explained. */
export function settles({ verdict, note }: Pick<ProofTest, 'verdict' | 'note'>): boolean {
  return verdict === 'pass' || (verdict === 'explain' && note !== '');
}
