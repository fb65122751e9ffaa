import { DocumentError } from '../document/error.ts';
import { FlowAt } from './flowAt.ts';
import { film, type Flux } from './fluxes.ts';
import type { RoutingModel } from './model.ts';
import { solveDominant } from './solver.ts';
import { type Layout, layoutOf } from './stores.ts';

const numbers = (length: number): Float64Array => new Float64Array(length);
/** A balance this close to nothing is met [m3]: a tenth of a cubic millimetre. */
const volumeTolerance = 1e-10;
/** Rounding of a level, as a share of it, that a balance cannot be closer than. */
const levelRounding = 5e-16;
/** A step this short always settles, unless the numbers are beyond reason [s]. */
const shortestStep = 1e-4;
const mostNewton = 40;
/** From here on a step of Newton that brings nothing is halved, so often at most. */
const searchFrom = 3;
const mostHalvings = 5;

/**
 * Coupled levels of every low spot, junction, dry well and basin, advanced by one step of backward Euler.
 * All flows depend on the levels at the end of the step and rise with the level they leave and fall with the level
 * they enter, so a step keeps order: stores that start no lower and receive no less end no lower.
 * Volumes change by the flows times the step and by nothing else.
 * Source of the scheme: backward (implicit) Euler; Chow, Maidment and Mays 1988 ch. 8 for level-pool routing;
 * Newton's method with a search along its step, Ortega and Rheinboldt 1970 (from memory)
 */
export class Network {
  readonly model: RoutingModel;
  readonly layout: Layout;
  readonly volume: Float64Array;
  readonly level: Float64Array;
  /** Mean flow into each store during the step, set by the caller [m3/s]. */
  readonly inflow: Float64Array;
  /** Levels and flows at the end of the last trial. */
  readonly trialLevel: Float64Array;
  readonly flows: Float64Array;
  /** Levels at which a twin's pumps begin, lowest first, of each store. */
  readonly thresholds: number[][];
  /** How often a step was too long to be solved. */
  failed = 0;
  step = 0;
  private readonly balance: Float64Array;
  private readonly slopes: Float64Array;
  private readonly before: Float64Array;
  private off = 0;
  private readonly out = new FlowAt();
  private readonly count: number;
  private readonly fluxes: readonly Flux[];
  private readonly bottoms: Float64Array;

  constructor(model: RoutingModel) {
    const layout = layoutOf(model);
    const { count } = layout;
    this.model = model;
    this.layout = layout;
    this.count = count;
    this.fluxes = layout.fluxes;
    this.bottoms = Float64Array.from(layout.tables, ({ bottom }) => bottom);
    this.level = Float64Array.from(this.bottoms);
    this.trialLevel = Float64Array.from(this.bottoms);
    this.volume = numbers(count);
    this.inflow = numbers(count);
    this.flows = numbers(layout.fluxes.length);
    this.balance = numbers(count);
    this.before = numbers(count);
    this.slopes = numbers(count * count);
    this.thresholds = layout.tables.map(() => []);
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
    this.step = dt;
    this.trialLevel.set(this.level);
    let least = Infinity;
    let halvings = 0;
    for (let i = 0; i < mostNewton; i += 1) {
      if (this.assemble()) return true;
      if (i >= searchFrom && halvings < mostHalvings && this.off >= least) {
        halvings += 1;
        this.halve();
        continue;
      }
      halvings = 0;
      least = this.off;
      this.newton();
    }
    this.failed += 1;
    return false;
  }

  /** The longest of `dt`, its half, its quarter and so on that can be solved, as the last trial [s]. */
  settle(dt: number): number {
    let length = dt;
    while (!this.trial(length)) {
      if (length < shortestStep) throw new DocumentError('document.notComputable', '/system/parts', { reason: 'levels that do not settle' });
      length /= 2;
    }
    return length;
  }

  /** Takes the last trial as done: every volume changes by its flows. */
  commit(): void {
    const { count, volume, inflow, step } = this;
    for (let i = 0; i < count; i += 1) volume[i] = volume[i]! + step * inflow[i]!;
    for (let k = 0; k < this.fluxes.length; k += 1) {
      const flux = this.fluxes[k]!;
      const moved = step * this.flows[k]!;
      volume[flux.from] = volume[flux.from]! - moved;
      if (!flux.delivers) continue;
      if (flux.to >= 0) volume[flux.to] = volume[flux.to]! + moved;
      else if (flux.back >= 0) volume[flux.back] = volume[flux.back]! + moved * flux.backShare;
    }
    this.level.set(this.trialLevel);
  }

  // ---------------------------------------------------------------- one iteration

