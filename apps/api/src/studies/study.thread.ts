import type { MessagePort } from 'node:worker_threads';
import { CalcProblem } from '@yardfall/calc';
import { carryOut, type StudyResult, type StudyWork } from './study.work.ts';

export interface StudyTask {
  readonly work: StudyWork;
  readonly port: MessagePort;
}
export type StudyOutcome = { readonly result: StudyResult } | { readonly problem: { readonly code: string; readonly path: string; readonly params: CalcProblem['params'] } };

/** Progress is told in whole hundredths: more is not seen. */
const steps = 100;

/** Runs in a thread of its own. A class does not survive the way back, so a problem is told as data. */
export default function run({ work, port }: StudyTask): StudyOutcome {
  let told = 0;
  try {
    const result = carryOut(work, (share) => {
      const now = Math.floor(share * steps);
      if (now <= told) return;
      told = now;
      port.postMessage(now / steps);
    });
    return { result };
  } catch (error) {
    if (!(error instanceof CalcProblem)) throw error;
    return { problem: { code: error.code, path: error.path, params: error.params } };
  } finally {
    port.close();
  }
}
