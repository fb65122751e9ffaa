import { readFileSync } from 'node:fs';
import { checkDocument, type DesignDocument } from '@yardfall/calc';
import { describe, expect, it } from 'vitest';
import type { LibraryContent } from './library.ts';
import { libraryDifferences, libraryFields } from './libraryFields.ts';

const document = JSON.parse(readFileSync(new URL('../../../prisma/seed/sites/tern-hollow.json', import.meta.url), 'utf8')) as DesignDocument;
const partOf = (kind: string) => {
  const part = document.system.parts.find((one) => one.kind === kind);
  if (part === undefined) throw new Error(`the site has no ${kind}`);
  return part;
};
const curve = [{ flow: 0, head: 8 }, { flow: 0.001, head: 6 }, { flow: 0.003, head: 2 }];
const pump: LibraryContent = { kind: 'pump', curve, solids: 0.0127, minSubmergence: 0.1 };

describe('an entry of the library on a part', () => {
  it('fits only its own kind', () => {
    expect(libraryFields(pump, 'P', partOf('basin'))).toBeNull();
    expect(libraryFields({ kind: 'basinGrate', gratePerimeter: 1, grateOpenArea: 0.05 }, 'G', partOf('channel'))).toBeNull();
  });

  it('a basin keeps its rim and gets its floor by its height', () => {
    const basin = partOf('basin');
    const fields = libraryFields({ kind: 'basin', diameter: 0.6096, height: 0.9144, emptyMass: 20, wall: 'solid', lidFixed: true }, 'B', basin);
    expect(fields).toMatchObject({ diameter: 0.6096, floorLevel: (basin as { rimLevel: number }).rimLevel - 0.9144 });
    expect(fields).not.toHaveProperty('rimLevel');
  });

  it('makes a document that the engine takes, and then differs in nothing', () => {
    const own = partOf('pump');
    const taken = { ...own, ...libraryFields(pump, 'Other pump', own) } as typeof own;
    expect(libraryDifferences(pump, 'Other pump', own).map(({ field }) => field)).toContain('curve');
    expect(libraryDifferences(pump, 'Other pump', taken)).toEqual([]);
    expect(() => checkDocument({ ...document, system: { ...document.system, parts: document.system.parts.map((part) => (part.id === own.id ? taken : part)) } })).not.toThrow();
  });

  it('a grate changes its own figures and leaves how far it is blocked', () => {
    const channel = partOf('channel');
    const fields = libraryFields({ kind: 'channelGrate', openAreaRatio: 0.5, slotWidth: 0.008, locked: true, loadClass: 'car' }, 'Iron', channel);
    expect(fields?.['grate']).toEqual({ openAreaRatio: 0.5, slotWidth: 0.008, locked: true, loadClass: 'car', clogging: (channel as { grate: { clogging: number } }).grate.clogging });
  });
});
