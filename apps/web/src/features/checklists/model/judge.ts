import { isInside, type Requirement } from '@yardfall/contracts';
import type { NumericQuantity } from '@yardfall/text';

export type Measure = Requirement['measures'][number];

export interface Judgement {
  readonly good: boolean;
  /** What to do about it; null when it is good. */
  readonly way: 'raise' | 'lower' | 'more' | 'less' | null;
  /** By how much, to the design's value. */
  readonly by: number;
}

/** A measured value against the limits of the design, with what would put it right. */
export function judge(measure: Measure, value: number): Judgement {
  if (isInside(measure, value)) return { good: true, way: null, by: 0 };
  const short = measure.target - value;
  if (measure.quantity === 'level') return { good: false, way: short > 0 ? 'raise' : 'lower', by: Math.abs(short) };
  return { good: false, way: short > 0 ? 'more' : 'less', by: Math.abs(short) };
}

/** How a measured value is written: levels with the tape beside, heights as a tape shows them. */
export const writtenAs: Readonly<Record<Measure['quantity'], NumericQuantity>> = {
  level: 'levelAndTape', height: 'tape', length: 'length', slope: 'fall', volume: 'volume', count: 'count', flow: 'flow', minutes: 'minutes', seconds: 'seconds', share: 'percent', number: 'number', check: 'count',
};

/** A difference is a small height even where the value is a level. */
export function differenceAs(quantity: Measure['quantity']): NumericQuantity {
  return quantity === 'level' ? 'tape' : writtenAs[quantity];
}
