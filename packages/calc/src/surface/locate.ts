import { SURFACE_LIMITS } from './surface.ts';
import type { Ground, Position } from './surface.ts';

/** How far a place lies within a triangle, from its nearest edge [m]; below zero outside. */
function depthWithin({ x, y, triangles }: Ground, face: number, place: Position): number {
  let least = Infinity;
  for (let k = 0; k < 3; k += 1) {
    const a = triangles[3 * face + k]!;
    const b = triangles[3 * face + ((k + 1) % 3)]!;
    const [ux, uy] = [x[b]! - x[a]!, y[b]! - y[a]!];
    least = Math.min(least, (ux * (place.y - y[a]!) - uy * (place.x - x[a]!)) / Math.sqrt(ux * ux + uy * uy));
  }
  return least;
}

/** The triangle over a place, the first one where it lies on an edge; a place within 0.1 mm of the ground counts as on it; -1 off the ground. */
export function faceAt(ground: Ground, place: Position): number {
  let best = -1;
  let deepest: number = -SURFACE_LIMITS.samePlace;
  for (let face = 0; 3 * face < ground.triangles.length; face += 1) {
    const depth = depthWithin(ground, face, place);
    if (depth > 0) return face;
    if (depth > deepest) [best, deepest] = [face, depth];
  }
  return best;
}

/** Rise of a triangle in x and y [-]. */
export function gradientOf(surface: Ground, face: number): Position {
  const { x, y, level, triangles } = surface;
  const a = triangles[3 * face]!;
  const b = triangles[3 * face + 1]!;
  const c = triangles[3 * face + 2]!;
  const [bx, by, bz] = [x[b]! - x[a]!, y[b]! - y[a]!, level[b]! - level[a]!];
  const [cx, cy, cz] = [x[c]! - x[a]!, y[c]! - y[a]!, level[c]! - level[a]!];
  const twice = bx * cy - by * cx;
  return { x: (bz * cy - cz * by) / twice, y: (bx * cz - cx * bz) / twice };
}

/** Level of a triangle's plane at a place [m], held between its lowest and highest corner. */
export function planeLevel(surface: Ground, face: number, place: Position): number {
  const { x, y, level, triangles } = surface;
  const corners = [triangles[3 * face]!, triangles[3 * face + 1]!, triangles[3 * face + 2]!];
  const at = corners[0]!;
  const gradient = gradientOf(surface, face);
  const value = level[at]! + gradient.x * (place.x - x[at]!) + gradient.y * (place.y - y[at]!);
  const levels = corners.map((v) => level[v]!);
  return Math.min(Math.max(value, Math.min(...levels)), Math.max(...levels));
}

/** Level of the ground at a place [m]; null off the ground. */
export function levelAt(surface: Ground, place: Position): number | null {
  const face = faceAt(surface, place);
  return face < 0 ? null : planeLevel(surface, face, place);
}
