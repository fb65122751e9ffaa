import type { Returns } from '../routing/model.ts';
import { FlowTable, LevelTable } from '../routing/levelTable.ts';
import type { BasinStore, Conduit, JunctionStore, LineStore, Link, PondStore, PumpUnit, RoutingModel, WellStore } from '../routing/model.ts';

/**
 * Stores with upright walls and pumps of constant flow, to be followed by hand: whoever writes an example says only what it is about.
 * Nothing here comes from a document.
 */
export const prism = (bottom: number, top: number, area: number): LevelTable => LevelTable.tabulate(bottom, top, 8, (level) => area * (level - bottom));

/** A flow that is the same at every head. */
export const steady = (flow: number): FlowTable => FlowTable.tabulate(-100, 100, 1, () => flow);

/** 100 m2 from level 0 on, its rim out of reach at 10 m. */
export const pondStore = (fields: Partial<PondStore> = {}): PondStore =>
  ({ id: 'L1', storage: prism(0, 1, 100), rimLevel: 10, spillWidth: 1, spillsTo: -1, loss: 0, ...fields });

export const junctionStore = (fields: Partial<JunctionStore> = {}): JunctionStore => ({ id: 'J1', storage: prism(-1, 1, 1), ...fields });

/** 10 m2 of soaking base 2 m down, its stone 1 m high with a third of voids, its crest out of reach. */
export const dryWell = (fields: Partial<WellStore> = {}): WellStore => ({
  id: 'O1', storage: prism(-2, 1, 4), area: 10, perimeter: 14, topLevel: -1, rate: 1e-5, crestLevel: 10, crestEdge: 1, overflowsTo: -1, returns: null, ...fields,
});

export const pumpUnit = (fields: Partial<PumpUnit> = {}): PumpUnit => ({ id: 'M1', startLevel: -1, battery: false, energy: Infinity, inputPower: 0, ...fields });

/** A line that is full behind its check valve, with one pump of 0.002 m3/s, or as many as are said. */
export function lineStore(fields: Partial<LineStore> = {}, each = 0.002): LineStore {
  const known = new Map<number, FlowTable>();
  const flow = (mask: number): FlowTable => {
    let pumps = 0;
    for (let left = mask; left > 0; left = Math.floor(left / 2)) pumps += left % 2;
    const table = known.get(mask) ?? steady(each * pumps);
    known.set(mask, table);
    return table;
  };
  return { id: 'D1', units: [0], liftLevel: 3, well: -1, returns: null, volume: 0.05, runBack: 0, flow, filling: flow, ...fields };
}

/** 1 m2 from 2 m down, off at -1.5 and on at -1, its lid out of reach; one pump on one line. */
export const basinStore = (fields: Partial<BasinStore> = {}): BasinStore => ({
  id: 'B1', storage: prism(-2, 1, 1), offLevel: -1.5, onLevel: -1, lidLevel: 10, lidEdge: 3, lidTo: -1, pump: null, units: [pumpUnit()], lines: [lineStore()], ...fields,
});

/** A grate flush with level 0 that lets everything through; a pipe that falls free at -1 and loses 1 m at 0.01 m3/s. */
export const linkOf = (fields: Partial<Link> = {}): Link => ({
  id: 'CH1', pond: 0, basin: -1, to: null, returns: null, grateLevel: 0, grateWeir: 1000, grateOrifice: 1000, mouthLevel: -0.5, mouthOrifice: null, resistance: 1e4, freeLevel: -1,
  ...fields,
});

/** A pipe of 100 mm that falls free, 1 m down. */
export const conduitOf = (fields: Partial<Conduit> = {}): Conduit => ({
  id: 'J1', junction: 0, entrance: 'joint', to: null, returns: null, diameterUp: 0.1, invertUp: -1, diameterDown: 0.1, invertDown: -1.2, resistance: 1e4, standing: -Infinity, ...fields,
});

export const stores = (fields: Partial<RoutingModel>): RoutingModel => ({ ponds: [], basins: [], junctions: [], wells: [], links: [], conduits: [], ...fields });

export const backTo = (pond: number, share: number): Returns => ({ pond, share });
