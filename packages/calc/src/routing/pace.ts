import type { StormInflow } from './run.ts';
import type { RoutingModel } from './model.ts';

/** Grid steps taken together in quiet hours, with water standing and without. Source: ours, see the test against an independent integration. */
const calmSteps = 5;
const drySteps = 15;
/** Levels that move by less than this in a minute are calm [m]. */
const calmRise = 1e-4;
/** Share of the strongest inflow under which an hour is quiet, and share of a pump's flow that it keeps up with. Source: ours. */
const quietShare = 0.1;
const pumpShare = 0.8;
/** Water thinner than this is no pond [m]. */
const wetDepth = 1e-3;

/**
 * Which steps of the grid a run takes together: quiet minutes up to a quarter of an hour, none while rain is strong or levels move.
 * Together they have their mean inflow, so no water is lost.
 */
export class Pace {
  private readonly strong: Uint8Array;

  constructor(model: RoutingModel, inflow: StormInflow, window: readonly [number, number]) {
    this.strong = strongSteps(model, inflow, window);
  }

  /** Grid steps to take together from step `i` on, not beyond `end`. */
  together(i: number, end: number, rise: number, depth: number): number {
    if (this.strong[i] === 1 || rise > calmRise) return 1;
    const most = Math.min(end - i, depth > wetDepth ? calmSteps : drySteps);
    let count = 1;
    while (count < most && this.strong[i + count] === 0) count += 1;
    return count;
  }
}

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
