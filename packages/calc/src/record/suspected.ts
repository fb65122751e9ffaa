import { INCH } from '../common/constants.ts';
import { MISSING, type Accumulation } from './rainRecord.ts';

/** An hour this deep right after missing hours may be the sum of them [mm]. Source: ours: an inch in one hour is rare, a sum is not. */
const suspectDepth = 25.4;
const close = 1e-6;

/** Hours that may hold the rain of the missing ones before them; files without flags cannot tell, so they stay in and are named. */
export function suspectedAccumulations(depths: Float64Array, flagged: readonly Accumulation[]): Accumulation[] {
  const found: Accumulation[] = [];
  let gapFrom = -1;
  for (let i = 0; i < depths.length; i += 1) {
    if (depths[i] === MISSING) {
      if (gapFrom < 0) gapFrom = i;
      continue;
    }
    const after = gapFrom >= 0 && depths[i]! >= suspectDepth - close && !flagged.some(({ from, to }) => from <= i && gapFrom <= to);
    if (after) found.push({ from: gapFrom, to: i, depth: depths[i]!, kind: 'suspected' });
    gapFrom = -1;
  }
  return found;
}

/** A run of readings that only know tenths of an inch. */
export interface CoarseSpan {
  readonly from: number;
  readonly to: number;
}

const TENTH = INCH * 100;
/** So many rainy readings in a row, all whole tenths, come from a gauge that knows nothing finer. Source: ours. */
const runOfTenths = 30;

const isWhole = (depth: number): boolean => Math.abs(depth / TENTH - Math.floor(depth / TENTH + 0.5)) < 1e-9;

/** Spans read on a gauge of 0.1 in, each from its first rainy reading to the reading before the next finer one. */
export function coarseSpans(depths: Float64Array): CoarseSpan[] {
  const spans: CoarseSpan[] = [];
  let from = -1;
  let run = 0;
  let last = -1;
  const close = (): void => {
    if (run >= runOfTenths) spans.push({ from, to: last });
    from = -1;
    run = 0;
  };
  for (let i = 0; i < depths.length; i += 1) {
    const depth = depths[i]!;
    if (depth <= 0) continue;
    if (!isWhole(depth)) {
      close();
      continue;
    }
    if (from < 0) from = i;
    run += 1;
    last = i;
  }
  close();
  return spans;
}
