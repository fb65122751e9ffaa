import { linkFlow } from './linkFlow.ts';
import type { RoutingModel } from './model.ts';
import { spillFlow } from './pondStorage.ts';
import { risingRoot } from './root.ts';

/** How the pump of a basin acts during one step. */
export const pumpOff = 0;
export const pumpRunning = 1;
/** Runs above a level and at it passes on what comes in: the memoryless twins. */
export const pumpAbove = 2;

const numbers = (length: number): Float64Array => new Float64Array(length);

/**
 * Coupled levels of every low spot and basin, advanced by one step of backward Euler.
 * All flows depend on the levels at the end of the step and rise with the level they leave and fall with the level
 * they enter, so a step keeps order: stores that start no lower and receive no less end no lower.
 * Volumes change by the flows times the step and by nothing else.
 * Source of the scheme: backward (implicit) Euler; Chow, Maidment and Mays 1988 ch. 8 for level-pool routing.
 */
export class Network {
  readonly model: RoutingModel;
  readonly pondVolume: Float64Array;
  readonly pondLevel: Float64Array;
  readonly basinVolume: Float64Array;
  readonly basinLevel: Float64Array;
  /** Flow into each store during the step, set by the caller [m3/s]. */
  readonly pondInflow: Float64Array;
  readonly basinInflow: Float64Array;
  readonly pumpMode: Uint8Array;
  readonly pumpThreshold: Float64Array;
  /** Set while a line fills from empty. */
  readonly lineFilling: Uint8Array;
  /** Answers of the last trial. */
  readonly linkFlows: Float64Array;
  readonly spills: Float64Array;
  readonly losses: Float64Array;
  readonly lidSpills: Float64Array;
  readonly pumpFlows: Float64Array;
  readonly trialPond: Float64Array;
  readonly trialBasin: Float64Array;
  private readonly linksOfPond: readonly (readonly number[])[];
  private readonly pondsOfBasin: readonly (readonly number[])[];
  private readonly lonePonds: readonly number[];
  private readonly freeLevels: Float64Array;
  private step = 0;

  constructor(model: RoutingModel) {
    const ponds = model.ponds.length;
    const basins = model.basins.length;
    this.model = model;
    this.pondVolume = numbers(ponds);
    this.pondLevel = Float64Array.from(model.ponds, (pond) => pond.storage.bottom);
    this.basinLevel = Float64Array.from(model.basins, (basin) => basin.offLevel);
    this.basinVolume = Float64Array.from(model.basins, (basin) => basin.storage.volume(basin.offLevel));
    this.pondInflow = numbers(ponds);
    this.basinInflow = numbers(basins);
    this.pumpMode = new Uint8Array(basins);
    this.pumpThreshold = numbers(basins);
    this.lineFilling = new Uint8Array(basins);
    this.linkFlows = numbers(model.links.length);
    this.spills = numbers(ponds);
    this.losses = numbers(ponds);
    this.lidSpills = numbers(basins);
    this.pumpFlows = numbers(basins);
    this.trialPond = Float64Array.from(this.pondLevel);
    this.trialBasin = Float64Array.from(this.basinLevel);
    const indices = model.links.map((_, index) => index);
    this.linksOfPond = model.ponds.map((_, pond) => indices.filter((index) => model.links[index]!.pond === pond));
    this.pondsOfBasin = model.basins.map((_, basin) =>
      model.ponds.map((__, pond) => pond).filter((pond) => this.linksOfPond[pond]!.some((index) => model.links[index]!.basin === basin)));
    this.lonePonds = model.ponds.map((_, pond) => pond).filter((pond) => !this.pondsOfBasin.some((list) => list.includes(pond)));
    this.freeLevels = Float64Array.from(model.basins, (_, basin) =>
      model.links.reduce((low, link) => (link.basin === basin && link.freeLevel < low ? link.freeLevel : low), Infinity));
  }

  /** Levels and flows at the end of a step of `dt` seconds; nothing changes until `commit`. */
  trial(dt: number): void {
    this.step = dt;
    for (const pond of this.lonePonds) this.solvePond(pond);
    const basins = this.model.basins.length;
    // A pond that feeds two basins couples them; passes repeat until their levels rest.
    const passes = basins > 1 ? 40 : 1;
    for (let basin = 0; basin < basins; basin += 1) this.trialBasin[basin] = this.basinLevel[basin]!;
    for (let pass = 0; pass < passes; pass += 1) {
      let moved = 0;
      for (let basin = 0; basin < basins; basin += 1) {
        const before = this.trialBasin[basin]!;
        this.solveBasin(basin);
        moved = Math.max(moved, Math.abs(this.trialBasin[basin]! - before));
      }
      if (moved < 1e-7) break;
    }
  }

  /** Takes the last trial as done: every volume changes by its flows. */
  commit(): void {
    const { model, step } = this;
    for (let pond = 0; pond < model.ponds.length; pond += 1) {
      let net = this.pondInflow[pond]! - this.spills[pond]! - this.losses[pond]!;
      for (const index of this.linksOfPond[pond]!) net -= this.linkFlows[index]!;
      const volume = Math.max(0, this.pondVolume[pond]! + step * net);
      this.pondVolume[pond] = volume;
      this.pondLevel[pond] = model.ponds[pond]!.storage.level(volume);
    }
    for (let basin = 0; basin < model.basins.length; basin += 1) {
      const net = this.basinInflow[basin]! + this.inflowByLinks(basin) - this.pumpFlows[basin]! - this.lidSpills[basin]!;
      this.setBasinVolume(basin, Math.max(0, this.basinVolume[basin]! + step * net));
    }
  }

  setBasinVolume(basin: number, volume: number): void {
    this.basinVolume[basin] = volume;
    this.basinLevel[basin] = this.model.basins[basin]!.storage.level(volume);
  }

