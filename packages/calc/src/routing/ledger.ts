import type { Network } from './network.ts';

/** Keeps the books of one run: highest levels, time over each sill, every volume that came and went. */
export class Ledger {
  readonly maxPond: Float64Array;
  readonly maxBasin: Float64Array;
  readonly secondsOver: Float64Array;
  /** Water that stands in each discharge line [m3]. */
  readonly lineContent: Float64Array;
  inflow = 0;
  outflow = 0;
  runTime = 0;
  private readonly sills: readonly { readonly pond: number; readonly level: number }[];
  private readonly pumped: Float64Array;
  private readonly before: Float64Array;
  private readonly startVolume: number;

  constructor(network: Network, sills: readonly { readonly pond: number; readonly level: number }[]) {
    this.sills = sills;
    this.maxPond = Float64Array.from(network.pondLevel);
    this.maxBasin = Float64Array.from(network.basinLevel);
    this.before = Float64Array.from(network.pondLevel);
    this.secondsOver = new Float64Array(sills.length);
    this.pumped = new Float64Array(network.basinLevel.length);
    this.lineContent = Float64Array.from(network.model.basins, ({ pump }) => (pump === null || pump.runBack > 0 ? 0 : pump.lineVolume));
    this.startVolume = this.stored(network);
  }

  /** Books the step that the network has just committed. */
  add(network: Network, dt: number): void {
    const { model } = network;
    for (let pond = 0; pond < model.ponds.length; pond += 1) {
      const level = network.pondLevel[pond]!;
      if (level > this.maxPond[pond]!) this.maxPond[pond] = level;
      this.inflow += dt * network.pondInflow[pond]!;
      this.outflow += dt * (network.spills[pond]! + network.losses[pond]!);
    }
    for (let index = 0; index < model.links.length; index += 1) {
      if (model.links[index]!.basin < 0) this.outflow += dt * network.linkFlows[index]!;
    }
    for (let basin = 0; basin < model.basins.length; basin += 1) this.addBasin(network, basin, dt);
    this.addSills(network, dt);
    this.before.set(network.pondLevel);
  }

  /** Books a step in which everything that comes in goes straight out again; `passing` is what each pump passes on. */
  pass(network: Network, passing: Float64Array, dt: number): void {
    let total = 0;
    for (let pond = 0; pond < network.pondInflow.length; pond += 1) total += network.pondInflow[pond]!;
    for (let basin = 0; basin < passing.length; basin += 1) {
      total += network.basinInflow[basin]!;
      this.pumped[basin] = this.pumped[basin]! + dt * passing[basin]!;
    }
    this.inflow += dt * total;
    this.outflow += dt * total;
  }

  private addBasin(network: Network, basin: number, dt: number): void {
    const level = network.basinLevel[basin]!;
    if (level > this.maxBasin[basin]!) this.maxBasin[basin] = level;
    const volume = dt * network.pumpFlows[basin]!;
    this.inflow += dt * network.basinInflow[basin]!;
    this.outflow += dt * network.lidSpills[basin]!;
    this.pumped[basin] = this.pumped[basin]! + volume;
    if (volume > 0) this.runTime += dt;
    if (network.lineFilling[basin] === 1) this.lineContent[basin] = this.lineContent[basin]! + volume;
    else this.outflow += volume;
  }

  /** The level runs straight within a step; the part of it above the sill counts. */
  private addSills(network: Network, dt: number): void {
    for (let i = 0; i < this.sills.length; i += 1) {
      const { pond, level } = this.sills[i]!;
      const from = this.before[pond]! - level;
      const to = network.pondLevel[pond]! - level;
      if (from <= 0 && to <= 0) continue;
      const share = from > 0 && to > 0 ? 1 : Math.max(from, to) / Math.abs(to - from);
      this.secondsOver[i] = this.secondsOver[i]! + dt * share;
    }
  }

  /** Volume pumped since the last call [m3]. */
  takePumped(basin: number): number {
    const volume = this.pumped[basin]!;
    this.pumped[basin] = 0;
    return volume;
  }

  /** Difference between what came, what went and what stands, as a share of what came. Levels are turned back to volumes. */
  massError(network: Network): number {
    const change = this.stored(network) - this.startVolume;
    return this.inflow > 0 ? Math.abs(this.inflow - this.outflow - change) / this.inflow : 0;
  }

  private stored(network: Network): number {
    let sum = 0;
    network.model.ponds.forEach(({ storage }, pond) => { sum += storage.volume(network.pondLevel[pond]!); });
    network.model.basins.forEach(({ storage }, basin) => { sum += storage.volume(network.basinLevel[basin]!); });
    for (const content of this.lineContent) sum += content;
    return sum;
  }
}
