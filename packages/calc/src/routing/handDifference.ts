import type { DesignDocument } from '../document/document.ts';
import { dutyFlow } from '../evaluate/pumpedParts.ts';
import type { HandDifference } from '../results/handDifference.ts';
import { buildModel } from './buildModel.ts';
import { handModel, handStore, type HandModel } from './handModel.ts';
import { stormInflow } from './inflow.ts';
import { partsOf } from './pathParts.ts';
import type { RoutingModel } from './model.ts';
import { runStorm, type StormInflow } from './run.ts';
import { designBlocks, stormRunoff } from './storm.ts';

/** Hand model of a design: first low spot, first sill, first basin. Null without all three. */
export function handModelOf(document: DesignDocument, returnPeriod: number): HandModel | null {
  const lowSpot = document.site.lowSpots[0];
  const sill = document.site.sills.find((item) => item.lowSpot === lowSpot?.id);
  const basin = partsOf(document, 'basin')[0];
  if (lowSpot === undefined || sill === undefined || basin === undefined) return null;
  const { storm } = document.rain;
  const runoffArea = document.site.catchments
    .filter(({ drainsTo }) => drainsTo.kind === 'lowSpot' && drainsTo.id === lowSpot.id)
    .reduce((sum, { area, coefficient }) => sum + area * coefficient, 0);
  return {
    lowSpot, sillLevel: sill.level, runoffArea, pumpFlow: dutyFlow(document, basin), store: handStore,
    blocks: designBlocks(document, returnPeriod), block: storm.block,
  };
}

/** What an evaluation has already: its model, and the highest level of a low spot in the real run. */
export interface KnownRuns {
  readonly stores: RoutingModel;
  readonly coupled: (pond: number) => number;
}

/** Why the coupled model differs from the hand calculation, one cause at a time. Null without a pumped basin. */
export function explainHandDifference(document: DesignDocument, returnPeriod: number, known: KnownRuns | null = null): HandDifference | null {
  const model = handModelOf(document, returnPeriod);
  if (model === null) return null;
  const stores = known?.stores ?? buildModel(document);
  const basin = stores.basins[0]!;
  const lowest = model.lowSpot.stageArea[0]!.level;
  const store = basin.storage.volume(lowest) - basin.storage.volume(basin.onLevel);
  const hand = handModel(model).freeboard;
  const withStore = handModel({ ...model, store }).freeboard;
  const pond = 0;
  const inflow = (instantaneous: boolean): StormInflow => stormInflow(document, stormRunoff(document, returnPeriod, { instantaneous }), 'system');
  const quick = inflow(true);
  const freeboard = (mode: 'real' | 'onTwin', storm: StormInflow): number => model.sillLevel - runStorm(stores, storm, { mode }).maxPond[pond]!;
  const twin = freeboard('onTwin', quick);
  const real = freeboard('real', quick);
  const coupled = known === null ? freeboard('real', inflow(false)) : model.sillLevel - known.coupled(pond);
  return { returnPeriod, hand, store: withStore - hand, pumpHead: twin - withStore, phase: real - twin, response: coupled - real, coupled };
}
