import { CalcProblem } from '../common/problem.ts';
import { flood } from './flood.ts';
import type { Flood, Hollow } from './flood.ts';
import { neighborsOf } from './neighbors.ts';
import type { Neighbors } from './neighbors.ts';
import { stageAt } from './stage.ts';
import type { Position, Spot, Ground } from './surface.ts';

/** A hollow of the ground in which water stands before it goes on. */
export interface GroundLowSpot {
  /** Place in the list of low spots. */
  readonly index: number;
  readonly bottom: Spot;
  readonly bottomVertex: number;
  /** Level at which it spills [m]; null when walls hold the water and nothing leaves. */
  readonly spillLevel: number | null;
  readonly spillPoint: Position | null;
  /** Highest level for which its water is known [m]: the spill level, or the highest ground in it. */
  readonly topLevel: number;
  /** Low spot that the spilled water reaches first; null when it leaves the ground or nothing leaves. */
  readonly spillsTo: number | null;
  /** The low spot that this one becomes part of when its neighbor is full too. */
  readonly parent: number | null;
  /** The low spots within it, by twos or more; none for a simple one. */
  readonly children: readonly number[];
  /** Triangles over which its water stands. */
  readonly faces: readonly number[];
  /** Water surface [m2] and volume [m3] at the top level. */
  readonly area: number;
  readonly volume: number;
}

/** Where the water of the ground goes. */
export interface Drainage {
  readonly lowSpots: readonly GroundLowSpot[];
  readonly neighbors: Neighbors;
  readonly flood: Flood;
  /** For the lowest vertex of each simple low spot its number. */
  readonly lowSpotAt: ReadonlyMap<number, number>;
  /** For the lowest vertex of each hollow that is too shallow to count, the hollow. */
  readonly shallowAt: ReadonlyMap<number, Hollow>;
  /** For each vertex the simple low spot that it drains to along the edges; -1 off the ground. */
  readonly drainsTo: Int32Array;
}

/** Hollows less deep than one hundredth of a foot are within the reading of a rod; ours. */
export const LEAST_LOW_SPOT_DEPTH = 0.003048;

function kept(hollows: readonly Hollow[], index: number): number {
  let at = index;
  while (at >= 0 && hollows[at]!.partOf !== null) at = hollows[at]!.partOf!;
  return at;
}

/** For each vertex the simple low spot that water from it reaches; earlier vertices are known when later ones ask. */
function drains(made: Flood): Int32Array {
  const { rank, down, hollows } = made;
  const goal = new Int32Array(rank.length).fill(-1);
  const order = [...rank.keys()].sort((p, q) => rank[p]! - rank[q]!);
  const pitOf = new Int32Array(rank.length);
  for (const v of order) pitOf[v] = down[v]! < 0 ? v : pitOf[down[v]!]!;
  const ofPit = new Map<number, number>();
  hollows.forEach((hollow, i) => { if (hollow.children.length === 0) ofPit.set(hollow.pit, i); });
  const resolve = (start: number): number => {
    for (let pit = pitOf[start]!; ; ) {
      const i = ofPit.get(pit);
      if (i === undefined) return -1;
      const hollow = hollows[i]!;
      if (hollow.partOf === null) return i;
      if (hollow.over === null) return -1;
      pit = pitOf[hollow.over]!;
    }
  };
  for (const v of order) goal[v] = resolve(v);
  return goal;
}

/** Triangles by the hollow that their lowest vertex was flooded with. */
function facesByHollow(surface: Ground, made: Flood): Map<number, number[]> {
  const found = new Map<number, number[]>();
  const { triangles } = surface;
  for (let face = 0; 3 * face < triangles.length; face += 1) {
    const corners = [triangles[3 * face]!, triangles[3 * face + 1]!, triangles[3 * face + 2]!];
    const lowest = corners.reduce((best, v) => (made.rank[v]! < made.rank[best]! ? v : best));
    const hollow = kept(made.hollows, made.hollowOf[lowest]!);
    const list = found.get(hollow);
    if (list) list.push(face);
    else found.set(hollow, [face]);
  }
  return found;
}

function describe(surface: Ground, hollow: Hollow, faces: readonly number[]): Pick<GroundLowSpot, 'bottom' | 'bottomVertex' | 'spillLevel' | 'spillPoint' | 'topLevel' | 'area' | 'volume'> {
  const { x, y, level, triangles } = surface;
  const { pit, saddle } = hollow;
  const spillLevel = saddle === null ? null : level[saddle]!;
  const topLevel = spillLevel ?? faces.reduce((top, face) => Math.max(top, level[triangles[3 * face]!]!, level[triangles[3 * face + 1]!]!, level[triangles[3 * face + 2]!]!), level[pit]!);
  const { area, volume } = stageAt(surface, faces, topLevel);
  return {
    bottom: { x: x[pit]!, y: y[pit]!, level: level[pit]! }, bottomVertex: pit, spillLevel,
    spillPoint: saddle === null ? null : { x: x[saddle]!, y: y[saddle]! }, topLevel, area, volume,
  };
}

/**
 * The low spots of the ground: lowest point, spill level and place, where the spilled water goes, and how low spots
 * join into larger ones. Water does not cross walls and leaves over every open edge.
 *
 * @param least depth below which a hollow does not count [m], zero or more
 * @returns simple low spots and those that they join into, each after its children
 * Errors: surface.badDepth
 * Source: see flood; the water of a triangulated surface spills at a vertex
 * Checked against: a priority flood with a queue on random surveys; hand-made bowls
 */
export function findLowSpots(surface: Ground, least: number = LEAST_LOW_SPOT_DEPTH): Drainage {
  if (!(least >= 0) || !Number.isFinite(least)) throw new CalcProblem('surface.badDepth', 'least', { value: String(least) });
  const neighbors = neighborsOf(surface);
  const made = flood(surface, neighbors, least);
  const goal = drains(made);
  const index = new Map<number, number>();
  made.hollows.forEach((hollow, i) => { if (hollow.partOf === null) index.set(i, index.size); });
  const numberOf = (hollow: number | null): number | null => index.get(hollow ?? -1) ?? null;
  const own = facesByHollow(surface, made);
  const faces: number[][] = [];
  const lowSpots: GroundLowSpot[] = [];
  for (const [i, number] of index) {
    const hollow = made.hollows[i]!;
    const children = hollow.children.map((child) => index.get(child)!);
    faces[number] = [...(own.get(i) ?? []), ...children.flatMap((child) => faces[child]!)];
    const over = hollow.over === null ? null : goal[hollow.over]!;
    lowSpots.push({ index: number, ...describe(surface, hollow, faces[number]), spillsTo: numberOf(over), parent: numberOf(hollow.parent), children, faces: faces[number] });
  }
  const lowSpotAt = new Map<number, number>();
  for (const spot of lowSpots) if (spot.children.length === 0) lowSpotAt.set(spot.bottomVertex, spot.index);
  const shallowAt = new Map<number, Hollow>();
  for (const hollow of made.hollows) if (hollow.partOf !== null) shallowAt.set(hollow.pit, hollow);
  return { lowSpots, neighbors, flood: made, lowSpotAt, shallowAt, drainsTo: goal.map((hollow) => numberOf(hollow) ?? -1) };
}
