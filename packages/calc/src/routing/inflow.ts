import type { DesignDocument, Gutter, Part } from '../document/document.ts';
import { eavesGutterCapacity } from '../gutter/eavesGutter.ts';
import { leaderCapacity } from '../gutter/verticalLeader.ts';
import { groundWaterOf } from './groundWater.ts';
import type { StorePlace } from './model.ts';
import { partById, partsOf } from './pathParts.ts';
import type { StormInflow } from './run.ts';
import type { StormRunoff } from './storm.ts';
import { junctionsOf, reach } from './waterways.ts';

/** What the rain falls on: the site without a system, with it, or with every gutter overflowing. */
export type InflowCase = 'bare' | 'system' | 'gutterOverflowing';

/** Flow that one gutter passes to its leaders at most [m3/s]. */
export function gutterCapacity(gutter: Gutter): number {
  return eavesGutterCapacity({ shape: 'rectangular', width: gutter.width, depth: gutter.depth, drainageLength: gutter.length, bendAt: null });
}

/** Flow that the leaders of a gutter carry together at most [m3/s]; no limit when it has none. */
export function gutterLeaderCapacity(document: DesignDocument, gutter: Gutter): number {
  const next = partById(document, gutter.drainsTo);
  return next?.kind === 'leader' ? next.count * leaderCapacity(next.diameter) : Infinity;
}

/** Where a catchment's water goes, and what of it can go elsewhere. Indices, -1 for none. */
export interface Route {
  /** Store that takes it; null when it leaves the site. `pond` and `basin` are its index when it is one. */
  readonly to: StorePlace | null;
  readonly pond: number;
  readonly basin: number;
  /** Most that the route takes; the excess goes to `excessPond`. */
  readonly capacity: number;
  readonly excessPond: number;
  /** Routes with one gutter share its capacity. */
  readonly gutter: string | null;
}

function route(to: StorePlace | null): Route {
  return { to, pond: to?.kind === 'pond' ? to.index : -1, basin: to?.kind === 'basin' ? to.index : -1, capacity: Infinity, excessPond: -1, gutter: null };
}

const pondOf = (document: DesignDocument, id: string): StorePlace => ({ kind: 'pond', index: document.site.lowSpots.findIndex((spot) => spot.id === id) });

/** The store that water in a part comes to: the first junction, basin or dry well on its way; null when it leaves the site. */
export function storeBelow(document: DesignDocument): (partId: string) => StorePlace | null {
  const junctions = junctionsOf(document);
  const basins = partsOf(document, 'basin');
  const wells = partsOf(document, 'outlet').filter(({ dryWell }) => dryWell !== null);
  return (partId) => {
    const { end } = reach(document, partId, junctions);
    if (end === null) return null;
    const lists = [['junction', junctions], ['basin', basins], ['well', wells]] as const;
    for (const [kind, list] of lists) {
      const index = list.findIndex(({ id }) => id === end.id);
      if (index >= 0) return { kind, index };
    }
    return null;
  };
}

function routeOfPart(document: DesignDocument, part: Part, inflowCase: InflowCase, below: (partId: string) => StorePlace | null): Route {
  if (part.kind === 'channel' || part.kind === 'catchBasin') return route(pondOf(document, part.lowSpot));
  if (part.kind !== 'gutter') return route(inflowCase === 'bare' ? null : below(part.id));
  const under = pondOf(document, part.overflowsTo);
  if (inflowCase !== 'system') return route(under);
  const capacity = Math.min(gutterCapacity(part), gutterLeaderCapacity(document, part));
  return { ...route(below(part.id)), capacity, excessPond: under.index, gutter: part.id };
}

/** Routes of all catchments, in the order of the document. */
export function routesOf(document: DesignDocument, inflowCase: InflowCase): Route[] {
  const below = storeBelow(document);
  return document.site.catchments.map(({ drainsTo }) => {
    if (drainsTo.kind === 'offSite') return route(null);
    if (drainsTo.kind === 'lowSpot') return route(pondOf(document, drainsTo.id));
    const part = partById(document, drainsTo.id);
    return part === undefined ? route(null) : routeOfPart(document, part, inflowCase, below);
  });
}

/** Stores that can take water, with the steady ground water of each that is not a low spot [m3/s]. */
export interface InflowTargets {
  readonly ponds: number;
  readonly junctions: readonly number[];
  readonly wells: readonly number[];
  readonly basins: readonly number[];
}

