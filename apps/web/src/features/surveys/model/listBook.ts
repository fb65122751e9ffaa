import type { ListedPoint } from '@yardfall/calc';

/** Words of a surveyor's descriptions, and what such a point is to us. Common practice, no source. */
const words: readonly (readonly [RegExp, ListRole])[] = [
  [/\b(sill|threshold|slider)\b/i, 'sill'], [/\b(ff|ffe|finish(ed)? floor)\b/i, 'floor'], [/\b(gutter|flow ?line|fl|invert|inv|outfall|ditch)\b/i, 'outlet'], [/\b(ground|gs|grade|ng|lawn)\b/i, 'grade'],
];
type ListRole = 'sill' | 'floor' | 'outlet' | 'grade' | 'other';

export interface ListedShot {
  readonly point: string;
  readonly role: ListRole;
  /** Height over the bench mark [m]. */
  readonly direct: number;
  readonly note: string;
  readonly pin: { readonly x: number; readonly y: number };
}

/** What a description says that a point is; the estimator can say otherwise. */
export function roleOfWords(description: string): ListRole {
  return words.find(([pattern]) => pattern.test(description))?.[1] ?? 'other';
}

function nameOf({ point, description }: ListedPoint, at: number): string {
  return ([description, point].filter((part) => part !== '').join(' ') || String(at + 1)).slice(0, 80);
}

/**
 * A surveyor's points as a book that is read directly: each height is over the first floor of the list, or over its first point.
 * @returns the mark with its level [m], and a shot for each point; names are kept apart
 */
export function bookOfList(points: readonly ListedPoint[]): { readonly benchMark: { readonly name: string; readonly level: number }; readonly shots: readonly ListedShot[] } | null {
  const named = points.map((point, at) => ({ point, name: nameOf(point, at), role: roleOfWords(point.description) }));
  const mark = named.find(({ role }) => role === 'floor') ?? named[0];
  if (mark === undefined) return null;
  const others = named.filter((one) => one !== mark);
  const taken = new Map<string, number>();
  return {
    benchMark: { name: mark.name, level: mark.point.level },
    shots: [mark, ...others].map(({ point, name, role }) => {
      const times = (taken.get(name) ?? 0) + 1;
      taken.set(name, times);
      return { point: times === 1 ? name : `${name.slice(0, 75)} ${String(times)}`, role, direct: point.level - mark.point.level, note: point.description.slice(0, 300), pin: { x: point.x, y: point.y } };
    }),
  };
}
