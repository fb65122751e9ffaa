import type { LevelTable } from './levelTable.ts';
import { ConduitFlux, type Flux, LinkFlux, LossFlux, PumpFlux, SeepageFlux, WeirFlux } from './fluxes.ts';
import type { RoutingModel, StorePlace } from './model.ts';

/** The stores of a model in one row, ponds first, and the fluxes between them. */
export interface Layout {
  readonly count: number;
  readonly ids: readonly string[];
  readonly tables: readonly LevelTable[];
  readonly firstJunction: number;
  readonly firstWell: number;
  readonly firstBasin: number;
  readonly fluxes: readonly Flux[];
  /** Pump fluxes of each basin, in the order of its lines, and their places among all fluxes. */
  readonly pumps: readonly (readonly PumpFlux[])[];
  readonly pumpPlaces: readonly (readonly number[])[];
}

export function layoutOf(model: RoutingModel): Layout {
  const { ponds, junctions, wells, basins } = model;
  const firstJunction = ponds.length;
  const firstWell = firstJunction + junctions.length;
  const firstBasin = firstWell + wells.length;
  const starts = { pond: 0, junction: firstJunction, well: firstWell, basin: firstBasin } as const;
  const number = (place: StorePlace | null): number => (place === null ? -1 : starts[place.kind] + place.index);
  const pumps = basins.map((basin, index) => basin.lines.map((line) =>
    new PumpFlux(line, firstBasin + index, line.well < 0 ? -1 : firstWell + line.well)));
  const fluxes: Flux[] = [];
  ponds.forEach((pond, index) => {
    if (pond.loss > 0) fluxes.push(new LossFlux(pond.id, index, pond.loss));
    fluxes.push(new WeirFlux('spill', pond.id, [index, pond.spillsTo], pond.rimLevel, pond.spillWidth));
  });
  for (const link of model.links) fluxes.push(new LinkFlux(link, link.pond, number(link.to)));
  for (const conduit of model.conduits) fluxes.push(new ConduitFlux(conduit, firstJunction + conduit.junction, number(conduit.to)));
  wells.forEach((well, index) => {
    const store = firstWell + index;
    fluxes.push(new SeepageFlux(well, store));
    fluxes.push(new WeirFlux('overflow', well.id, [store, well.overflowsTo], well.crestLevel, well.crestEdge, well.returns?.pond, well.returns?.share));
  });
  basins.forEach((basin, index) => {
    fluxes.push(new WeirFlux('lid', basin.id, [firstBasin + index, basin.lidTo], basin.lidLevel, basin.lidEdge));
  });
  fluxes.push(...pumps.flat());
  const pumpPlaces = pumps.map((own) => own.map((flux) => fluxes.indexOf(flux)));
  const all = [...ponds, ...junctions, ...wells, ...basins];
  return { count: all.length, ids: all.map(({ id }) => id), tables: all.map(({ storage }) => storage), firstJunction, firstWell, firstBasin, fluxes, pumps, pumpPlaces };
}
