import { readFileSync } from 'node:fs';
import type { DesignDocument } from '@yardfall/calc';
import { applyOperations } from '@yardfall/contracts';
import { setLevel } from '@yardfall/drawing';
import { expect, test } from 'vitest';
import { levelOperations } from './levelOperations.ts';

const document = JSON.parse(readFileSync(new URL('../../../../../../prisma/seed/sites/tern-hollow.json', import.meta.url), 'utf8')) as DesignDocument;

test('a dragged level becomes one edit for each figure that goes along, and they give the dragged document', () => {
  const basin = document.system.parts.find(({ kind }) => kind === 'basin');
  if (basin?.kind !== 'basin') throw new Error('the demo design has a basin');
  const after = setLevel(document, basin.id, 'inletInvert', basin.inletInvert - 0.03);
  const operations = levelOperations(document, after);
  expect(operations.map((operation) => (operation.kind === 'replace' ? operation.path.slice(2).join(' ') : operation.kind))).toEqual(['@P1 invertDown', '@B1 inletInvert']);
  expect(applyOperations(document, operations)).toEqual(after);
  expect(levelOperations(document, document)).toEqual([]);
});

test('a sill is moved in its own list', () => {
  const sill = document.site.sills[0];
  if (sill === undefined) throw new Error('the demo design has a sill');
  const after = setLevel(document, sill.id, 'level', sill.level + 0.01);
  expect(levelOperations(document, after)).toEqual([{ kind: 'replace', path: ['site', 'sills', `@${sill.id}`, 'level'], value: sill.level + 0.01 }]);
});
