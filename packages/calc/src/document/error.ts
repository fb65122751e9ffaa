import { CalcProblem } from '../common/problem.ts';
import type { DocumentProblem, Params } from '../results/results.ts';

/** Everything that makes a document impossible to evaluate. */
export type DocumentErrorCode =
  | 'document.version' | 'document.missing' | 'document.wrongType' | 'document.notFinite' | 'document.negative' | 'document.notPositive'
  | 'document.outOfRange' | 'document.notRising' | 'document.notFalling' | 'document.duplicateId' | 'document.unknownId'
  | 'document.wrongKind' | 'document.loop' | 'document.noOutlet' | 'document.tooFew' | 'document.tooMany' | 'document.tableShape'
  | 'document.levelOrder' | 'document.notInTable' | 'document.notComputable' | 'document.limitOrder' | 'document.limitNeedsReason';

/** A document that cannot be evaluated: a code, the path in the document (JSON pointer) and parameters for the sentence. */
export class DocumentError extends CalcProblem implements DocumentProblem {
  constructor(code: DocumentErrorCode, path: string, params: Params = {}) {
    super(code, path, params);
    this.name = 'DocumentError';
  }
}
