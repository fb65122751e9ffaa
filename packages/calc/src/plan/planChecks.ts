import type { DesignDocument, PlanShape, Position } from '../document/document.ts';
import { isInside, leastDistance, outlineArea, ownCrossing, sidesOf } from './geometry.ts';
import { overlapArea } from './overlap.ts';

/** Something on the plan that cannot be or needs a look, with the place where it is drawn. */
export interface PlanCheck {
  readonly code:
    | 'plan.crossesItself' | 'plan.wallsCross' | 'plan.throughHouse' | 'plan.crossesUtility' | 'plan.inToleranceStrip' | 'plan.countedTwice' | 'plan.outsideLot' | 'plan.tiedToNothing';
  readonly shapes: readonly string[];
  readonly place: Position;
  readonly params: Readonly<Record<string, string | number>>;
}

/** Outlines that share less than this part of the smaller one only touch: edges traced twice by hand. Source: ours. */
const sharedShare = 0.02;
/** A run that reaches this far into a house goes through its footing and is not only drawn up to the wall [m]. Source: ours. */
const wallThickness = 0.3;

const isClosed = (shape: PlanShape): boolean => shape.kind === 'area';
const sides = (shape: PlanShape) => sidesOf(shape.points, isClosed(shape));
const runs = (shapes: readonly PlanShape[]): PlanShape[] => shapes.filter(({ use }) => use === 'pipe' || use === 'drain');

function pairs<T>(list: readonly T[]): (readonly [T, T])[] {
  return list.flatMap((one, i) => list.slice(i + 1).map((other) => [one, other] as const));
}

function selfCrossings(shapes: readonly PlanShape[]): PlanCheck[] {
  return shapes.flatMap((shape): PlanCheck[] => {
    const place = ownCrossing(shape.points, isClosed(shape));
    return place === null ? [] : [{ code: 'plan.crossesItself', shapes: [shape.id], place, params: { name: shape.name } }];
  });
}

function crossedWalls(shapes: readonly PlanShape[]): PlanCheck[] {
  const walls = shapes.filter(({ use }) => use === 'wall' || use === 'house');
  return pairs(walls).flatMap(([one, other]): PlanCheck[] => {
    if (one.use === 'house' && other.use === 'house') return [];
    const met = leastDistance(sides(one), sides(other));
    return met === null || met.distance > 0 ? [] : [{ code: 'plan.wallsCross', shapes: [one.id, other.id], place: met.place, params: { one: one.name, other: other.name } }];
  });
}

/** Deepest place of a run within an outline: its corners and the middles of its sides are looked at. */
function deepest(run: PlanShape, house: PlanShape): { readonly place: Position; readonly depth: number } | null {
  const middles = sides(run).map(([a, b]): Position => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }));
  let most: { readonly place: Position; readonly depth: number } | null = null;
  for (const place of [...run.points, ...middles]) {
    if (!isInside(place, house.points)) continue;
    const depth = leastDistance([[place, place]], sides(house))!.distance;
    if (most === null || depth > most.depth) most = { place, depth };
  }
  return most;
}

function throughHouses(shapes: readonly PlanShape[]): PlanCheck[] {
  const houses = shapes.filter(({ use }) => use === 'house');
  return runs(shapes).flatMap((run) => houses.flatMap((house): PlanCheck[] => {
    const within = deepest(run, house);
    return within === null || within.depth < wallThickness ? [] : [{ code: 'plan.throughHouse', shapes: [run.id, house.id], place: within.place, params: { name: run.name, house: house.name } }];
  }));
}

function inStrips({ site }: DesignDocument, shapes: readonly PlanShape[]): PlanCheck[] {
  const marks = shapes.filter(({ use }) => use === 'utility');
  return runs(shapes).flatMap((run) => marks.flatMap((mark): PlanCheck[] => {
    const tolerance = site.utilities.find(({ id }) => id === mark.of)?.tolerance ?? 0;
    const met = leastDistance(sides(run), sides(mark));
    if (met === null || met.distance > tolerance) return [];
    return [{ code: met.distance === 0 ? 'plan.crossesUtility' : 'plan.inToleranceStrip', shapes: [run.id, mark.id], place: met.place, params: { name: run.name, utility: mark.name, distance: met.distance, tolerance } }];
  }));
}

function countedTwice({ site }: DesignDocument, shapes: readonly PlanShape[]): PlanCheck[] {
  const catchments = new Set(site.catchments.map(({ id }) => id));
  const drawn = shapes.filter(({ kind, of }) => kind === 'area' && of !== null && catchments.has(of));
  return pairs(drawn).flatMap(([one, other]): PlanCheck[] => {
    const area = overlapArea(one.points, other.points);
    if (area <= sharedShare * Math.min(outlineArea(one.points), outlineArea(other.points))) return [];
    const place = one.points.find((point) => isInside(point, other.points)) ?? other.points.find((point) => isInside(point, one.points)) ?? one.points[0]!;
    return [{ code: 'plan.countedTwice', shapes: [one.id, other.id], place, params: { one: one.name, other: other.name, area } }];
  });
}

function outsideLot(shapes: readonly PlanShape[]): PlanCheck[] {
  const lots = shapes.filter(({ use }) => use === 'lot');
  if (lots.length === 0) return [];
  const onLot = (place: Position): boolean => lots.some((lot) => isInside(place, lot.points) || leastDistance([[place, place]], sides(lot))!.distance < wallThickness);
  return runs(shapes).flatMap((run): PlanCheck[] => {
    const place = run.points.find((point) => !onLot(point));
    return place === undefined ? [] : [{ code: 'plan.outsideLot', shapes: [run.id], place, params: { name: run.name } }];
  });
}

function tiedToNothing({ site, system }: DesignDocument, shapes: readonly PlanShape[]): PlanCheck[] {
  const known = new Set([...site.catchments, ...site.sills, ...site.utilities, ...system.parts].map(({ id }) => id));
  return shapes.filter(({ of }) => of !== null && !known.has(of)).map((shape) => ({ code: 'plan.tiedToNothing', shapes: [shape.id], place: shape.points[0]!, params: { name: shape.name, id: shape.of! } }));
}

/**
 * What cannot be on a plan, or needs a look before anybody digs: outlines and walls that cross, a run under a house or within the
 * hand-dig strip of a marked utility, ground counted in two catchments, a run that leaves the lot, shapes tied to what is gone.
 * Source: common practice, no source; the width of a strip is the utility's own
 */
export function planChecks(document: DesignDocument): PlanCheck[] {
  const shapes = document.site.plan?.shapes ?? [];
  return [
    ...selfCrossings(shapes), ...crossedWalls(shapes), ...throughHouses(shapes), ...inStrips(document, shapes), ...countedTwice(document, shapes), ...outsideLot(shapes), ...tiedToNothing(document, shapes),
  ];
}
