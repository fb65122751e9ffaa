import type { StormRun } from '@yardfall/calc';
import { windowOf } from '@yardfall/drawing';

/** First and last sample of a run that its graph shows. */
export function samplesShown(run: StormRun): { readonly first: number; readonly last: number } {
  const [from, to] = windowOf(run);
  const index = (time: number): number => Math.round((time - run.start) / run.step);
  return { first: index(from), last: index(to) };
}
