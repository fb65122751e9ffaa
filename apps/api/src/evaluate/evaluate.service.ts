import { Injectable } from '@nestjs/common';
import { CalcProblem } from '@yardfall/calc';
import { type evaluation as api, readDesignDocument, type ResponseOf } from '@yardfall/contracts';
import { EvaluationPool } from './evaluation.pool.ts';
import { refused } from './refused.ts';

@Injectable()
export class EvaluateService {
  private readonly pool: EvaluationPool;

  constructor(pool: EvaluationPool) {
    this.pool = pool;
  }

  /** Nothing is stored; the hash says which document the numbers belong to. */
  async run(given: unknown): Promise<ResponseOf<typeof api.evaluate>> {
    const { document, sha256 } = await readDesignDocument(given);
    try {
      return { documentSha256: sha256, evaluation: await this.pool.evaluate(document, 'answer') };
    } catch (error) {
      if (!(error instanceof CalcProblem)) throw error;
      throw refused(error);
    }
  }
}
