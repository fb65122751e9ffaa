import type { Choice, CostIndex, DesignDocument, OptionsFront, OptionsSlice } from '@yardfall/calc';
import type { OptionsAnswer, OptionsRequest } from './options.worker.ts';

/** What a search says of itself: `progress` is the share of the combinations that are settled, null when it has ended. */
export interface OptionsState {
  readonly front: OptionsFront | null;
  readonly progress: number | null;
  readonly problem: string | null;
}

/** The part of a web worker that a search uses. */
export type OptionsPort = Pick<Worker, 'postMessage' | 'terminate' | 'onmessage'>;

export const optionsWorker = (): OptionsPort => new Worker(new URL('./options.worker.ts', import.meta.url), { type: 'module' });

/** More workers than these only wait for the same cores. */
export const mostWorkers = 4;

/**
 * Searches the options of a design in workers, one slice each, and merges what they find.
 * @returns ends the search and its workers; nothing is told after that
 */
export function searchOptions(
  asked: { readonly document: DesignDocument; readonly choices: readonly Choice[]; readonly cost: CostIndex }, tell: (state: OptionsState) => void,
  of: number = Math.max(1, Math.min(mostWorkers, navigator.hardwareConcurrency)), open: () => OptionsPort = optionsWorker,
): () => void {
  const shares = Array.from({ length: of }, () => 0);
  const slices: OptionsSlice[] = [];
  const workers = shares.map(open);
  const end = (): void => { for (const worker of workers) worker.terminate(); };
  const take = (worker: OptionsPort, answer: OptionsAnswer): void => {
    if (answer.kind === 'progress') {
      shares[answer.index] = answer.done / answer.total;
      tell({ front: null, progress: shares.reduce((sum, share) => sum + share, 0) / of, problem: null });
    } else if (answer.kind === 'slice') {
      slices.push(answer.slice);
      if (slices.length === of) worker.postMessage({ kind: 'merge', ...asked, slices } satisfies OptionsRequest);
    } else {
      end();
      tell(answer.kind === 'front' ? { front: answer.front, progress: null, problem: null } : { front: null, progress: null, problem: answer.code });
    }
  };
  workers.forEach((worker, index) => {
    worker.onmessage = ({ data }: MessageEvent<OptionsAnswer>) => take(worker, data);
    worker.postMessage({ kind: 'slice', ...asked, index, of } satisfies OptionsRequest);
  });
  return end;
}
