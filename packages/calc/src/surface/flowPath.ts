import { CalcProblem } from '../common/problem.ts';
import { atVertex, lowestCorner, stepFromFace, stepFromVertex } from './descent.ts';
import type { Drop } from './descent.ts';
import { faceAt } from './locate.ts';
import type { Drainage } from './lowSpots.ts';
import type { Position, Ground } from './surface.ts';

/** The way of water over the ground, and the simple low spot where it ends; null when it leaves the ground. */
export interface FlowPath { readonly points: readonly Position[]; readonly lowSpot: number | null }

/** The shortest way over the edges (fewest of them) through shallow water from its lowest vertex to where it spills. */
function throughWater(surface: Ground, drainage: Drainage, pit: number, saddle: number): number[] {
  const { rank } = drainage.flood;
  const cameFrom = new Map<number, number>([[pit, pit]]);
  const waiting = [pit];
  for (let k = 0; k < waiting.length && !cameFrom.has(saddle); k += 1) {
    for (const next of drainage.neighbors.of[waiting[k]!]!) {
      if (cameFrom.has(next) || rank[next]! > rank[saddle]!) continue;
      cameFrom.set(next, waiting[k]!);
      waiting.push(next);
    }
  }
  const way: number[] = [];
  for (let v = saddle; v !== pit; v = cameFrom.get(v)!) way.push(v);
  return way.reverse();
}

/** From a lowest vertex: the end of the way, or across shallow water and over its rim. */
function fromPit(surface: Ground, drainage: Drainage, pit: number): { readonly end: number | null } | { readonly way: readonly Drop[] } {
  const lowSpot = drainage.lowSpotAt.get(pit);
  if (lowSpot !== undefined) return { end: lowSpot };
  const hollow = drainage.shallowAt.get(pit);
  if (hollow === undefined || hollow.saddle === null) return { end: null };
  const way = throughWater(surface, drainage, pit, hollow.saddle);
  if (hollow.over !== null) way.push(hollow.over);
  const drops = way.map((v) => atVertex(surface, v));
  const last = drops[drops.length - 1]!;
  return { way: hollow.over === null ? [...drops, { at: 'off', place: last.place }] : drops };
}

/**
 * Follows water down from a drop. Where it ends from a vertex is kept in `known`, and a way that comes to a known vertex
 * stops there.
 * After as many steps as there are triangles, or at a shallow hollow that it has crossed before, it goes on along the
 * edges only: those ways always end, whatever the rounding.
 */
export function descend(surface: Ground, drainage: Drainage, start: Drop, known: Map<number, number | null>): FlowPath {
  const points: Position[] = [start.place];
  const passed: number[] = [];
  const crossed = new Set<number>();
  let drop = start;
  let careful = false;
  const finish = (lowSpot: number | null): FlowPath => {
    for (const vertex of passed) known.set(vertex, lowSpot);
    return { points, lowSpot };
  };
  for (let steps = 0; drop.at !== 'off'; steps += 1) {
    careful ||= steps > surface.triangles.length;
    let way: readonly Drop[];
    if (drop.at === 'face') way = careful ? [atVertex(surface, lowestCorner(surface, drainage, drop.face))] : stepFromFace(surface, drainage, drop);
    else {
      const { vertex } = drop;
      const found = known.get(vertex);
      if (found !== undefined) return finish(found);
      passed.push(vertex);
      const down = drainage.flood.down[vertex]!;
      const next = careful && down >= 0 ? atVertex(surface, down) : stepFromVertex(surface, drainage, vertex);
      if (next) way = [next];
      else {
        const pit = fromPit(surface, drainage, vertex);
        if ('end' in pit) return finish(pit.end);
        careful ||= crossed.has(vertex);
        crossed.add(vertex);
        way = pit.way;
      }
    }
    for (const next of way) {
      const last = points[points.length - 1]!;
      if (next.place.x !== last.x || next.place.y !== last.y) points.push(next.place);
      drop = next;
    }
  }
  return finish(null);
}

/**
 * The way of water from a place, always straight down the steepest slope: over edges, along valleys and walls, across
 * level ground and hollows too shallow to count, to a low spot or off the ground.
 *
 * @param place on the ground [m]
 * @param drainage from findLowSpots for the same surface
 * Errors: surface.offGround
 * Source: geometry; steepest descent of a surface of plane triangles
 * Checked against: hand-made slopes, a valley, a wall; the ends agree with the catchments
 */
export function flowPath(surface: Ground, drainage: Drainage, place: Position): FlowPath {
  const face = faceAt(surface, place);
  if (face < 0) throw new CalcProblem('surface.offGround', 'place', { x: place.x, y: place.y });
  return descend(surface, drainage, { at: 'face', face, place }, new Map());
}
