import { DocumentError } from '../document/error.ts';
import { cbrt } from '../math/cbrt.ts';
import { Balance } from './balance.ts';
import { film } from './fluxes.ts';
import type { RoutingModel } from './model.ts';
import { type Layout, layoutOf } from './stores.ts';

/** A step this short always settles, unless the numbers are beyond reason [s]. */
const shortestStep = 1e-4;
/** Share of a step at which its first stage stands: 1 - 1/sqrt(2). Source: Alexander 1977. */
const stage = 1 - 1 / Math.sqrt(2);
/**
 * Weights of the rates at the start, at the first stage and at the end in the error of a step: those of the method less those of the
 * parabola through the three.
 */
const errorStart = 1 / (6 * stage) - 0.5;
const errorStage = 1 - stage - 1 / (6 * stage * (1 - stage));
const errorEnd = -errorStart - errorStage;

/**
 * Coupled levels of every low spot, junction, dry well and basin, advanced step by step. Volumes change by the flows times the step and by nothing else.
 *
 * `trial` is backward Euler: all flows depend on the levels at the end of the step, so a step keeps order: stores that start no lower
 * and receive no less end no lower. `trialFine` is of second order, by two such solutions, and no less damped; it keeps no order.
 * Source: backward (implicit) Euler; Chow, Maidment and Mays 1988 ch. 8 for level-pool routing;
 * Alexander 1977, SIAM J. Numer. Anal. 14, 1006 (the two-stage method SDIRK2, from memory)
 */
export class Network {
  readonly model: RoutingModel;
  readonly layout: Layout;
  readonly volume: Float64Array;
  readonly level: Float64Array;
  /** Mean flow into each store during the step, set by the caller [m3/s]. */
  readonly inflow: Float64Array;
  /** Levels at the end of the last trial, and mean flows during it. */
  readonly trialLevel: Float64Array;
  readonly flows: Float64Array;
  /** Levels at which a twin's pumps begin, lowest first, of each store. */
  readonly thresholds: number[][];
  /** How often a step was too long to be solved. */
  failed = 0;
  step = 0;
  private readonly balance: Balance;
  private readonly stageLevel: Float64Array;
  private readonly stageFlows: Float64Array;
  private readonly rateStart: Float64Array;
  private readonly rateStage: Float64Array;
  private readonly error: Float64Array;
  private fine = false;

  constructor(model: RoutingModel) {
    const layout = layoutOf(model);
    const { count } = layout;
    this.model = model;
    this.layout = layout;
    this.balance = new Balance(layout);
    this.trialLevel = this.balance.level;
    this.flows = this.balance.flows;
    this.thresholds = this.balance.thresholds;
    this.level = Float64Array.from(this.trialLevel);
    this.volume = new Float64Array(count);
    this.inflow = new Float64Array(count);
    this.stageLevel = new Float64Array(count);
    this.stageFlows = new Float64Array(layout.fluxes.length);
    this.rateStart = new Float64Array(count);
    this.rateStage = new Float64Array(count);
    this.error = new Float64Array(count);
  }

  /** Sets a store to a level. */
  setLevel(store: number, level: number): void {
    this.level[store] = level;
    this.volume[store] = this.layout.tables[store]!.volume(level);
  }

  /** Adds water to a store at once. */
  addVolume(store: number, volume: number): void {
    this.volume[store] = this.volume[store]! + volume;
    this.level[store] = this.layout.tables[store]!.level(this.volume[store]!);
  }

  /**
   * Levels and flows at the end of a step of `dt` seconds; nothing changes until `commit`.
   * @returns false when the levels do not settle: the step is too long for what happens in it
   */
  trial(dt: number): boolean {
    const { balance, volume, inflow } = this;
    this.step = dt;
    this.fine = false;
    balance.level.set(this.level);
    for (let i = 0; i < volume.length; i += 1) balance.base[i] = volume[i]! + dt * inflow[i]!;
    const met = balance.look(dt);
    this.rateStart.set(balance.out);
    if (balance.follow(met)) return true;
    this.failed += 1;
    return false;
  }

