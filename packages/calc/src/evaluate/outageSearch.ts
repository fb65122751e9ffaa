import { MINUTE } from '../common/constants.ts';
import { runStorm, type StormInflow } from '../routing/run.ts';
import type { EvaluationContext } from './context.ts';
import { restlessWindow } from './window.ts';

/** Once the power is back and the strong rain over, levels only fall; a few steps more than that are run [s]. */
const aftermath = 10 * MINUTE;
/** Widths of the blocks of starts that a search begins with [minutes]. */
const firstBlock = 16;

/** Starts from `from` to `to`, both counted, in whole minutes. */
interface Block {
  readonly from: number;
  readonly to: number;
}

export interface WorstOutage {
  readonly freeboard: number;
  /** Start that gives it [s]. */
  readonly from: number;
}

/**
 * Looks for the worst start of an outage among all whole minutes of a storm, by the twin that runs only above its on level.
 *
 * No start is left out on a guess. A block of starts is passed over only when a bound shows that it holds nothing worse:
 * - An outage from the first start of the block to the last end of it covers every outage of the block. The twin's levels never
 *   fall when pumping is taken away (every flow rises with the level it leaves and falls with the level it enters), so its
 *   freeboard is no more than that of any of them. All runs take the same whole minutes, so that this holds for them to the last digit.
 * - No store holds more than in the run with power plus all the water that was pumped there during the covering outage,
 *   since every other way out takes no less at higher levels. That bound needs no run.
 */
export class OutageSearch {
  private readonly context: EvaluationContext;
  private readonly inflow: StormInflow;
  private readonly step: number;
  private readonly steps: number;
  private readonly strong: readonly [number, number];
  private readonly known = new Map<number, number>();
  /** Water pumped up to each step with power, and the most that each low spot holds from a step on [m3]. */
  private readonly pumped: Float64Array;
  private readonly heldLater: readonly Float64Array[];
  private lead: number;

  constructor(context: EvaluationContext, returnPeriod: number) {
    const { step, steps } = context.storm(returnPeriod);
    this.context = context;
    this.step = step;
    this.steps = steps;
    this.lead = 0.5;
    this.inflow = context.inflow(returnPeriod, 'system');
    this.strong = restlessWindow(context.model, this.inflow);
    const { samples } = context.run(returnPeriod, 'system', { mode: 'onTwin', pace: 'even', record: true });
    this.pumped = new Float64Array(steps + 1);
    for (let i = 0; i < steps; i += 1) {
      let flow = 0;
      for (const pump of samples!.pump) flow += pump[i]!;
      this.pumped[i + 1] = this.pumped[i]! + flow * step;
    }
    this.heldLater = context.model.ponds.map(({ storage }, pond) => {
      const most = new Float64Array(steps + 1);
      for (let i = steps - 1; i >= 0; i -= 1) most[i] = Math.max(most[i + 1]!, storage.volume(samples!.pond[pond]![i]!));
      return most;
    });
  }

  /** Least freeboard over all sills with the power out from a start for a length of time, both in seconds. */
  freeboard(from: number, duration: number): number {
    const key = from * 100_000 + duration;
    const before = this.known.get(key);
    if (before !== undefined) return before;
    const { context, step, steps } = this;
    const first = Math.max(0, Math.min(Math.floor(from / step), this.strong[0]));
    const last = Math.min(steps, Math.max(Math.floor((from + duration + aftermath) / step), this.strong[1]));
    const run = context.counted(runStorm(context.model, this.inflow, { mode: 'onTwin', pace: 'even', outage: [from, from + duration], window: [first, last] }));
    let least = Infinity;
    for (const { pond, level } of context.sills) least = Math.min(least, level - run.maxPond[pond]!);
    this.known.set(key, least);
    return least;
  }

  /** The worst start of an outage of this length. */
  worst(duration: number): WorstOutage {
    let from = this.guess(duration);
    let freeboard = this.freeboard(from, duration);
    for (const near of [firstBlock / 2, firstBlock / 4, 2, 1]) {
      for (const side of [-near, near]) {
        const start = this.inStorm(from + side * MINUTE);
        const value = this.freeboard(start, duration);
        if (value < freeboard) [freeboard, from] = [value, start];
      }
    }
    this.through(duration, (start, value) => {
      if (value < freeboard) [freeboard, from] = [value, start];
      return freeboard;
    }, freeboard);
    if (duration > 0) this.lead = (this.context.peakTime - from) / duration;
    return { freeboard, from };
  }

  /** Whether no start of an outage of this length takes the freeboard below nothing. */
  isSafe(duration: number): boolean {
    if (this.freeboard(this.guess(duration), duration) < 0) return false;
    let safe = true;
    this.through(duration, (start, value) => {
      if (value >= 0) return 0;
      safe = false;
      this.lead = (this.context.peakTime - start) / duration;
      return -Infinity;
    }, 0);
    return safe;
  }

  /** Asks every start that may lie below a threshold; `consider` answers the threshold from there on. */
  private through(duration: number, consider: (from: number, freeboard: number) => number, threshold: number): void {
    let least = threshold;
    const last = Math.floor((this.steps * this.step) / MINUTE) - 1;
    const waiting: Block[] = [];
    for (let from = 0; from <= last; from += firstBlock) waiting.push({ from, to: Math.min(last, from + firstBlock - 1) });
    // Starts near the peak come first: what they give prunes the others.
    const middle = this.guess(duration) / MINUTE;
    waiting.sort((a, b) => Math.abs(b.from - middle) - Math.abs(a.from - middle));
    for (let block = waiting.pop(); block !== undefined; block = waiting.pop()) {
      const covering = duration + (block.to - block.from) * MINUTE;
      if (this.drowned(block.from * MINUTE, covering) >= least) continue;
      const freeboard = this.freeboard(block.from * MINUTE, covering);
      if (block.from === block.to) least = consider(block.from * MINUTE, freeboard);
      else if (freeboard < least) waiting.push(...halves(block));
    }
  }

  /** Freeboard if all that is pumped during an outage with the power on stood in each low spot instead. */
  private drowned(from: number, duration: number): number {
    const { context, step, steps, pumped } = this;
    const first = Math.min(steps, Math.floor(from / step));
    const last = Math.min(steps, Math.floor((from + duration) / step) + 1);
    const lost = pumped[last]! - pumped[first]!;
    let least = Infinity;
    for (const { pond, level } of context.sills) {
      least = Math.min(least, level - context.model.ponds[pond]!.storage.level(this.heldLater[pond]![first]! + lost));
    }
    return least;
  }

  /** The start that was worst last time, moved in proportion. */
  private guess(duration: number): number {
    return this.inStorm(this.context.peakTime - Math.floor((this.lead * duration) / MINUTE) * MINUTE);
  }

  private inStorm(from: number): number {
    return Math.max(0, Math.min(from, this.steps * this.step - MINUTE));
  }
}

function halves({ from, to }: Block): readonly [Block, Block] {
  const middle = Math.floor((from + to) / 2);
  return [{ from: middle + 1, to }, { from, to: middle }];
}
