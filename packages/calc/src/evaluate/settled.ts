import { CalcProblem } from '../common/problem.ts';

/** A value ready for canonical JSON: -0 becomes 0, and a number that is not finite throws with its path. */
export function settled<T>(value: T): T {
  return ready(value, null) as T;
}

/** Way to a value, from the inside out: written down only where it is asked for. */
interface Place {
  readonly key: string | number;
  readonly inside: Place | null;
}

const pathOf = (place: Place | null): string => (place === null ? '' : `${pathOf(place.inside)}/${place.key}`);

function ready(value: unknown, place: Place | null): unknown {
  if (typeof value === 'number') {
    if (!(value - value === 0)) throw new CalcProblem('result.notFinite', pathOf(place), {});
    return value === 0 ? 0 : value;
  }
  if (Array.isArray(value)) return list(value as readonly unknown[], place);
  if (typeof value !== 'object' || value === null) return value;
  const made: Record<string, unknown> = {};
  for (const key of Object.keys(value)) made[key] = ready((value as Record<string, unknown>)[key], { key, inside: place });
  return made;
}

function list(items: readonly unknown[], place: Place | null): unknown[] {
  const made: unknown[] = new Array<unknown>(items.length);
  for (let i = 0; i < items.length; i += 1) {
    const item = items[i];
    // Long series are numbers: they need no place of their own.
    made[i] = typeof item === 'number' && item !== 0 && item - item === 0 ? item : ready(item, { key: i, inside: place });
  }
  return made;
}
