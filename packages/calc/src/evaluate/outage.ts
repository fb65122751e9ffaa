import { MINUTE } from '../common/constants.ts';
import type { OutageResult } from '../results/results.ts';
import { outagePeriod, type EvaluationContext } from './context.ts';
import { restlessWindow } from './window.ts';

/** Lengths shown [s]. Source: the trade's what-if list. */
const shownDurations = [15 * MINUTE, 30 * MINUTE, 60 * MINUTE] as const;
/** Longest outage that is searched [s]: beyond it the answer is "four hours or more". Source: ours. */
export const longestOutage = 240 * MINUTE;
/** Starts are tried this far apart, then minute by minute around the worst [s]. */
const coarseStart = 5 * MINUTE;
/** Once the power is back and the strong rain over, levels only fall; a few steps more than that are run [s]. */
const aftermath = 10 * MINUTE;

class OutageSearch {
  private readonly context: EvaluationContext;
  private readonly returnPeriod: number;
  private readonly step: number;
  private readonly steps: number;
  private readonly strong: readonly [number, number];
  private readonly known = new Map<string, number>();
  /** How far before the peak the worst outage began, as a share of its length. */
  private worstLead = 0.5;

  constructor(context: EvaluationContext, returnPeriod: number) {
    const { step, steps } = context.storm(returnPeriod);
    this.context = context;
    this.returnPeriod = returnPeriod;
    this.step = step;
    this.steps = steps;
    this.strong = restlessWindow(context.model, context.inflow(returnPeriod, 'system'));
  }

  /** Least freeboard over all sills with the power out in one span; the twin that runs only above its on level. */
  freeboard(from: number, duration: number): number {
    const key = `${from} ${duration}`;
    const before = this.known.get(key);
    if (before !== undefined) return before;
    const { context, step, steps } = this;
    const first = Math.max(0, Math.min(Math.floor(from / step), this.strong[0]));
    const last = Math.min(steps, Math.max(Math.floor((from + duration + aftermath) / step), this.strong[1]));
    const run = context.run(this.returnPeriod, 'system', { mode: 'onTwin', outage: [from, from + duration], window: [first, last] });
    let least = Infinity;
    for (const { pond, level } of context.sills) least = Math.min(least, level - run.maxPond[pond]!);
    this.known.set(key, least);
    return least;
  }

  /** The worst start: on a coarse grid around the peak, then minute by minute. */
  worst(duration: number): number {
    const { peakTime } = this.context;
    let least = Infinity;
    let at = peakTime;
    const stride = Math.max(coarseStart, Math.floor(duration / 4 / coarseStart) * coarseStart);
    const consider = (from: number): void => {
      if (from < 0) return;
      const freeboard = this.freeboard(from, duration);
      if (freeboard < least) {
        least = freeboard;
        at = from;
      }
    };
    for (let from = peakTime - duration - 2 * coarseStart; from <= peakTime + coarseStart; from += stride) consider(from);
    for (let near = stride / 2; near >= MINUTE; near = Math.floor(near / 2 / MINUTE) * MINUTE) {
      const middle = at;
      consider(middle - Math.floor(near / MINUTE) * MINUTE);
      consider(middle + Math.floor(near / MINUTE) * MINUTE);
    }
    if (duration > 0) this.worstLead = (peakTime - at) / duration;
    return least;
  }

  /** Whether no sill falls short at any start. The start that was worst last time, moved in proportion, often answers at once. */
  private isSafe(duration: number): boolean {
    const guess = this.context.peakTime - Math.floor((this.worstLead * duration) / MINUTE) * MINUTE;
    if (guess >= 0 && this.freeboard(guess, duration) < 0) return false;
    return this.worst(duration) >= 0;
  }

  /** Longest outage in whole minutes that leaves no sill short, whenever it starts. */
  longestSafe(shown: readonly number[]): number {
    let low = 0;
    let high = longestOutage;
    for (const duration of shown) {
      if (this.isSafe(duration)) low = Math.max(low, duration);
      else high = Math.min(high, duration);
    }
    if (low === 0 && this.freeboard(this.context.peakTime, 0) < 0) return 0;
    if (high === longestOutage && this.isSafe(longestOutage)) return longestOutage;
    while (high - low > MINUTE) {
      const middle = Math.floor((low + high) / 2 / MINUTE) * MINUTE;
      if (this.isSafe(middle)) low = middle;
      else high = middle;
    }
    return low;
  }
}

/** How long the power may be out in the 10-year storm (or the nearest that the table holds). Null without a pump. */
export function outage(context: EvaluationContext): OutageResult | null {
  const returnPeriod = context.periods.includes(outagePeriod) ? outagePeriod : context.periods[0];
  if (!context.hasPump || context.sills.length === 0 || returnPeriod === undefined) return null;
  const search = new OutageSearch(context, returnPeriod);
  const cases = shownDurations.map((duration) => ({
    duration, worstFreeboard: search.worst(duration), fromPeak: search.freeboard(context.peakTime, duration),
  }));
  return { returnPeriod, longestSafe: search.longestSafe(shownDurations), cases };
}
