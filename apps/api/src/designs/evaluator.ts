import { Injectable } from '@nestjs/common';
import { CalcProblem, type DesignDocument, type Evaluation } from '@yardfall/calc';
import { canonicalBytes, DocumentParseError, readDesignDocument, sha256Hex } from '@yardfall/contracts';
import { DomainError } from '../common/errors.ts';
import { EvaluationPool } from '../evaluate/evaluation.pool.ts';
import { refused } from '../evaluate/refused.ts';
import { countsOf } from './verdict.rules.ts';

type Bytes = Uint8Array<ArrayBuffer>;

/** A document with what the engine made of it, both as the bytes that are stored. */
export interface Evaluated {
  readonly document: DesignDocument;
  readonly evaluation: Evaluation;
  readonly columns: {
    readonly document: Bytes;
    readonly documentSha256: string;
    readonly evaluation: Bytes;
    readonly evaluationSha256: string;
    readonly calcVersion: string;
    readonly stopCount: number;
    readonly cautionCount: number;
    readonly provisional: boolean;
  };
}

/** A draft on its way: what cannot be computed yet is kept all the same, without numbers. */
export type DraftEvaluated = Evaluated | {
  readonly document: DesignDocument;
  readonly evaluation: null;
  readonly columns: { [K in keyof Evaluated['columns']]: K extends 'document' | 'documentSha256' | 'stopCount' | 'cautionCount' | 'provisional' ? Evaluated['columns'][K] : null };
};

/** Reads, checks and evaluates a document outside of any transaction. What is wrong with it is told by path. */
@Injectable()
export class Evaluator {
  private readonly pool: EvaluationPool;

  constructor(pool: EvaluationPool) {
    this.pool = pool;
  }

  async evaluateDraft(value: unknown): Promise<DraftEvaluated> {
    const { document, sha256 } = await this.parse(value);
    try {
      return await this.weigh(document, sha256);
    } catch (error) {
      if (!(error instanceof DomainError) || !(error.cause instanceof CalcProblem)) throw error;
      const none = { evaluation: null, evaluationSha256: null, calcVersion: null, stopCount: 0, cautionCount: 0, provisional: true };
      return { document, evaluation: null, columns: { document: canonicalBytes(document), documentSha256: sha256, ...none } };
    }
  }

  async evaluate(value: unknown): Promise<Evaluated> {
    const { document, sha256 } = await this.parse(value);
    return this.weigh(document, sha256);
  }

  private async weigh(document: DesignDocument, sha256: string): Promise<Evaluated> {
    const evaluation = await this.run(document);
    const bytes = canonicalBytes(evaluation);
    return {
      document, evaluation,
      columns: {
        document: canonicalBytes(document), documentSha256: sha256, evaluation: bytes, evaluationSha256: await sha256Hex(bytes), calcVersion: evaluation.calcVersion,
        ...countsOf(document, evaluation),
      },
    };
  }

  private async parse(value: unknown) {
    try {
      return await readDesignDocument(value);
    } catch (error) {
      if (!(error instanceof DocumentParseError)) throw error;
      throw invalid(error.path, String(error.params['message'] ?? error.code), error);
    }
  }

  private async run(document: DesignDocument): Promise<Evaluation> {
    try {
      return await this.pool.evaluate(document, 'store');
    } catch (error) {
      if (!(error instanceof CalcProblem)) throw error;
      throw refused(error);
    }
  }
}

export function invalid(path: string, message: string, cause?: unknown): DomainError {
  return new DomainError('document.invalid', { path, reason: message }, [{ path, message }], { cause });
}
