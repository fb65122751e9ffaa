import type { DesignDocument } from '@yardfall/calc';

/** A thing of the section that is not the same in both documents. */
export interface SectionDifference {
  readonly id: string;
  readonly name: string;
  readonly change: 'changed' | 'added' | 'removed';
  /** The thing at which it is shown: itself, or for a cut in a slab the part that lies in it. */
  readonly at: string;
}

interface Named {
  readonly id: string;
  readonly name: string;
  readonly part?: string | null;
}

const thingsOf = ({ site, system, construction }: DesignDocument): Named[] => [...site.sills, ...site.lowSpots, ...site.utilities, ...system.parts, ...construction.slabCuts];
const placeOf = ({ id, part }: Named): string => part ?? id;

/** What differs between two documents and can be seen on a section, by id: first what the later one has, then what it lost. */
export function sectionDifferences(before: DesignDocument, after: DesignDocument): SectionDifference[] {
  const [earlier, later] = [thingsOf(before), thingsOf(after)];
  const old = new Map(earlier.map((thing) => [thing.id, thing]));
  const now = new Set(later.map(({ id }) => id));
  const kept = later.flatMap((thing): SectionDifference[] => {
    const was = old.get(thing.id);
    if (was !== undefined && same(was, thing)) return [];
    return [{ id: thing.id, name: thing.name, change: was === undefined ? 'added' : 'changed', at: placeOf(thing) }];
  });
  return [...kept, ...earlier.filter(({ id }) => !now.has(id)).map((thing): SectionDifference => ({ id: thing.id, name: thing.name, change: 'removed', at: placeOf(thing) }))];
}

/** Equal in every value, whatever the order of the fields. */
function same(a: unknown, b: unknown): boolean {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  const [one, other] = [a as Record<string, unknown>, b as Record<string, unknown>];
  const keys = Object.keys(one);
  return keys.length === Object.keys(other).length && keys.every((key) => Object.hasOwn(other, key) && same(one[key], other[key]));
}
