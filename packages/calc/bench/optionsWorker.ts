import { parentPort, workerData } from 'node:worker_threads';
import { optionsSlice, type Choice, type CostIndex, type DesignDocument } from '@yardfall/calc';

interface Share {
  readonly document: DesignDocument;
  readonly choices: readonly Choice[];
  readonly cost: CostIndex;
  readonly index: number;
  readonly of: number;
}

const { document, choices, cost, index, of } = workerData as Share;
parentPort?.postMessage(optionsSlice(document, choices, cost, { slice: { index, of } }));
