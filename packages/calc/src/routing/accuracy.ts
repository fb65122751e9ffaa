import type { Network } from './network.ts';

/** Error of one step in a level [m]: of low spots and dry wells, of basins, and of junctions, which hold little. Source: ours, see the test against an independent integration. */
const stepError = 8e-6;
const basinError = 1e-4;
const junctionError = 1e-3;
/** Shortest step that is asked for [s]. */
const shortest = 1.5;
/** A step this much too coarse is taken again; steps grow by no more than this. */
const coarse = 4;
const mostGrowth = 4;

/**
 * Chooses the steps of a run. Backward Euler errs by half the step times the change of the rate in it.
 * Basins are watched in the twins only: a real pump's floats divide the steps of its basin anyway.
 * Source: local error of backward Euler, textbooks of numerical analysis
 */
export class Accuracy {
  private readonly network: Network;
  private readonly rates: Float64Array;
  /** What the error of each store is divided by; 0 for stores that are not watched. */
  private readonly weights: Float64Array;
  private length = shortest;

  constructor(network: Network, real: boolean) {
    const { count, firstJunction, firstWell, firstBasin } = network.layout;
    this.network = network;
    this.rates = new Float64Array(count);
    this.weights = new Float64Array(count).fill(1 / stepError);
    this.weights.fill(1 / junctionError, firstJunction, firstWell);
    this.weights.fill(real ? 0 : 1 / basinError, firstBasin);
  }

  /** Length of the next step, of what is left of a span: no short rest remains. */
  next(left: number): number {
    if (this.length >= left) return left;
    return this.length * 2 > left ? left / 2 : this.length;
  }

  /** Greatest error of a store over what is allowed. */
  private error(dt: number): number {
    const { trialLevel, level } = this.network;
    let most = 0;
    for (let store = 0; store < this.weights.length; store += 1) {
      const change = this.weights[store]! * Math.abs((trialLevel[store]! - level[store]!) / dt - this.rates[store]!);
      if (change > most) most = change;
    }
    return 0.5 * dt * most;
  }

  /** Whether the trial of this length errs too much to be taken. */
  isCoarse(dt: number): boolean {
    return dt >= 2 * shortest && this.error(dt) > coarse;
  }

  /** Notes a step that is about to be taken and sets the next one. */
  taken(dt: number): void {
    const { trialLevel, level } = this.network;
    const error = this.error(dt);
    const growth = error > 0 ? Math.sqrt(1 / error) : mostGrowth;
    this.length = Math.max(shortest, dt * Math.min(mostGrowth, growth));
    for (let store = 0; store < this.rates.length; store += 1) this.rates[store] = (trialLevel[store]! - level[store]!) / dt;
  }
}