  /** Balance of every store at the trial levels and its slopes; true when all are met. */
  private assemble(): boolean {
    const { count, balance, slopes, trialLevel, volume, inflow, step, fluxes } = this;
    const { tables } = this.layout;
    slopes.fill(0);
    for (let i = 0; i < count; i += 1) {
      const table = tables[i]!;
      balance[i] = table.look(trialLevel[i]!) - volume[i]! - step * inflow[i]!;
      slopes[i * count + i] = table.lastArea;
    }
    for (let k = 0; k < fluxes.length; k += 1) this.addFlux(fluxes[k]!, k);
    return this.isMet();
  }

  private isMet(): boolean {
    const { count, balance, slopes, trialLevel } = this;
    let steepest = 0;
    let most = 0;
    let off = 0;
    for (let i = 0; i < count; i += 1) {
      const own = slopes[i * count + i]! * Math.abs(trialLevel[i]!);
      if (own > steepest) steepest = own;
      const miss = this.owes(i) ? 0 : Math.abs(balance[i]!);
      off += miss;
      if (!(miss <= most)) most = miss;
    }
    this.off = off;
    return most <= volumeTolerance + levelRounding * steepest;
  }

  private addFlux(flux: Flux, k: number): void {
    const { count, balance, slopes, trialLevel, step, out } = this;
    const { from, to, back } = flux;
    flux.at(trialLevel[from]!, to < 0 ? -Infinity : trialLevel[to]!, out);
    this.thin(out.flow >= 0 ? from : to, out);
    const { flow } = out;
    this.flows[k] = flow;
    if (flow === 0 && out.from === 0 && out.to === 0) return;
    const moved = step * flow;
    const byFrom = step * out.from;
    balance[from] = balance[from]! + moved;
    slopes[from * count + from] = slopes[from * count + from]! + byFrom;
    if (to >= 0) slopes[from * count + to] = slopes[from * count + to]! + step * out.to;
    if (!flux.delivers) return;
    if (to >= 0) {
      balance[to] = balance[to]! - moved;
      slopes[to * count + from] = slopes[to * count + from]! - byFrom;
      slopes[to * count + to] = slopes[to * count + to]! - step * out.to;
    } else if (back >= 0) {
      balance[back] = balance[back]! - flux.backShare * moved;
      slopes[back * count + from] = slopes[back * count + from]! - flux.backShare * byFrom;
    }
  }

  /** A store gives less as the last film of water in it goes. */
  private thin(source: number, out: FlowAt): void {
    if (source < 0) return;
    const depth = this.trialLevel[source]! - this.bottoms[source]!;
    if (depth >= film) return;
    const share = depth > 0 ? depth / film : 0;
    const { flow } = out;
    if (flow >= 0) out.set(flow * share, out.from * share + flow / film, out.to * share);
    else out.set(flow * share, out.from * share, out.to * share + flow / film);
  }

  /** A dry store that gave a rounding more than it held: it gives nothing more, stays at its bottom and owes it to the next inflow. */
  private owes(store: number): boolean {
    return this.balance[store]! > 0 && this.trialLevel[store]! <= this.bottoms[store]!;
  }

  private newton(): void {
    const { count, balance, slopes, trialLevel } = this;
    for (let i = 0; i < count; i += 1) {
      if (this.owes(i)) this.hold(i);
      else balance[i] = -balance[i]!;
    }
    solveDominant(count, slopes, balance);
    this.before.set(trialLevel);
    for (let i = 0; i < count; i += 1) trialLevel[i] = this.clipped(i, trialLevel[i]!, trialLevel[i]! + balance[i]!);
  }

  /** Leaves a level where it is in the next step of Newton. */
  private hold(store: number): void {
    const { count, balance, slopes } = this;
    balance[store] = 0;
    slopes.fill(0, store * count, (store + 1) * count);
    slopes[store * count + store] = 1;
  }

  /** Back half way along the last step. */
  private halve(): void {
    for (let i = 0; i < this.count; i += 1) this.trialLevel[i] = 0.5 * (this.before[i]! + this.trialLevel[i]!);
  }

  /** A step does not jump over an edge at which the flow changes at once: it lands on it. */
  private clipped(store: number, before: number, next: number): number {
    const bottom = this.bottoms[store]!;
    let level = next;
    const edges = this.thresholds[store]!;
    for (let k = 0; k < edges.length; k += 1) {
      const edge = edges[k]!;
      if ((before < edge && level > edge + film) || (before > edge + film && level < edge)) level = edge + 0.5 * film;
    }
    if (before > bottom + film && level < bottom) return bottom + 0.5 * film;
    return level < bottom ? bottom : level;
  }
}
