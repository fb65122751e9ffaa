import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import type { DesignDocument } from '../document/document.ts';
import { DocumentError } from '../document/error.ts';
import { demoSite } from '../testing/sites.ts';
import { evaluate } from './evaluate.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 240_000 });

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

/** Paths of every leaf of a document. */
function leaves(value: Json, path: readonly (string | number)[] = []): (readonly (string | number)[])[] {
  if (typeof value !== 'object' || value === null) return [path];
  const entries: [string | number, Json][] = Array.isArray(value) ? value.map((item, i) => [i, item]) : Object.entries(value);
  return entries.flatMap(([key, item]) => leaves(item, [...path, key]));
}

function replaced(document: DesignDocument, path: readonly (string | number)[], change: (old: Json) => Json | undefined): DesignDocument {
  const copy = structuredClone(document) as unknown as Json;
  let holder = copy as Record<string | number, Json>;
  for (const key of path.slice(0, -1)) holder = holder[key] as Record<string | number, Json>;
  const last = path[path.length - 1]!;
  const value = change(holder[last]!);
  if (value === undefined) Reflect.deleteProperty(holder, last);
  else holder[last] = value;
  return copy as unknown as DesignDocument;
}

const strange: readonly (Json | undefined)[] = [undefined, null, NaN, Infinity, -Infinity, -1, 0, 1e-9, 0.5, 1e5, 1e300, '', 'B1', 'P1', true, [], {}];
const sites = [demoSite('tern-hollow'), demoSite('ridgeback'), demoSite('sallow-bend')].map((document) => ({ document, paths: leaves(document as unknown as Json) }));

const mutation = fc.record({
  site: fc.constantFrom(...sites), at: fc.double({ min: 0, max: 0.999999, noNaN: true }),
  how: fc.oneof(
    fc.constantFrom(...strange).map((value) => () => value),
    fc.constantFrom(0.1, 0.5, 0.99, 1.01, 2, 10, 1000, -1).map((factor) => (old: Json) => (typeof old === 'number' ? old * factor : old)),
  ),
});

function everyNumberIsFinite(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value) && !Object.is(value, -0);
  if (typeof value !== 'object' || value === null) return true;
  return Object.values(value).every(everyNumberIsFinite);
}

describe('any document', () => {
  test('is evaluated to finite numbers or refused with a code and a path, never anything else', () => {
    let refused = 0;
    let evaluated = 0;
    fc.assert(fc.property(fc.array(mutation, { minLength: 1, maxLength: 2 }), (mutations) => {
      const { document, paths } = mutations[0]!.site;
      let changedDocument = document;
      for (const { at, how } of mutations) {
        const path = paths[Math.floor(at * paths.length)]!;
        try {
          changedDocument = replaced(changedDocument, path, how);
        } catch {
          // An earlier change removed what this path led through.
        }
      }
      try {
        const evaluation = evaluate(changedDocument, { band: false });
        expect(everyNumberIsFinite(evaluation)).toBe(true);
        expect(evaluation.massError).toBeLessThan(1e-6);
        evaluated += 1;
      } catch (error) {
        if (!(error instanceof DocumentError)) throw error;
        expect(error.path).toMatch(/^(\/[^/]+)*$/);
        refused += 1;
      }
    }), { seed: 7, numRuns: 400 });
    expect(refused).toBeGreaterThan(50);
    expect(evaluated).toBeGreaterThan(50);
  });

  test.each([null, undefined, 0, 'text', [], {}, { schema: 'yardfall.design', version: 1 }])('refuses %j as a document', (value) => {
    expect(() => evaluate(value as unknown as DesignDocument)).toThrow(DocumentError);
  });
});