export function inflowTargets(document: DesignDocument, inflowCase: InflowCase): InflowTargets {
  const ponds = document.site.lowSpots.length;
  if (inflowCase === 'bare') return { ponds, junctions: [], wells: [], basins: [] };
  const below = storeBelow(document);
  const ground = (kind: StorePlace['kind'], parts: readonly Part[]): number[] => parts.map((_, index) => groundWaterOf(document, below, kind, index));
  return {
    ponds, junctions: ground('junction', junctionsOf(document)), basins: ground('basin', partsOf(document, 'basin')),
    wells: ground('well', partsOf(document, 'outlet').filter(({ dryWell }) => dryWell !== null)),
  };
}

/**
 * Inflow of every store in a storm.
 * What a gutter and its leaders cannot carry lands on the low spot below the eave.
 */
export function stormInflow(document: DesignDocument, storm: StormRunoff, inflowCase: InflowCase): Required<StormInflow> {
  return buildInflow(routesOf(document, inflowCase), inflowTargets(document, inflowCase), storm, null);
}

/**
 * @param factors multiplies the runoff of each catchment, for the band; null for none
 * @param window  steps that are filled; the others stay as they are
 * @param into    inflow to fill again, from an earlier call with the same routes
 */
export function buildInflow(
  routes: readonly Route[], targets: InflowTargets, storm: StormRunoff, factors: readonly number[] | null,
  window: readonly [number, number] = [0, storm.steps], into: Required<StormInflow> | null = null,
): Required<StormInflow> {
  const { steps } = storm;
  const fresh = (count: number): Float64Array[] => Array.from({ length: count }, () => new Float64Array(steps));
  const inflow: Required<StormInflow> = into ?? {
    step: storm.step, steps, ponds: fresh(targets.ponds), junctions: fresh(targets.junctions.length), wells: fresh(targets.wells.length),
    basins: fresh(targets.basins.length),
  };
  const [first, last] = window;
  for (const flows of inflow.ponds) flows.fill(0, first, last);
  for (const kind of ['junctions', 'wells', 'basins'] as const) inflow[kind].forEach((flows, index) => { flows.fill(targets[kind][index]!, first, last); });
  for (const group of groupRoutes(routes)) addGroup(inflow, group, storm, factors, first, last);
  return inflow;
}

function seriesOf(inflow: Required<StormInflow>, to: StorePlace | null): Float64Array | undefined {
  if (to === null) return undefined;
  const lists = { pond: inflow.ponds, junction: inflow.junctions, well: inflow.wells, basin: inflow.basins } as const;
  return lists[to.kind][to.index];
}

function addGroup(inflow: Required<StormInflow>, group: Group, storm: StormRunoff, factors: readonly number[] | null, first: number, last: number): void {
  const [main] = group.routes;
  const take = seriesOf(inflow, main!.to);
  const excess = inflow.ponds[main!.excessPond];
  const { capacity } = main!;
  if (take === undefined && excess === undefined) return;
  const runoffs = group.indices.map((index) => storm.runoff[index]!);
  const shares = group.indices.map((index) => (factors === null ? 1 : factors[index]!));
  for (let i = first; i < last; i += 1) {
    let flow = 0;
    for (let k = 0; k < runoffs.length; k += 1) flow += runoffs[k]![i]! * shares[k]!;
    const carried = flow < capacity ? flow : capacity;
    if (take !== undefined) take[i] = take[i]! + carried;
    if (excess !== undefined && flow > carried) excess[i] = excess[i]! + flow - carried;
  }
}

interface Group {
  readonly indices: number[];
  readonly routes: Route[];
}

const groupsOf = new WeakMap<readonly Route[], Group[]>();

/** Catchments of one gutter are taken together; every other one stands alone. */
function groupRoutes(routes: readonly Route[]): Group[] {
  const known = groupsOf.get(routes);
  if (known !== undefined) return known;
  const groups = new Map<string, Group>();
  routes.forEach((route, index) => {
    const key = route.gutter ?? `#${index}`;
    const group = groups.get(key) ?? { indices: [], routes: [] };
    group.indices.push(index);
    group.routes.push(route);
    groups.set(key, group);
  });
  const made = [...groups.values()];
  groupsOf.set(routes, made);
  return made;
}
