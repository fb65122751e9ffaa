import { Inject, Injectable, type OnApplicationShutdown } from '@nestjs/common';
import { CalcProblem, type DesignDocument, type Evaluation } from '@yardfall/calc';
import { Piscina } from 'piscina';
import { DomainError } from '../common/errors.ts';
import { ENV, type Env } from '../env.ts';
import type { Outcome } from './evaluate.thread.ts';

/** Only to answer with, or to store with a draft or a revision. */
type Purpose = 'answer' | 'store';

const waiting = 50;
const isSource = import.meta.url.endsWith('.ts');

/** Evaluation takes whole seconds of a processor: it runs beside the threads that answer requests, bounded in time and number. */
@Injectable()
export class EvaluationPool implements OnApplicationShutdown {
  private readonly pool: Piscina<DesignDocument, Outcome>;
  private readonly limits: Readonly<Record<Purpose, number>>;

  constructor(@Inject(ENV) env: Env) {
    this.limits = { answer: env.EVALUATE_LIMIT, store: env.EVALUATE_STORED_LIMIT };
    this.pool = new Piscina({
      filename: new URL(isSource ? './evaluate.thread.ts' : './evaluate.thread.js', import.meta.url).href,
      execArgv: isSource ? ['--conditions=development', '--import', '@oxc-node/core/register'] : [],
      minThreads: 0, maxThreads: env.EVALUATE_THREADS, idleTimeout: 60_000, maxQueue: waiting,
      resourceLimits: { maxOldGenerationSizeMb: 512 },
    });
  }

  /** Throws the CalcProblem that the engine threw; `busy` when the queue is full or the time is over. */
  async evaluate(document: DesignDocument, purpose: Purpose): Promise<Evaluation> {
    const outcome = await this.run(document, this.limits[purpose]);
    if ('evaluation' in outcome) return outcome.evaluation;
    throw new CalcProblem(outcome.problem.code, outcome.problem.path, outcome.problem.params);
  }

  async onApplicationShutdown(): Promise<void> {
    await this.pool.destroy();
  }

  private async run(document: DesignDocument, limit: number): Promise<Outcome> {
    const overTime = AbortSignal.timeout(limit);
    try {
      return await this.pool.run(document, { signal: overTime });
    } catch (error) {
      const isFull = error instanceof Error && error.message === 'Task queue is at limit';
      if (overTime.aborted || isFull) throw new DomainError('busy', {}, [], { cause: error });
      throw error;
    }
  }
}
