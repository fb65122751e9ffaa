import type { Network } from './network.ts';

/** Error of one step in a level [m]: of low spots and dry wells, of basins, and of junctions, which hold little. Source: ours, see the test against an independent integration. */
const stepError = 1e-6;
const basinError = 2e-5;
const junctionError = 1e-3;
/** Shortest step that is asked for [s]. */
const shortest = 1.5;
/** A step whose error is this much too great is taken again; steps grow by no more than this, and aim at somewhat less than is allowed. */
const coarse = 2;
const mostGrowth = 4;
const leastGrowth = 0.2;
const aim = 0.8;

/**
 * Chooses the steps of a run by the error that the network finds in each.
 * Source: step control by an embedded method, textbooks of numerical analysis
 */
export class Accuracy {
  private readonly network: Network;
  /** What the error of each store is divided by. */
  private readonly weights: Float64Array;
  private length = shortest;
  private growth = 1;
  private tried = 0;

  constructor(network: Network) {
    const { count, firstJunction, firstWell, firstBasin } = network.layout;
    this.network = network;
    this.weights = new Float64Array(count).fill(1 / stepError);
    this.weights.fill(1 / junctionError, firstJunction, firstWell);
    this.weights.fill(1 / basinError, firstBasin);
  }

  /** Length of the next step, of what is left of a span: no short rest remains. */
  next(left: number): number {
    if (this.length >= left) return left;
    return this.length * 2 > left ? left / 2 : this.length;
  }

  /** Length at which a trial that has just been made must be made again, as it errs too much; 0 when it is good. */
  again(dt: number): number {
    const errors = this.network.errors();
    let most = 0;
    for (let store = 0; store < errors.length; store += 1) {
      const error = this.weights[store]! * Math.abs(errors[store]!);
      if (error > most) most = error;
    }
    this.tried = dt;
    this.growth = most > 0 ? Math.max(leastGrowth, Math.min(mostGrowth, aim / this.network.rootOf(most))) : mostGrowth;
    return most > coarse && dt >= 2 * shortest ? Math.max(shortest, dt * this.growth) : 0;
  }

  /** A step is taken; one that was cut short by an event says little about the next. */
  taken(dt: number): void {
    const next = Math.max(shortest, dt * this.growth);
    this.length = dt < this.tried ? Math.max(this.length, next) : next;
  }
}
