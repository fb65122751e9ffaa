import type { Network } from './network.ts';

/** Error of one step in a level [m], and the shortest step that is asked for [s]. Source: ours, see the test against an independent integration. */
const stepError = 8e-6;
const shortest = 1.5;
/** A step this much too coarse is taken again; steps grow by no more than this. */
const coarse = 4;
const mostGrowth = 4;

/**
 * Chooses the steps of a run. Backward Euler errs by half the step times the change of the rate in it; low spots and dry wells
 * are watched, since in small basins and junctions the flow through them counts and not their level.
 * Source: local error of backward Euler, textbooks of numerical analysis
 */
export class Accuracy {
  private readonly network: Network;
  private readonly rates: Float64Array;
  private readonly watched: readonly number[];
  private length = shortest;

  constructor(network: Network) {
    const { firstJunction, firstWell, firstBasin } = network.layout;
    this.network = network;
    this.rates = new Float64Array(network.layout.count);
    this.watched = Array.from({ length: firstBasin }, (_, i) => i).filter((i) => i < firstJunction || i >= firstWell);
  }

  /** Length of the next step, of what is left of a span: no short rest remains. */
  next(left: number): number {
    if (this.length >= left) return left;
    return this.length * 2 > left ? left / 2 : this.length;
  }

  private error(dt: number): number {
    const { trialLevel, level } = this.network;
    let most = 0;
    for (let k = 0; k < this.watched.length; k += 1) {
      const store = this.watched[k]!;
      const change = Math.abs((trialLevel[store]! - level[store]!) / dt - this.rates[store]!);
      if (change > most) most = change;
    }
    return 0.5 * dt * most;
  }

  /** Whether the trial of this length errs too much to be taken. */
  isCoarse(dt: number): boolean {
    return dt >= 2 * shortest && this.error(dt) > coarse * stepError;
  }

  /** Notes a step that is about to be taken and sets the next one. */
  taken(dt: number): void {
    const { trialLevel, level } = this.network;
    const error = this.error(dt);
    const growth = error > 0 ? Math.sqrt(stepError / error) : mostGrowth;
    this.length = Math.max(shortest, dt * Math.min(mostGrowth, growth));
    for (let k = 0; k < this.watched.length; k += 1) {
      const store = this.watched[k]!;
      this.rates[store] = (trialLevel[store]! - level[store]!) / dt;
    }
  }
}
