import { MINUTE } from '../common/constants.ts';
import type { Working } from '../results/results.ts';
import { symbol, working } from './working.ts';

/** How long water stands over a sill. */
export const minutesSheet = (result: string, at: string | null, value: number): Working => working({
  result, at, formula: 'T = t/60', value, unit: 'clockMinutes', source: 'Time with the water above the sill, from the coupled routing', symbols: [symbol('t', 'secondsOverSill', value * MINUTE, 'seconds')],
  tolerance: 1e-6,
});
