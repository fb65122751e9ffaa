import type { RoutingModel } from './model.ts';
import type { Network } from './network.ts';
import type { StormInflow } from './run.ts';

/** Most grid steps taken together. */
const mostSteps = 60;
/** Height by which a mean inflow may misplace a level for a while [m]: in strong rain and in quiet hours. Source: ours, see the test against an independent integration. */
const strongHeight = 3e-6;
const quietHeight = 2e-5;
/** The same for basins and for junctions, which pass on what comes. */
const passingHeight = 2e-4;
/** Share by which the inflow may change where no water stands; and water thinner than this is no pond [m]. */
const dryShare = 0.05;
const wetDepth = 1e-3;
/** Share of the strongest inflow under which an hour is quiet, and share of a pump's flow that it keeps up with. Source: ours. */
const quietShare = 0.1;
const pumpShare = 0.8;

/**
 * Which steps of the grid a run takes together: those whose inflows are so alike that their mean moves no level by more than a hair,
 * and, where no water stands and rain is weak, those that are alike at all. Together they have their mean inflow, so no water is lost.
 */
export class Pace {
  private readonly network: Network;
  private readonly step: number;
  private readonly series: readonly Float64Array[];
  private readonly strong: Uint8Array;
  private readonly least: Float64Array;
  private readonly most: Float64Array;
  /** Volume by which a mean inflow may be wrong for a while, of each store [m3]. */
  private readonly spare: Float64Array;
  /** Level under which a store stands dry, or a basin between its floats. */
  private readonly calm: Float64Array;
  /** Whether it passes on all that comes, so that likeness is enough. */
  private readonly thin: Uint8Array;

  constructor(network: Network, inflow: StormInflow, window: readonly [number, number]) {
    const { ponds, basins, junctions = none(network.model.junctions), wells = none(network.model.wells) } = inflow;
    this.network = network;
    this.step = inflow.step;
    this.series = [...ponds, ...junctions, ...wells, ...basins];
    this.strong = strongSteps(network.model, inflow, window);
    this.least = new Float64Array(this.series.length);
    this.most = new Float64Array(this.series.length);
    this.spare = new Float64Array(this.series.length);
    const { layout } = network;
    this.calm = Float64Array.from(layout.tables, ({ bottom }, store) => (layout.firstJunction <= store && store < layout.firstWell ? Infinity : bottom) + wetDepth);
    network.model.basins.forEach(({ onLevel }, basin) => { this.calm[layout.firstBasin + basin] = onLevel + wetDepth; });
    this.thin = new Uint8Array(this.series.length);
  }

  /** Grid steps to take together from step `i` on, not beyond `end`. */
  together(i: number, end: number): number {
    const quiet = this.strong[i] === 0;
    this.begin(i, quiet);
    const most = Math.min(end - i, mostSteps);
    let count = 1;
    while (count < most && this.strong[i + count] === this.strong[i] && this.takes(i + count, count + 1)) count += 1;
    return count;
  }

  private begin(i: number, quiet: boolean): void {
    const { network: { layout, level }, series, least, most, spare, thin } = this;
    for (let store = 0; store < series.length; store += 1) {
      const flow = series[store]![i] ?? 0;
      least[store] = flow;
      most[store] = flow;
      const passes = store >= layout.firstBasin || (store >= layout.firstJunction && store < layout.firstWell);
      const height = passes ? passingHeight : quiet ? quietHeight : strongHeight;
      spare[store] = height * layout.tables[store]!.area(level[store]!);
      thin[store] = quiet && level[store]! < this.calm[store]! ? 1 : 0;
    }
  }

  /** Whether one more step goes with those before it. */
  private takes(at: number, count: number): boolean {
    const { series, least, most, spare, thin } = this;
    for (let store = 0; store < series.length; store += 1) {
      const flow = series[store]![at] ?? 0;
      if (flow < least[store]!) least[store] = flow;
      if (flow > most[store]!) most[store] = flow;
      const range = most[store]! - least[store]!;
      if (range === 0) continue;
      // A mean is off by no more than a quarter of the range over the whole time.
      if (0.25 * range * count * this.step > spare[store]! && !(thin[store] === 1 && range <= dryShare * most[store]!)) return false;
    }
    return true;
  }
}

const none = (stores: readonly unknown[]): Float64Array[] => stores.map(() => new Float64Array(0));
function strongSteps(model: RoutingModel, inflow: StormInflow, [first, last]: readonly [number, number]): Uint8Array {
  const strong = new Uint8Array(inflow.steps);
  for (const series of [...inflow.ponds, ...(inflow.junctions ?? []), ...(inflow.wells ?? [])]) {
    let most = 0;
    for (let i = first; i < last; i += 1) if (series[i]! > most) most = series[i]!;
    for (let i = first; i < last; i += 1) if (series[i]! > quietShare * most) strong[i] = 1;
  }
  model.basins.forEach((basin, index) => {
    const limit = basin.pump === null ? 0 : pumpShare * basin.pump.flow.flow(basin.onLevel);
    const direct = inflow.basins[index]!;
    for (let i = first; i < last; i += 1) {
      let into = direct[i]!;
      for (const pond of inflow.ponds) into += pond[i]!;
      if (into > limit) strong[i] = 1;
    }
  });
  return strong;
}