  /** The same by two stages; by one where a store would give more than it holds, or where a twin's pumps begin or stop. */
  trialFine(dt: number): boolean {
    const { balance, volume, inflow } = this;
    const part = stage * dt;
    this.step = dt;
    this.fine = true;
    balance.level.set(this.level);
    for (let i = 0; i < volume.length; i += 1) balance.base[i] = volume[i]! + part * inflow[i]!;
    const met = balance.look(part);
    this.rateStart.set(balance.out);
    if (!balance.follow(met) || this.passesEdge(balance.level)) return this.trial(dt);
    this.stageLevel.set(balance.level);
    this.stageFlows.set(balance.flows);
    this.rateStage.set(balance.out);
    const rest = dt - part;
    for (let i = 0; i < volume.length; i += 1) {
      const change = rest * (inflow[i]! - balance.out[i]!);
      const base = volume[i]! + change + part * inflow[i]!;
      if (base < 0 && change < 0) return this.trial(dt);
      balance.base[i] = base;
      this.error[i] = change;
    }
    // The slopes of the first stage tell where the second begins.
    balance.heights(this.error);
    balance.move(this.error);
    if (!balance.solve(part) || this.passesEdge(balance.level)) return this.trial(dt);
    const { flows, stageFlows } = this;
    for (let k = 0; k < flows.length; k += 1) flows[k] = stageFlows[k]! + stage * (flows[k]! - stageFlows[k]!);
    return true;
  }

  /** Error of the last trial in the level of each store [m], as it was found and before anything else is tried. */
  errors(): Float64Array {
    const { error, rateStart, rateStage, step, balance: { out } } = this;
    for (let i = 0; i < error.length; i += 1) {
      error[i] = step * (this.fine ? errorStart * rateStart[i]! + errorStage * rateStage[i]! + errorEnd * out[i]! : 0.5 * (rateStart[i]! - out[i]!));
    }
    this.balance.heights(error);
    return error;
  }

  /** Share of a step by which its error falls so many times. */
  rootOf(error: number): number {
    return this.fine ? cbrt(error) : Math.sqrt(error);
  }

  /** The longest of `dt`, its half, its quarter and so on that can be solved, as the last trial [s]. */
  settle(dt: number, fine = false): number {
    let length = dt;
    while (!(fine ? this.trialFine(length) : this.trial(length))) {
      if (length < shortestStep) throw new DocumentError('document.notComputable', '/system/parts', { reason: 'levels that do not settle' });
      length /= 2;
    }
    return length;
  }

  /** Takes the last trial as done: every volume changes by its flows. */
  commit(): void {
    const { volume, inflow, step, flows } = this;
    const { fluxes } = this.layout;
    for (let i = 0; i < volume.length; i += 1) volume[i] = volume[i]! + step * inflow[i]!;
    for (let k = 0; k < flows.length; k += 1) {
      const moved = step * flows[k]!;
      if (moved === 0) continue;
      const flux = fluxes[k]!;
      volume[flux.from] = volume[flux.from]! - moved;
      if (!flux.delivers) continue;
      if (flux.to >= 0) volume[flux.to] = volume[flux.to]! + moved;
      else if (flux.back >= 0) volume[flux.back] = volume[flux.back]! + moved * flux.backShare;
    }
    this.level.set(this.trialLevel);
  }

  /** Whether a level has come over an edge at which a twin's pumps begin, or into its film or out of it. */
  private passesEdge(to: Float64Array): boolean {
    const { thresholds, level } = this;
    for (let store = 0; store < thresholds.length; store += 1) {
      const edges = thresholds[store]!;
      for (let k = 0; k < edges.length; k += 1) {
        const edge = edges[k]!;
        if (level[store]! < edge !== to[store]! < edge || level[store]! > edge + film !== to[store]! > edge + film) return true;
      }
    }
    return false;
  }
}
