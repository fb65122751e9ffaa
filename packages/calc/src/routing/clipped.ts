import { film } from './fluxes.ts';

/**
 * A step of Newton does not jump over an edge at which the flow changes at once, nor over the bottom of a store: it lands on it.
 *
 * @param edges levels at which a twin's pumps begin [m]
 */
export function clipped(bottom: number, edges: readonly number[], before: number, next: number): number {
  let level = next;
  for (let k = 0; k < edges.length; k += 1) {
    const edge = edges[k]!;
    if ((before < edge && level > edge + film) || (before > edge + film && level < edge)) level = edge + 0.5 * film;
  }
  if (before > bottom + film && level < bottom) return bottom + 0.5 * film;
  return level < bottom ? bottom : level;
}
