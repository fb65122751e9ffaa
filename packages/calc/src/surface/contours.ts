import { CalcProblem } from '../common/problem.ts';
import { chainFrom, placesOf, shoreAcross } from './shore.ts';
import type { ShoreKey } from './shore.ts';
import { facetOf } from './stage.ts';
import type { Position, Ground } from './surface.ts';

/** A line of one level, lower ground on its left; a closed one does not repeat its first place. */
export interface Contour { readonly level: number; readonly closed: boolean; readonly points: readonly Position[] }

/** More lines than this cannot be read on any drawing; ours. */
export const MOST_CONTOUR_LEVELS = 1000;

/**
 * Contour lines at whole multiples of an interval.
 *
 * @param interval spacing in level [m], above zero
 * @returns lines in rising order of level; they end at walls and at the edge of the ground
 * Level ground at a contour's own level counts as above it, so that the line runs round it.
 * Errors: surface.badInterval, surface.tooManyContours
 * Source: geometry
 */
export function contourLines(surface: Ground, interval: number): Contour[] {
  if (!(interval > 0) || !Number.isFinite(interval)) throw new CalcProblem('surface.badInterval', 'interval', { interval: String(interval) });
  const range = surface.level.reduce((most, level) => Math.max(most, level), -Infinity) - surface.level.reduce((least, level) => Math.min(least, level), Infinity);
  if (range / interval > MOST_CONTOUR_LEVELS) throw new CalcProblem('surface.tooManyContours', 'interval', { interval, most: MOST_CONTOUR_LEVELS });
  const byStep = new Map<number, Map<ShoreKey, ShoreKey>>();
  for (let face = 0; 3 * face < surface.triangles.length; face += 1) {
    const { low, high } = facetOf(surface, face);
    for (let step = Math.floor(low / interval); step * interval <= high; step += 1) {
      const across = shoreAcross(surface, face, step * interval);
      if (!across) continue;
      const links = byStep.get(step) ?? new Map<ShoreKey, ShoreKey>();
      links.set(across.from, across.to);
      byStep.set(step, links);
    }
  }
  return [...byStep].sort(([p], [q]) => p - q).flatMap(([step, links]) => linesOf(surface, links, step * interval));
}

function linesOf(surface: Ground, links: Map<ShoreKey, ShoreKey>, level: number): Contour[] {
  const reached = new Set(links.values());
  const starts = [...links.keys()];
  const found: Contour[] = [];
  // open lines from their ends first, then what is left: rings; a start that was passed already gives no second place
  for (const start of [...starts.filter((key) => !reached.has(key)), ...starts]) {
    const { keys, closed } = chainFrom(links, start);
    const points = placesOf(surface, keys, level, closed);
    if (points.length > 1) found.push({ level, closed, points });
  }
  return found;
}
