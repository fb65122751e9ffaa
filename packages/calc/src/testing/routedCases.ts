import type { DesignDocument } from '../document/document.ts';
import { buildModel } from '../routing/buildModel.ts';
import { stormInflow } from '../routing/inflow.ts';
import type { RoutingModel } from '../routing/model.ts';
import { runStorm, type RunMode, type RunResult, type StormInflow } from '../routing/run.ts';
import { stormRunoff } from '../routing/storm.ts';
import { seededRandom } from '../math/random.ts';
import { changed, demoSite } from './sites.ts';

/** A document with its stores and what comes into them in its design storm. */
export interface RoutedCase {
  readonly document: DesignDocument;
  readonly model: RoutingModel;
  readonly inflow: StormInflow;
}

export function routedCase(document: DesignDocument): RoutedCase {
  const storm = stormRunoff(document, document.rain.designReturnPeriod);
  return { document, model: buildModel(document), inflow: stormInflow(document, storm, 'system') };
}

/** Pumps whose flow follows from the level alone and a line with a check valve that ends in the open. */
export function isFree({ model }: RoutedCase): boolean {
  return model.basins.every(({ units, lines }) => units.every(({ battery }) => !battery) && lines.every(({ well }) => well < 0));
}

export const isClosed = ({ model }: RoutedCase): boolean => model.basins.every(({ lines }) => lines.every(({ runBack }) => runBack === 0));

const pondSite = demoSite('tern-hollow');

/** The pumped demo yard with sizes drawn from a seed: one low spot, one basin, one pump, a check valve, a free outlet. */
export function drawnYard(seed: number, change: (copy: Parameters<Parameters<typeof changed>[1]>[0]) => void = () => undefined): DesignDocument {
  const random = seededRandom(seed);
  const between = (low: number, high: number): number => low + random() * (high - low);
  return changed(pondSite, (copy) => {
    const hollow = between(0.4, 3);
    for (const stage of copy.site.lowSpots[0]!.stageArea) stage.area *= hollow;
    copy.site.lowSpots[0]!.existingLoss = random() < 0.5 ? 0 : between(0, 3e-4);
    const lawn = between(0, 4);
    const roofOn = random() < 0.5;
    for (const catchment of copy.site.catchments) {
      if (catchment.surface === 'lawn') catchment.area *= lawn;
      if (catchment.surface === 'roof' && roofOn) catchment.drainsTo = { kind: 'lowSpot', id: 'L1' };
    }
    copy.rain.designReturnPeriod = [2, 10, 25, 100][Math.floor(random() * 4)]!;
    const [diameter, work, pipe, clogging, flow] = [between(0.45, 1.2), between(0.12, 0.6), [0.0762, 0.1016, 0.1524][Math.floor(random() * 3)]!, between(0.05, 1), between(0.4, 2.5)];
    for (const part of copy.system.parts) {
      if (part.kind === 'basin') Object.assign(part, { diameter, onLevel: part.offLevel + work, alarmLevel: part.offLevel + work + 0.05 });
      if (part.kind === 'pipe') part.diameter = pipe;
      if (part.kind === 'channel') part.grate.clogging = clogging;
      if (part.kind === 'pump') for (const point of part.curve) point.flow *= flow;
    }
    change(copy);
  });
}

/** The same inflow with each step multiplied by one of the factors in turn, each at least 1. */
export function fuller(inflow: StormInflow, seed: number): StormInflow {
  const random = seededRandom(seed + 77);
  const factors = Array.from({ length: 1 + Math.floor(random() * 40) }, () => 1 + 0.5 * random());
  const more = (list: readonly Float64Array[] | undefined): Float64Array[] => (list ?? []).map((flows) => flows.map((flow, i) => flow * factors[i % factors.length]!));
  return { ...inflow, ponds: more(inflow.ponds), junctions: more(inflow.junctions), wells: more(inflow.wells), basins: more(inflow.basins) };
}

export const routed = ({ model, inflow }: RoutedCase, mode: RunMode, even = false): RunResult => runStorm(model, inflow, { mode, record: even, pace: even ? 'even' : 'fitted' });
