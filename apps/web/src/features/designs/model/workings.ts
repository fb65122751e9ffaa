import type { DesignDocument, Working } from '@yardfall/calc';

/** How a number is said to have come about, by the place of the number in the evaluation. */
export function workingOf(workings: readonly Working[], result: string): Working | null {
  return workings.find((working) => working.result === result) ?? null;
}

/** Where a symbol of a formula has its value from. */
export type Origin =
  /** Typed or measured: keys into the design document, `@id` for what stands in a list. */
  | { readonly kind: 'design'; readonly path: readonly string[] }
  /** Another number with a working of its own. */
  | { readonly kind: 'result'; readonly result: string; readonly code: string }
  /** Another number that stands for itself. */
  | { readonly kind: 'run' }
  /** A constant of the method, or an outcome of the run. */
  | { readonly kind: 'method' };

/** Reads a pointer against the document and the workings. */
export function originOf(from: string | null, document: DesignDocument, workings: readonly Working[]): Origin {
  if (from === null) return { kind: 'method' };
  if (from.startsWith('/results/')) {
    const working = workingOf(workings, from);
    return working === null ? { kind: 'run' } : { kind: 'result', result: from, code: working.code };
  }
  return { kind: 'design', path: pathOf(from, document) };
}

/** Places in lists become ids where what stands there has one; a bare place in a list says nothing and is left out. */
export function pathOf(pointer: string, document: DesignDocument): string[] {
  let value: unknown = document;
  return pointer.split('/').slice(1).flatMap((key) => {
    const isList = Array.isArray(value);
    value = (value as Readonly<Record<string, unknown>> | null | undefined)?.[key];
    if (!isList) return [key];
    const { id } = (value ?? {}) as { readonly id?: unknown };
    return typeof id === 'string' ? [`@${id}`] : [];
  });
}

/** A step into another working, and the way back: the last one is shown. */
export type Trail = readonly string[];

export const into = (trail: Trail, result: string): Trail => (trail.includes(result) ? trail.slice(0, trail.indexOf(result) + 1) : [...trail, result]);
export const back = (trail: Trail): Trail => trail.slice(0, -1);
