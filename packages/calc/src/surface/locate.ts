import type { Position, Ground } from './surface.ts';
import { turn } from './turn.ts';

/**
 * The triangle over a place, edges counted in; -1 off the ground. On a shared edge the first triangle.
 * Signs are exact.
 */
export function faceAt(surface: Ground, place: Position): number {
  const { triangles } = surface;
  const probe = { x: [place.x, 0, 0], y: [place.y, 0, 0] };
  const leftOf = (a: number, b: number): boolean => {
    probe.x[1] = surface.x[a]!;
    probe.y[1] = surface.y[a]!;
    probe.x[2] = surface.x[b]!;
    probe.y[2] = surface.y[b]!;
    return turn(probe, 1, 2, 0) >= 0;
  };
  for (let face = 0; 3 * face < triangles.length; face += 1) {
    const a = triangles[3 * face]!;
    const b = triangles[3 * face + 1]!;
    const c = triangles[3 * face + 2]!;
    if (leftOf(a, b) && leftOf(b, c) && leftOf(c, a)) return face;
  }
  return -1;
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
