import { CalcProblem } from '../common/problem.ts';
import { planeLevel } from './locate.ts';
import type { Position, Spot, Ground } from './surface.ts';

/** A place on a section: distance along its line, and level of the ground [m]. */
export interface ProfilePoint extends Spot { readonly station: number }

interface Piece { readonly start: number; readonly end: number; readonly face: number }

/** Pieces shorter than this are corners that the line only touches [m]. */
const LEAST_PIECE = 1e-9;

/** Shares of the way from a to b that lie over a triangle; null when it does not cross it. */
function overFace(surface: Ground, face: number, a: Position, b: Position, length: number): Piece | null {
  const { x, y, triangles } = surface;
  let start = 0;
  let end = 1;
  for (let k = 0; k < 3; k += 1) {
    const p = triangles[3 * face + k]!;
    const q = triangles[3 * face + ((k + 1) % 3)]!;
    const inside = (place: Position): number => (x[q]! - x[p]!) * (place.y - y[p]!) - (y[q]! - y[p]!) * (place.x - x[p]!);
    const [from, to] = [inside(a), inside(b)];
    if (from < 0 && to < 0) return null;
    if (from < 0) start = Math.max(start, from / (from - to));
    else if (to < 0) end = Math.min(end, from / (from - to));
  }
  return (end - start) * length > LEAST_PIECE ? { start, end, face } : null;
}

/** The ground under one straight piece of the line; a new stretch begins wherever there is a gap. */
function along(surface: Ground, a: Position, b: Position, station: number, stretches: ProfilePoint[][]): number {
  const length = Math.sqrt((b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y));
  const pieces: Piece[] = [];
  for (let face = 0; length > 0 && 3 * face < surface.triangles.length; face += 1) {
    const piece = overFace(surface, face, a, b, length);
    if (piece) pieces.push(piece);
  }
  pieces.sort((p, q) => p.start - q.start);
  let reached = -1;
  for (const { start, end, face } of pieces) {
    if ((end - reached) * length <= LEAST_PIECE) continue; // the line runs along an edge: one side is enough
    const point = (share: number): ProfilePoint => {
      const place = { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) };
      return { station: station + share * length, ...place, level: planeLevel(surface, face, place) };
    };
    const stretch = stretches[stretches.length - 1];
    const last = stretch?.[stretch.length - 1];
    const first = point(start);
    if (!stretch || !last || first.station - last.station > LEAST_PIECE) stretches.push([first, point(end)]);
    else if (Math.abs(first.level - last.level) > LEAST_PIECE) stretch.push(first, point(end)); // a wall with a step
    else stretch.push(point(end));
    reached = end;
  }
  return station + length;
}

/**
 * Levels of the ground along a line for a section: at its corners and wherever it crosses an edge of a triangle.
 *
 * @param line two places or more [m]
 * @returns stretches over the ground, each with rising stations; a step at a wall is two points at one station. None
 * where the line runs off the ground
 * Errors: surface.lineTooShort, surface.notFinite
 * Source: geometry
 */
export function groundProfile(surface: Ground, line: readonly Position[]): ProfilePoint[][] {
  if (line.length < 2) throw new CalcProblem('surface.lineTooShort', 'line', { count: line.length, least: 2 });
  line.forEach((place, i) => {
    if (!Number.isFinite(place.x) || !Number.isFinite(place.y)) throw new CalcProblem('surface.notFinite', `line/${i}`, { value: `${place.x} ${place.y}` });
  });
  const stretches: ProfilePoint[][] = [];
  let station = 0;
  line.forEach((place, i) => {
    const before = line[i - 1];
    if (before) station = along(surface, before, place, station, stretches);
  });
  return stretches;
}
