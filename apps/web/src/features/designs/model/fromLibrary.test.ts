import { readFileSync } from 'node:fs';
import type { DesignDocument } from '@yardfall/calc';
import { applyOperations, DesignDocumentSchema, type LibraryEntry } from '@yardfall/contracts';
import { expect, test } from 'vitest';
import { libraryStanding, takeOperations } from './fromLibrary.ts';

const document = JSON.parse(readFileSync(new URL('../../../../../../prisma/seed/sites/tern-hollow.json', import.meta.url), 'utf8')) as DesignDocument;
const pump = document.system.parts.find((part) => part.kind === 'pump');
if (pump?.kind !== 'pump') throw new Error('the site has no pump');
const entryOf = (head: number, sha256: string, active = true): LibraryEntry => ({
  id: 'e1', name: 'Pump B', source: '', priceCode: null, sha256, active, version: 1, updatedAt: '2026-01-01T00:00:00Z', by: 'Somebody',
  content: { kind: 'pump', solids: 0.01, minSubmergence: 0.1, curve: [{ flow: 0, head }, { flow: 0.001, head: head / 2 }, { flow: 0.003, head: 1 }] },
});
const partIn = (of: DesignDocument) => of.system.parts.find(({ id }) => id === pump.id) ?? pump;
const at = new Date('2026-03-02T14:00:00Z');
const taken = applyOperations(document, takeOperations(document, pump, entryOf(8, 'a'.repeat(64)), at));

test('a part takes the figures with their source, and the document stays one that the office takes', () => {
  expect(partIn(taken)).toMatchObject({ curveName: 'Pump B', solids: 0.01 });
  expect(taken.sources.library).toEqual([{ id: 'e1', sha256: 'a'.repeat(64), takenAt: at.toISOString(), part: pump.id }]);
  expect(DesignDocumentSchema.safeParse(taken).success).toBe(true);
  const again = applyOperations(taken, takeOperations(taken, partIn(taken), entryOf(9, 'b'.repeat(64)), at));
  expect(again.sources.library).toHaveLength(1);
});

test('a changed entry is offered with its differences; nothing is changed by itself', () => {
  expect(libraryStanding(taken, partIn(taken), [entryOf(8, 'a'.repeat(64))])).toMatchObject({ isNewer: false, isOwn: false, differences: [] });
  const newer = libraryStanding(taken, partIn(taken), [entryOf(9, 'b'.repeat(64))]);
  expect([newer.isNewer, newer.differences.map(({ field }) => field)]).toEqual([true, ['curve']]);
});

test('figures that were changed by hand afterwards are told apart from a newer entry', () => {
  const changed = applyOperations(taken, [{ kind: 'replace', path: ['system', 'parts', `@${pump.id}`, 'solids'], value: 0.02 }]);
  expect(libraryStanding(changed, partIn(changed), [entryOf(8, 'a'.repeat(64))])).toMatchObject({ isNewer: false, isOwn: true });
});

test('only entries in use that fit are offered; one that is gone is said to be gone', () => {
  expect(libraryStanding(document, pump, [entryOf(8, 'x', false)]).fitting).toEqual([]);
  const basin = document.system.parts.find(({ kind }) => kind === 'basin');
  expect(basin && libraryStanding(document, basin, [entryOf(8, 'x')]).fitting).toEqual([]);
  expect(libraryStanding(taken, partIn(taken), []).taken).toEqual({ at: at.toISOString(), entry: null });
});