  inflowByLinks(basin: number): number {
    let sum = 0;
    const { links } = this.model;
    for (let index = 0; index < links.length; index += 1) if (links[index]!.basin === basin) sum += this.linkFlows[index]!;
    return sum;
  }

  // ---------------------------------------------------------------- one pond, with the basins' levels given

  private pondBalance(pond: number, level: number): number {
    const store = this.model.ponds[pond]!;
    let out = store.loss + spillFlow(level, store.rimLevel, store.spillWidth);
    for (const index of this.linksOfPond[pond]!) out += this.flowOf(index, level);
    return store.storage.volume(level) + this.step * (out - this.pondInflow[pond]!) - this.pondVolume[pond]!;
  }

  private flowOf(index: number, pondLevel: number): number {
    const link = this.model.links[index]!;
    return linkFlow(link, pondLevel, link.basin < 0 ? -Infinity : this.trialBasin[link.basin]!);
  }

  private solvePond(pond: number): void {
    const store = this.model.ponds[pond]!;
    const { bottom } = store.storage;
    const atBottom = this.pondBalance(pond, bottom);
    if (atBottom >= 0) {
      this.drainDry(pond, bottom);
      return;
    }
    const level = risingRoot((h) => this.pondBalance(pond, h), bottom, atBottom, this.trialPond[pond]!);
    this.trialPond[pond] = level;
    this.losses[pond] = store.loss;
    this.spills[pond] = spillFlow(level, store.rimLevel, store.spillWidth);
    for (const index of this.linksOfPond[pond]!) this.linkFlows[index] = this.flowOf(index, level);
  }

  /** The low spot runs dry in this step: what there is goes to its ways out in proportion to what they could take. */
  private drainDry(pond: number, bottom: number): void {
    const store = this.model.ponds[pond]!;
    let available = this.pondVolume[pond]! / this.step + this.pondInflow[pond]!;
    let could = store.loss;
    for (const index of this.linksOfPond[pond]!) {
      const flow = this.flowOf(index, bottom);
      this.linkFlows[index] = flow;
      if (flow > 0) could += flow;
      else available -= flow;
    }
    const share = could > 0 ? Math.min(1, Math.max(0, available) / could) : 0;
    for (const index of this.linksOfPond[pond]!) if (this.linkFlows[index]! > 0) this.linkFlows[index] = this.linkFlows[index]! * share;
    this.losses[pond] = store.loss * share;
    this.spills[pond] = 0;
    this.trialPond[pond] = bottom;
  }

  // ---------------------------------------------------------------- one basin, with its ponds inside

  private pumpFlowAt(basin: number, level: number): number {
    const mode = this.pumpMode[basin]!;
    const pump = this.model.basins[basin]!.pump;
    if (pump === null || mode === pumpOff || (mode === pumpAbove && level <= this.pumpThreshold[basin]!)) return 0;
    return this.lineFilling[basin] === 1 ? pump.filling.flow(level) : pump.flow.flow(level);
  }

  private basinBalance(basin: number, level: number): number {
    const store = this.model.basins[basin]!;
    this.trialBasin[basin] = level;
    for (const pond of this.pondsOfBasin[basin]!) this.solvePond(pond);
    const inflow = this.basinInflow[basin]! + this.inflowByLinks(basin);
    const pumped = this.pumpFlowAt(basin, level);
    const lid = spillFlow(level, store.lidLevel, store.lidEdge);
    this.pumpFlows[basin] = pumped;
    this.lidSpills[basin] = lid;
    return store.storage.volume(level) + this.step * (pumped + lid - inflow) - this.basinVolume[basin]!;
  }

  private solveBasin(basin: number): void {
    const { bottom } = this.model.basins[basin]!.storage;
    if (this.pumpMode[basin] === pumpAbove && this.restAtThreshold(basin)) return;
    // Below the free end of its pipes a basin does not act back on the ponds: one pass settles it.
    const free = this.freeLevels[basin]!;
    const atFree = free === Infinity ? 1 : this.basinBalance(basin, free);
    if (atFree >= 0) {
      const inflow = this.basinInflow[basin]! + this.inflowByLinks(basin);
      this.trialBasin[basin] = this.solveFree(basin, inflow, bottom);
      return;
    }
    const guess = Math.max(this.basinLevel[basin]!, free);
    const level = risingRoot((h) => this.basinBalance(basin, h), free, atFree, guess);
    this.basinBalance(basin, level);
  }

  private solveFree(basin: number, inflow: number, bottom: number): number {
    const store = this.model.basins[basin]!;
    const goal = this.basinVolume[basin]! + this.step * inflow;
    const balance = (level: number): number =>
      store.storage.volume(level) + this.step * (this.pumpFlowAt(basin, level) + spillFlow(level, store.lidLevel, store.lidEdge)) - goal;
    const atBottom = balance(bottom);
    const level = atBottom >= 0 ? bottom : risingRoot(balance, bottom, atBottom, this.basinLevel[basin]!);
    this.pumpFlows[basin] = atBottom >= 0 ? Math.max(0, goal / this.step) : this.pumpFlowAt(basin, level);
    this.lidSpills[basin] = spillFlow(level, store.lidLevel, store.lidEdge);
    return level;
  }

  /** A twin whose level comes to rest exactly at its threshold passes on what comes in, up to what the pump can. */
  private restAtThreshold(basin: number): boolean {
    const pump = this.model.basins[basin]!.pump;
    const threshold = this.pumpThreshold[basin]!;
    if (pump === null) return false;
    const without = this.basinBalance(basin, threshold);
    if (without > 0 || without + this.step * pump.flow.flow(threshold) < 0) return false;
    this.pumpFlows[basin] = -without / this.step;
    return true;
  }
}
