import type { Network } from './network.ts';

/** Where the water of a run went [m3]. */
export interface RunVolumes {
  readonly inflow: number;
  /** Over the rims and off the site, and from one low spot to another. */
  readonly spilled: number;
  readonly spilledBetween: number;
  readonly lost: number;
  readonly soaked: number;
  /** Out of dry wells: off the site or into a low spot. */
  readonly overflowed: number;
  /** By gravity through outlets, and through lids. */
  readonly drained: number;
  readonly lid: number;
  /** Out of the ends of the lines; what only filled a line is not in it. */
  readonly pumped: number;
  /** Back into low spots, of all that left at outlets. */
  readonly returned: number;
  /** What stands in stores and lines at the end beyond what stood at the start. */
  readonly stored: number;
}

/**
 * A storm that brings less than this [m3] is measured against what stands in the system, and against this at least: the last digit of a
 * level of 100 m is 1e-10 m3 over a hectare, and 1e-8 m3 of an hour's pumping through the film in which a pump begins, however little came.
 */
const leastInflow = 0.01;

/** Keeps the books of one run: highest levels, time over each sill, every volume that came and went. */
export class Ledger {
  readonly maxLevel: Float64Array;
  readonly secondsOver: Float64Array;
  /** Water that stands in each line of each basin [m3]. */
  readonly lineContent: readonly Float64Array[];
  /** Volume that each flux has moved [m3], in the order of the network. */
  readonly moved: Float64Array;
  /** Part of it that filled a line and went no further. */
  readonly filled: Float64Array;
  inflow = 0;
  runTime = 0;
  private readonly network: Network;
  private readonly sills: readonly { readonly pond: number; readonly level: number }[];
  private readonly before: Float64Array;
  private readonly startVolume: number;

  constructor(network: Network, sills: readonly { readonly pond: number; readonly level: number }[]) {
    this.network = network;
    this.sills = sills;
    this.maxLevel = Float64Array.from(network.level);
    this.before = Float64Array.from(network.level);
    this.secondsOver = new Float64Array(sills.length);
    this.moved = new Float64Array(network.layout.fluxes.length);
    this.filled = new Float64Array(network.layout.fluxes.length);
    this.lineContent = network.model.basins.map(({ lines }) => Float64Array.from(lines, ({ volume, runBack }) => volume - runBack));
    this.startVolume = this.stored();
  }

  /** Books the step that the network has just committed. */
  add(dt: number): void {
    const { network, maxLevel, moved } = this;
    const { level, inflow, flows } = network;
    let sum = 0;
    for (let i = 0; i < level.length; i += 1) {
      if (level[i]! > maxLevel[i]!) maxLevel[i] = level[i]!;
      sum += inflow[i]!;
    }
    this.inflow += dt * sum;
    for (let k = 0; k < flows.length; k += 1) moved[k] = moved[k]! + dt * flows[k]!;
    this.addPumps(dt);
    if (this.sills.length > 0) this.addSills(dt);
    for (let i = 0; i < level.length; i += 1) this.before[i] = level[i]!;
  }

  private addPumps(dt: number): void {
    const { pumps } = this.network.layout;
    for (let basin = 0; basin < pumps.length; basin += 1) {
      let runs = false;
      const own = pumps[basin]!;
      for (let line = 0; line < own.length; line += 1) {
        const flux = own[line]!;
        const place = this.network.layout.pumpPlaces[basin]![line]!;
        const volume = dt * this.network.flows[place]!;
        if (volume > 0) runs = true;
        if (flux.delivers) continue;
        this.filled[place] = this.filled[place]! + volume;
        this.lineContent[basin]![line] = this.lineContent[basin]![line]! + volume;
      }
      if (runs) this.runTime += dt;
    }
  }

  /** The level runs straight within a step; the part of it above the sill counts. */
  private addSills(dt: number): void {
    for (let i = 0; i < this.sills.length; i += 1) {
      const { pond, level } = this.sills[i]!;
      const from = this.before[pond]! - level;
      const to = this.network.level[pond]! - level;
      if (from <= 0 && to <= 0) continue;
      const share = from > 0 && to > 0 ? 1 : Math.max(from, to) / Math.abs(to - from);
      this.secondsOver[i] = this.secondsOver[i]! + dt * share;
    }
  }

  volumes(): RunVolumes {
    let [spilled, spilledBetween, lost, soaked, overflowed, drained, lid, pumped, returned] = [0, 0, 0, 0, 0, 0, 0, 0, 0];
    const { fluxes } = this.network.layout;
    for (let k = 0; k < fluxes.length; k += 1) {
      const { kind, to, backShare } = fluxes[k]!;
      const moved = this.moved[k]!;
      if (to < 0) returned += backShare * this.delivered(k);
      if (kind === 'spill') {
        if (to < 0) spilled += moved;
        else spilledBetween += moved;
      } else if (kind === 'loss') lost += moved;
      else if (kind === 'seepage') soaked += moved;
      else if (kind === 'overflow') overflowed += moved;
      else if (kind === 'lid') lid += moved;
      else if (kind === 'pump') pumped += this.delivered(k);
      else if (to < 0) drained += moved;
    }
    return { inflow: this.inflow, spilled, spilledBetween, lost, soaked, overflowed, drained, lid, pumped, returned, stored: this.stored() - this.startVolume };
  }

  /** What has left the system by a flux: for pumps, all but what fills their line. */
  private delivered(k: number): number {
    return this.moved[k]! - this.filled[k]!;
  }

  /**
   * Difference between what came, what went and what stands, as a share of what came; where less than ten liters came, of what stood, or of ten liters.
   * What stands is told by the levels, turned back to volumes; what went, by the fluxes out of the system alone.
   */
  massError(): number {
    let out = 0;
    const { fluxes } = this.network.layout;
    for (let k = 0; k < fluxes.length; k += 1) {
      const { to, backShare } = fluxes[k]!;
      if (to < 0) out += (1 - backShare) * this.delivered(k);
    }
    const change = this.stored() - this.startVolume;
    const measure = this.inflow >= leastInflow ? this.inflow : Math.max(this.startVolume, leastInflow);
    return Math.abs(this.inflow - out - change) / measure;
  }

  private stored(): number {
    let sum = 0;
    const { tables } = this.network.layout;
    for (let i = 0; i < tables.length; i += 1) sum += tables[i]!.volume(this.network.level[i]!);
    for (const contents of this.lineContent) for (const content of contents) sum += content;
    return sum;
  }
}
