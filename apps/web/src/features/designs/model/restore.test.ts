import { readFileSync } from 'node:fs';
import type { DesignDocument } from '@yardfall/calc';
import { applyOperations } from '@yardfall/contracts';
import { expect, test } from 'vitest';
import { restoreOperations } from './restore.ts';

const then = JSON.parse(readFileSync(new URL('../../../../../../prisma/seed/sites/ridgeback.json', import.meta.url), 'utf8')) as DesignDocument;

test('brings back exactly what was, by as few edits as there are groups that differ', () => {
  const now: DesignDocument = { ...then, title: 'Another title', system: { parts: then.system.parts.slice(1) } };
  const operations = restoreOperations(now, then);
  expect(operations.map((operation) => (operation.kind === 'replace' ? operation.path : []))).toEqual([['title'], ['system']]);
  expect(applyOperations(now, operations)).toEqual(then);
  expect(restoreOperations(then, structuredClone(then))).toEqual([]);
});
