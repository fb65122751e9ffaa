import type { RoutingModel } from './model.ts';
import type { Network } from './network.ts';

/** Levels at the end of each grid step [m] and mean flow out of each basin by its pumps during it [m3/s]. */
export interface RunSamples {
  readonly pond: readonly Float64Array[];
  readonly basin: readonly Float64Array[];
  readonly well: readonly Float64Array[];
  readonly pump: readonly Float64Array[];
}

/** Writes down a run on the even grid of its storm, whatever steps it takes: levels run straight within a step. */
export class Recorder {
  readonly samples: RunSamples;
  private readonly network: Network;
  private readonly grid: number;
  private readonly steps: number;
  private readonly before: Float64Array;
  private readonly series: readonly Float64Array[];

  constructor(model: RoutingModel, network: Network, grid: number, steps: number) {
    const make = (list: readonly unknown[]): Float64Array[] => list.map(() => new Float64Array(steps));
    this.samples = { pond: make(model.ponds), basin: make(model.basins), well: make(model.wells), pump: make(model.basins) };
    this.series = [...this.samples.pond, ...model.junctions.map(() => new Float64Array(0)), ...this.samples.well, ...this.samples.basin];
    this.network = network;
    this.grid = grid;
    this.steps = steps;
    this.before = Float64Array.from(network.level);
  }

  /** Books the step of `dt` seconds that the network has just committed, begun at `from`. */
  add(from: number, dt: number): void {
    const { grid, network } = this;
    const first = Math.max(0, Math.floor(from / grid - 1e-9));
    const end = from + dt;
    for (let i = first; i < this.steps && i * grid < end - 1e-9; i += 1) {
      const close = (i + 1) * grid;
      const inside = Math.min(end, close) - Math.max(from, i * grid);
      if (inside > 0) this.addPumps(i, inside / grid);
      if (close > end + 1e-9) break;
      const share = Math.min(1, (close - from) / dt);
      for (let store = 0; store < this.series.length; store += 1) {
        const before = this.before[store]!;
        this.series[store]![i] = before + share * (network.level[store]! - before);
      }
    }
    for (let i = 0; i < this.before.length; i += 1) this.before[i] = network.level[i]!;
  }

  private addPumps(i: number, share: number): void {
    const { pumpPlaces } = this.network.layout;
    for (let basin = 0; basin < pumpPlaces.length; basin += 1) {
      const series = this.samples.pump[basin]!;
      for (const place of pumpPlaces[basin]!) series[i] = series[i]! + share * this.network.flows[place]!;
    }
  }
}
