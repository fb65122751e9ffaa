import { gradientOf } from './locate.ts';
import type { Ground, Position } from './surface.ts';

/** The way down over a triangle, drawn from its center: a direction of length 1 and the slope along it [-]. */
export interface FlowArrow { readonly from: Position; readonly direction: Position; readonly slope: number }

/**
 * Arrows straight down the slope, one for each triangle; none on level ground.
 *
 * @param ground from triangulateSurface
 * Source: geometry; the fall line of a plane
 */
export function flowArrows(ground: Ground): FlowArrow[] {
  const { x, y, triangles } = ground;
  const arrows: FlowArrow[] = [];
  for (let face = 0; 3 * face < triangles.length; face += 1) {
    const rise = gradientOf(ground, face);
    const slope = Math.sqrt(rise.x * rise.x + rise.y * rise.y);
    if (slope === 0) continue;
    const [a, b, c] = [triangles[3 * face]!, triangles[3 * face + 1]!, triangles[3 * face + 2]!];
    arrows.push({ from: { x: (x[a]! + x[b]! + x[c]!) / 3, y: (y[a]! + y[b]! + y[c]!) / 3 }, direction: { x: -rise.x / slope, y: -rise.y / slope }, slope });
  }
  return arrows;
}
