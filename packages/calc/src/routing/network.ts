import { DocumentError } from '../document/error.ts';
import { cbrt } from '../math/cbrt.ts';
import { Balance } from './balance.ts';
import { climb } from './climb.ts';
import { film } from './fluxes.ts';
import { Look } from './look.ts';
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
/** A last step of Newton as short as this needs no other look in a fine step [m]: its levels err by more. Source: ours. */
const landing = 2e-7;

const networks = new WeakMap<RoutingModel, Network>();

/** The network of a model, dry and at rest. Runs of one model follow each other, so that one network serves all of them. */
export function networkOf(model: RoutingModel): Network {
  const known = networks.get(model);
  if (known !== undefined) {
    known.reset();
    return known;
  }
  const made = new Network(model);
  networks.set(model, made);
  return made;
}

/** Short rows are copied quicker by hand. */
function copy(into: Float64Array, from: Float64Array): void {
  for (let i = 0; i < into.length; i += 1) into[i] = from[i]!;
}

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
  flows: Float64Array;
  /** Levels at which a twin's pumps begin, lowest first, of each store. */
  readonly thresholds: number[][];
  /** How often a step was too long to be solved. */
  failed = 0;
  step = 0;
  private readonly balance: Balance;
  /** What is known at the levels of now, if it is. */
  private start: Look;
  private readonly meanFlows: Float64Array;
  private readonly stageFlows: Float64Array;
  private readonly stageOut: Float64Array;
  private readonly error: Float64Array;
  private fine = false;
  private known = false;

  constructor(model: RoutingModel) {
    const layout = layoutOf(model);
    const { count, fluxes } = layout;
    const numbers = (length: number): Float64Array => new Float64Array(length);
    this.model = model;
    this.layout = layout;
    this.balance = new Balance(layout);
    this.trialLevel = this.balance.level;
    this.thresholds = this.balance.thresholds;
    this.level = Float64Array.from(this.trialLevel);
    this.volume = numbers(count);
    this.inflow = numbers(count);
    this.start = new Look(count, fluxes.length);
    this.meanFlows = numbers(fluxes.length);
    this.flows = this.meanFlows;
    this.stageFlows = numbers(fluxes.length);
    this.stageOut = numbers(count);
    this.error = numbers(count);
  }

  /** Dry, at rest and without pumps, as it was made. */
  reset(): void {
    const { layout, level, volume, inflow, thresholds } = this;
    for (let store = 0; store < layout.count; store += 1) {
      level[store] = layout.tables[store]!.bottom;
      volume[store] = 0;
      inflow[store] = 0;
      if (thresholds[store]!.length > 0) thresholds[store] = [];
    }
    for (const pumps of layout.pumps) for (const pump of pumps) pump.setOne(null, true);
    this.failed = 0;
    this.known = false;
  }

  /** Sets a store to a level. */
  setLevel(store: number, level: number): void {
    this.level[store] = level;
    this.volume[store] = this.layout.tables[store]!.volume(level);
    this.known = false;
  }

  /** Adds water to a store at once. */
  addVolume(store: number, volume: number): void {
    this.volume[store] = this.volume[store]! + volume;
    this.level[store] = this.layout.tables[store]!.level(this.volume[store]!);
    this.known = false;
  }

  /** Other pumps run, or their water goes elsewhere: what was known of the flows at the present levels is so no more. */
  otherFlows(): void {
    this.known = false;
  }

  /**
   * Levels and flows at the end of a step of `dt` seconds; nothing changes until `commit`.
   * @returns false when the levels do not settle: the step is too long for what happens in it
   */
  trial(dt: number): boolean {
    const { balance, volume, inflow } = this;
    this.step = dt;
    this.fine = false;
    this.begin();
    for (let i = 0; i < volume.length; i += 1) balance.base[i] = volume[i]! + dt * inflow[i]!;
    if (!balance.solve(dt, 0, this.start)) {
      this.failed += 1;
      this.begin();
      if (!climb(balance, volume, inflow, dt)) return false;
    }
    this.flows = balance.found.flows;
    return true;
  }

  /** The same by two stages; by one where a store would give more than it holds, or where a twin's pumps begin or stop. */
  trialFine(dt: number): boolean {
    const { balance, volume, inflow, error } = this;
    const part = stage * dt;
    const rest = dt - part;
    this.step = dt;
    this.fine = true;
    this.begin();
    for (let i = 0; i < volume.length; i += 1) balance.base[i] = volume[i]! + part * inflow[i]!;
    if (!balance.solve(part, landing, this.start) || this.passesEdge()) return this.trial(dt);
    const { found } = balance;
    copy(this.stageFlows, found.flows);
    copy(this.stageOut, found.out);
    for (let i = 0; i < volume.length; i += 1) {
      const change = rest * (inflow[i]! - found.out[i]!);
      const base = volume[i]! + change + part * inflow[i]!;
      if (base < 0 && change < 0) return this.trial(dt);
      balance.base[i] = base;
      error[i] = change;
    }
    // The slopes at the first stage tell where the second one begins.
    balance.heights(error, part);
    balance.move(error);
    balance.look();
    if (!balance.solve(part, landing) || this.passesEdge()) return this.trial(dt);
    const { meanFlows, stageFlows } = this;
    for (let k = 0; k < meanFlows.length; k += 1) meanFlows[k] = stageFlows[k]! + stage * (found.flows[k]! - stageFlows[k]!);
    this.flows = meanFlows;
    return true;
  }

  /** Error of the last trial in the level of each store [m]. */
  errors(): Float64Array {
    const { error, start, stageOut, step, fine, balance: { found: { out } } } = this;
    for (let i = 0; i < error.length; i += 1) {
      error[i] = step * (fine ? errorStart * start.out[i]! + errorStage * stageOut[i]! + errorEnd * out[i]! : 0.5 * (start.out[i]! - out[i]!));
    }
    this.balance.heights(error, fine ? stage * step : step);
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
    copy(this.level, this.trialLevel);
    // What was found at the end is what is known at the start of the next step; its old place is written over then.
    const { start } = this;
    this.start = this.balance.found;
    this.balance.found = start;
    this.known = true;
  }

  /** Trials begin at the levels of now, of which the last step or a first look knows the flows. */
  private begin(): void {
    const { balance } = this;
    copy(balance.level, this.level);
    if (this.known) return;
    balance.look();
    this.start.copy(balance.found);
    this.known = true;
  }

  /** Whether a level has come over an edge at which a twin's pumps begin, or into its film or out of it. */
  private passesEdge(): boolean {
    const { thresholds, level, trialLevel: to } = this;
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
