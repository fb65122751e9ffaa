import type { DesignDocument, Gutter, Part } from '../document/document.ts';
import { eavesGutterCapacity } from '../gutter/eavesGutter.ts';
import { leaderCapacity } from '../gutter/verticalLeader.ts';
import { endOf, partById, partsOf, pathFrom } from './pathParts.ts';
import type { StormInflow } from './run.ts';
import type { StormRunoff } from './storm.ts';

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
  readonly pond: number;
  readonly basin: number;
  /** Most that the route takes; the excess goes to `excessPond`. */
  readonly capacity: number;
  readonly excessPond: number;
  /** Routes with one gutter share its capacity. */
  readonly gutter: string | null;
}

function routeOfPart(document: DesignDocument, part: Part, inflowCase: InflowCase): Route {
  const spotIndex = (id: string): number => document.site.lowSpots.findIndex((spot) => spot.id === id);
  const off: Route = { pond: -1, basin: -1, capacity: Infinity, excessPond: -1, gutter: null };
  if (part.kind === 'channel' || part.kind === 'catchBasin') return { ...off, pond: spotIndex(part.lowSpot) };
  const path = pathFrom(document, part.id);
  const catching = path.find((item) => item.kind === 'catchBasin');
  const end = endOf(document, part.id);
  const basin = end?.kind === 'basin' ? partsOf(document, 'basin').findIndex((item) => item.id === end.id) : -1;
  const pond = catching?.kind === 'catchBasin' ? spotIndex(catching.lowSpot) : -1;
  const route: Route = pond >= 0 && inflowCase !== 'bare' ? { ...off, pond } : { ...off, basin };
  if (part.kind !== 'gutter') return inflowCase === 'bare' ? { ...off, pond } : route;
  const excessPond = spotIndex(part.overflowsTo);
  if (inflowCase !== 'system') return { ...off, pond: excessPond };
  const capacity = Math.min(gutterCapacity(part), gutterLeaderCapacity(document, part));
  return { ...route, capacity, excessPond, gutter: part.id };
}

/** Routes of all catchments, in the order of the document. */
export function routesOf(document: DesignDocument, inflowCase: InflowCase): Route[] {
  return document.site.catchments.map(({ drainsTo }) => {
    const none: Route = { pond: -1, basin: -1, capacity: Infinity, excessPond: -1, gutter: null };
    if (drainsTo.kind === 'offSite') return none;
    if (drainsTo.kind === 'lowSpot') return { ...none, pond: document.site.lowSpots.findIndex((spot) => spot.id === drainsTo.id) };
    const part = partById(document, drainsTo.id);
    return part === undefined ? none : routeOfPart(document, part, inflowCase);
  });
}

/** Steady ground water of the underdrains into each basin [m3/s]. */
function groundWater(document: DesignDocument): number[] {
  const basins = partsOf(document, 'basin');
  return basins.map((basin) => partsOf(document, 'underdrain')
    .filter((drain) => endOf(document, drain.id)?.id === basin.id)
    .reduce((sum, drain) => sum + drain.inflowPerLength * drain.length, 0));
}

/**
 * Inflow of every low spot and basin in a storm.
 * What a gutter and its leaders cannot carry lands on the low spot below the eave.
 *
 */
export function stormInflow(document: DesignDocument, storm: StormRunoff, inflowCase: InflowCase): StormInflow {
  return buildInflow(routesOf(document, inflowCase), document.site.lowSpots.length, inflowCase === 'bare' ? [] : groundWater(document), storm, null);
}

/**
 * @param factors multiplies the runoff of each catchment, for the band; null for none
 * @param window  steps that are filled; the others stay as they are
 * @param into    inflow to fill again, from an earlier call with the same routes
 */
export function buildInflow(
  routes: readonly Route[], pondCount: number, ground: readonly number[], storm: StormRunoff, factors: readonly number[] | null,
  window: readonly [number, number] = [0, storm.steps], into: StormInflow | null = null,
): StormInflow {
  const { steps } = storm;
  const ponds = into?.ponds ?? Array.from({ length: pondCount }, () => new Float64Array(steps));
  const basins = into?.basins ?? ground.map(() => new Float64Array(steps));
  for (const flows of ponds) flows.fill(0, window[0], window[1]);
  basins.forEach((flows, index) => { flows.fill(ground[index]!, window[0], window[1]); });
  const groups = groupRoutes(routes);
  for (const group of groups) {
    const [route] = group.routes;
    const take = route!.basin >= 0 ? basins[route!.basin] : ponds[route!.pond];
    const excess = ponds[route!.excessPond];
    for (let i = window[0]; i < window[1]; i += 1) {
      let flow = 0;
      for (const index of group.indices) flow += storm.runoff[index]![i]! * (factors === null ? 1 : factors[index]!);
      const carried = flow < route!.capacity ? flow : route!.capacity;
      if (take !== undefined) take[i] = take[i]! + carried;
      if (excess !== undefined && flow > carried) excess[i] = excess[i]! + flow - carried;
    }
  }
  return { step: storm.step, steps, ponds, basins };
}

interface Group {
  readonly indices: number[];
  readonly routes: Route[];
}

/** Catchments of one gutter are taken together; every other one stands alone. */
function groupRoutes(routes: readonly Route[]): Group[] {
  const groups = new Map<string, Group>();
  routes.forEach((route, index) => {
    const key = route.gutter ?? `#${index}`;
    const group = groups.get(key) ?? { indices: [], routes: [] };
    group.indices.push(index);
    group.routes.push(route);
    groups.set(key, group);
  });
  return [...groups.values()];
}
