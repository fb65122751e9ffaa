import { MessageChannel } from 'node:worker_threads';
import { Injectable, type OnApplicationShutdown } from '@nestjs/common';
import { CalcProblem } from '@yardfall/calc';
import { Piscina } from 'piscina';
import type { StudyOutcome, StudyTask } from './study.thread.ts';
import type { StudyResult, StudyWork } from './study.work.ts';

const isSource = import.meta.url.endsWith('.ts');

/** Studies run in one thread of their own, so that neither requests nor evaluations wait for them; giving one up ends its thread. */
@Injectable()
export class StudyPool implements OnApplicationShutdown {
  private readonly pool: Piscina<StudyTask, StudyOutcome>;

  constructor() {
    this.pool = new Piscina({
      filename: new URL(isSource ? './study.thread.ts' : './study.thread.js', import.meta.url).href,
      execArgv: isSource ? ['--conditions=development', '--import', '@oxc-node/core/register'] : [],
      minThreads: 0, maxThreads: 1, idleTimeout: 60_000, resourceLimits: { maxOldGenerationSizeMb: 2048 },
    });
  }

  /** Throws the CalcProblem that the engine threw, or an AbortError when `signal` gave it up. */
  async run<K extends StudyWork['kind']>(work: StudyWork & { readonly kind: K }, tell: (share: number) => void = () => undefined, signal?: AbortSignal): Promise<StudyResult & { readonly kind: K }> {
    const { port1, port2 } = new MessageChannel();
    port1.on('message', tell);
    try {
      const outcome = await this.pool.run({ work, port: port2 }, { transferList: [port2], ...(signal ? { signal } : {}) });
      if ('result' in outcome) return outcome.result as StudyResult & { readonly kind: K };
      throw new CalcProblem(outcome.problem.code, outcome.problem.path, outcome.problem.params);
    } finally {
      port1.close();
    }
  }

  async onApplicationShutdown(): Promise<void> {
    await this.pool.destroy();
  }
}
