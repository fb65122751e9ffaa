import { mergeOptions, optionsSlice, type Choice, type CostIndex, type DesignDocument, type OptionsFront, type OptionsSlice } from '@yardfall/calc';

interface Asked {
  readonly document: DesignDocument;
  readonly choices: readonly Choice[];
  readonly cost: CostIndex;
}

/** Search one slice of all combinations, or make one front of what the slices gave. */
export type OptionsRequest =
  | (Asked & { readonly kind: 'slice'; readonly index: number; readonly of: number })
  | (Asked & { readonly kind: 'merge'; readonly slices: readonly OptionsSlice[] });

export type OptionsAnswer =
  | { readonly kind: 'progress'; readonly index: number; readonly done: number; readonly total: number }
  | { readonly kind: 'slice'; readonly index: number; readonly slice: OptionsSlice }
  | { readonly kind: 'front'; readonly front: OptionsFront }
  | { readonly kind: 'problem'; readonly code: string };

/** A message every so often is enough for a bar that moves. */
const progressEvery = 100;

/** Does what a worker is asked for; an error that the engine names is told, any other is thrown. */
export function answerOptions(request: OptionsRequest, tell: (answer: OptionsAnswer) => void): void {
  const { document, choices, cost } = request;
  try {
    if (request.kind === 'merge') {
      tell({ kind: 'front', front: mergeOptions(document, choices, cost, request.slices) });
      return;
    }
    const { index, of } = request;
    let told = 0;
    const onProgress = (done: number, total: number): void => {
      if (done - told < progressEvery && done < total) return;
      told = done;
      tell({ kind: 'progress', index, done, total });
    };
    tell({ kind: 'slice', index, slice: optionsSlice(document, choices, cost, { slice: { index, of }, onProgress }) });
  } catch (error) {
    const { code } = error as { readonly code?: unknown };
    if (typeof code !== 'string') throw error;
    tell({ kind: 'problem', code });
  }
}
