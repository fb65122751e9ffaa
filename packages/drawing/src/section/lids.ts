import type { Outlet, Part } from '@yardfall/calc';

/** Outlets that end in a lid on the lawn, above the line that feeds them. */
export const risesToLid = (outlet: Outlet): boolean => outlet.outletKind === 'emitter' || outlet.outletKind === 'percolationTee';

export type Water = 'roof' | 'pump' | 'yard';

/** What comes out of an outlet: water of a pump, of the roof alone, or of the yard. */
export function waterOf(parts: readonly Part[], outlet: string): Water {
  const above = new Set([outlet]);
  for (let size = 0; size !== above.size;) {
    size = above.size;
    for (const part of parts) if (part.drainsTo !== null && above.has(part.drainsTo)) above.add(part.id);
  }
  const kinds = parts.filter(({ id }) => above.has(id)).map(({ kind }) => kind);
  if (kinds.includes('pump')) return 'pump';
  const yard = kinds.some((kind) => kind === 'channel' || kind === 'catchBasin' || kind === 'underdrain' || kind === 'swale');
  return !yard && kinds.some((kind) => kind === 'leader' || kind === 'roofLine' || kind === 'gutter') ? 'roof' : 'yard';
}

/** Two outlets are told apart by their water; one outlet, or several of one kind of water, need no such word. */
export function tellsWater(parts: readonly Part[]): boolean {
  return new Set(parts.filter(({ kind }) => kind === 'outlet').map(({ id }) => waterOf(parts, id))).size > 1;
}
