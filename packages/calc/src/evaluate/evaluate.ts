import { CalcProblem } from '../common/problem.ts';
import { checkDocument } from '../document/check.ts';
import type { DesignDocument } from '../document/document.ts';
import { DocumentError } from '../document/error.ts';
import { allFindings } from '../findings/allFindings.ts';
import type { Evaluation, Finding, Results } from '../results/results.ts';
import { allWorkings } from '../workings/allWorkings.ts';
import { handDifferences } from './handDifferences.ts';
import { Band } from './band.ts';
import { bandRanking } from './bandRanking.ts';
import { wellRuns } from './collectParts.ts';
import { EvaluationContext } from './context.ts';
import { outage } from './outage.ts';
import { protection } from './protectedStorm.ts';
import { recordedStorm } from './recordedStorm.ts';
import { settled } from './settled.ts';
import { sizesOf, unrouted } from './sizes.ts';
import { family, freeboards, stormRun } from './storms.ts';
import { whatIfs } from './whatIf.ts';

/** Version of the numbers: it changes whenever the same document gives other results. */
export const calcVersion = '1.3.2';

export interface EvaluateOptions {
  /**
   * With the band, freeboards are judged on its lower end, and its ranking and the protected storm come with it.
   * Without it (quicker) both ends stand at the twin that runs only above its on level, and findings on freeboards are provisional.
   */
  readonly band?: boolean;
  /** The what-ifs of every storm; with the band unless said otherwise. */
  readonly whatIfs?: boolean;
  /** How each number comes about; left out (an empty list) where nobody reads them, as while a hand draws. */
  readonly workings?: boolean;
}

/** Findings that need no routing: sizes, levels, duties, outlets. */
export function findingsOnSizes(context: EvaluationContext): Finding[] {
  return allFindings(context.document, { ...sizesOf(context), ...unrouted });
}

function resultsOf(context: EvaluationContext, options: EvaluateOptions): Results {
  const { band: withBand = true, whatIfs: withWhatIfs = withBand } = options;
  const band = withBand && context.hasSystem && context.sills.length > 0 ? new Band(context) : null;
  return {
    ...sizesOf(context), freeboards: freeboards(context, band), storm: stormRun(context), recorded: recordedStorm(context), family: family(context), outage: outage(context),
    wells: wellRuns(context),
    whatIfs: withWhatIfs ? whatIfs(context) : [], band: band === null ? null : bandRanking(band), protection: band === null ? null : protection(context, band),
    handDifferences: withBand ? handDifferences(context) : [],
  };
}

/**
 * Evaluates a design document: results, findings, workings and the greatest mass error of any routing.
 * The same document always gives the same evaluation, bit for bit, on every engine.
 * Throws a DocumentError for a document that cannot be computed.
 */
export function evaluate(document: DesignDocument, options: EvaluateOptions = {}): Evaluation {
  checkDocument(document);
  try {
    const context = new EvaluationContext(document);
    const numbers = resultsOf(context, options);
    const findings = allFindings(document, numbers);
    const referrals = findings.filter(({ severity }) => severity === 'refer').map(({ code }) => code);
    const results: Results = { ...numbers, referrals };
    return settled({ calcVersion, results, findings, workings: options.workings === false ? [] : allWorkings(context, results), massError: context.massError });
  } catch (error) {
    if (error instanceof CalcProblem && !(error instanceof DocumentError)) {
      throw new DocumentError('document.notComputable', error.path.startsWith('/') ? error.path : '', { reason: error.code, ...error.params });
    }
    throw error;
  }
}
