import { CalcProblem } from '../common/problem.ts';
import type { Ground } from './surface.ts';
import { planArea } from './triangulate.ts';

/** Water that stands to a level [m]: its surface [m2] and what lies below it [m3]. */
export interface Stage { readonly level: number; readonly area: number; readonly volume: number }

/** A triangle by its corner levels in rising order [m] and its area in plan [m2]. */
export interface Facet { readonly low: number; readonly middle: number; readonly high: number; readonly area: number }

export function facetOf(surface: Ground, face: number): Facet {
  const { level, triangles } = surface;
  const a = level[triangles[3 * face]!]!;
  const b = level[triangles[3 * face + 1]!]!;
  const c = level[triangles[3 * face + 2]!]!;
  const low = Math.min(a, b, c);
  const high = Math.max(a, b, c);
  const middle = Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
  return { low, middle, high, area: planArea(surface, face) };
}

/**
 * Part of a triangle in plan that lies below a level [m2].
 *
 *   low < h <= middle:  A (h - low)^2 / ((middle - low)(high - low))
 *   middle < h < high:  A - A (high - h)^2 / ((high - middle)(high - low))
 *
 * A level triangle counts as soon as the water stands above it.
 * Source: geometry; similar triangles cut off at a corner
 */
export function facetArea(facet: Facet, h: number): number {
  const { low, middle, high, area } = facet;
  if (h <= low) return 0;
  if (h >= high) return area;
  if (h <= middle) return (area * (h - low) * (h - low)) / ((middle - low) * (high - low));
  return area - (area * (high - h) * (high - h)) / ((high - middle) * (high - low));
}

/**
 * Water below a level over a triangle [m3]: the integral of facetArea.
 *
 *   low < h <= middle:  A (h - low)^3 / (3 (middle - low)(high - low))
 *   middle < h < high:  A (h - mean) + A (high - h)^3 / (3 (high - middle)(high - low))
 *   h >= high:          A (h - mean), mean = (low + middle + high)/3
 *
 * Source: geometry; a pyramid cut off at a corner, a prism less a pyramid
 */
export function facetVolume(facet: Facet, h: number): number {
  const { low, middle, high, area } = facet;
  if (h <= low) return 0;
  if (h <= middle && h < high) return (area * (h - low) * (h - low) * (h - low)) / (3 * (middle - low) * (high - low));
  const prism = (area * (h - low + (h - middle) + (h - high))) / 3;
  if (h >= high) return prism;
  return prism + (area * (high - h) * (high - h) * (high - h)) / (3 * (high - middle) * (high - low));
}

/**
 * Water surface and volume over some triangles at rising levels, exactly, in one pass.
 *
 * @param faces numbers of triangles
 * @param levels rising [m]
 * Cost: sorting, and for each level the triangles that its shore runs over
 * Errors: surface.notRising
 * Checked against: volumes of pyramid, wedge, cone-like dish and frustum; polygon clipping and the divergence formula
 */
export function stagesAt(surface: Ground, faces: readonly number[], levels: readonly number[]): Stage[] {
  const facets = faces.map((face) => facetOf(surface, face)).sort((p, q) => p.low - q.low);
  const base = facets[0]?.low ?? 0;
  let next = 0;
  let shore: Facet[] = [];
  // triangles wholly under water: their area, and their area times mean level above the base
  let drowned = 0;
  let moment = 0;
  return levels.map((level, i) => {
    if (!Number.isFinite(level)) throw new CalcProblem('surface.notFinite', `levels/${i}`, { value: String(level) });
    if (i > 0 && level < levels[i - 1]!) throw new CalcProblem('surface.notRising', `levels/${i}`, { level });
    for (let facet = facets[next]; facet !== undefined && facet.low < level; facet = facets[next]) {
      shore.push(facet);
      next += 1;
    }
    let area = 0;
    let volume = 0;
    shore = shore.filter((facet) => {
      if (facet.high <= level) {
        drowned += facet.area;
        moment += (facet.area * (facet.low - base + (facet.middle - base) + (facet.high - base))) / 3;
        return false;
      }
      area += facetArea(facet, level);
      volume += facetVolume(facet, level);
      return true;
    });
    return { level, area: area + drowned, volume: volume + (drowned * (level - base) - moment) };
  });
}

/** Water surface [m2] and volume [m3] over some triangles at one level [m]; see stagesAt. */
export function stageAt(surface: Ground, faces: readonly number[], level: number): Stage {
  return stagesAt(surface, faces, [level])[0]!;
}
