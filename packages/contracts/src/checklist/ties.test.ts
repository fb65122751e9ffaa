import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { FieldFact } from '../checklists.ts';
import { DesignDocumentSchema } from '../document/schema.ts';
import { buildChecklist } from './build.ts';
import { foldItem } from './fold.ts';
import { buriedParts, lacks, tiesOf, type StepOnRecord } from './ties.ts';

const site = (name: string) => DesignDocumentSchema.parse(JSON.parse(readFileSync(new URL(`../../../../prisma/seed/sites/${name}.json`, import.meta.url), 'utf8')));
let count = 0;
function fact(itemKey: string, body: object): FieldFact {
  count += 1;
  return { id: `0195b5a0-0000-7000-8000-${String(count).padStart(12, '0')}`, deviceId: 'd', seq: count, deviceTime: '2026-11-25T15:00:00Z', factVersion: 1, revisionId: 'r', itemKey, requirementHash: 'h', seen: [], ...body } as unknown as FieldFact;
}

test('every part that the lawn hides is tied, and no part that is seen', () => {
  expect(buriedParts(site('tern-hollow')).map(({ id }) => id)).toEqual(['R1', 'P1', 'B1', 'N1', 'O1', 'O2']);
  expect(buriedParts(site('lindqvist')).map(({ id }) => id)).toEqual(['P1', 'P2', 'P3', 'P4', 'O1', 'O2', 'O3', 'O4', 'O5']);
});

test('the step lacks each tape and each level by name until all are there', async () => {
  const items = await buildChecklist(site('tern-hollow'));
  const step = items.find(({ template }) => template === 'J7');
  if (step === undefined) throw new Error('the list asks for no ties');
  const { requirement } = step;
  const figures = requirement.measures.map(({ name, target }) => fact('J7', { kind: 'measured', name, value: target }));
  const rest = [fact('J7', { kind: 'ticked', note: '' }), fact('J7', { kind: 'photo', photoId: 'p', takenAt: '2026-11-25T15:00:00Z' }), ...['tieFromOne', 'tieFromTwo'].map((name) => fact('J7', { kind: 'written', name, text: 'Corner' }))];
  const fold = (facts: readonly FieldFact[]) => foldItem(requirement, facts.map((one) => ({ fact: one, verdict: 'kept' as const })));
  expect(fold(rest).missing).toEqual(requirement.measures.map(({ name }) => `value:${name}`));
  expect(fold([...rest, ...figures]).state).toBe('proven');
  expect(fold([...rest, ...figures.filter((one) => one.kind !== 'measured' || one.name !== 'tieTwo:B1')]).missing).toEqual(['value:tieTwo:B1']);
  // A tape of no length ties nothing.
  expect(fold([...rest, ...figures.filter((one) => one.kind !== 'measured' || one.name !== 'tieTwo:B1'), fact('J7', { kind: 'measured', name: 'tieTwo:B1', value: 0 })]).state).toBe('failed');
});

test('what was tied is told part by part, with the level that an earlier step shot', async () => {
  const items = await buildChecklist(site('tern-hollow'));
  const facts = [
    fact('J7', { kind: 'written', name: 'tieFromOne', text: 'Back door' }), fact('J7', { kind: 'measured', name: 'tieOne:P1', value: 4 }), fact('J7', { kind: 'measured', name: 'tieTwo:P1', value: 5 }),
    fact('J7', { kind: 'measured', name: 'shot:B1', value: 30.2 }), fact('E1:P1', { kind: 'measured', name: 'invertDown', value: 30.1 }),
  ];
  const steps = items.map((item): StepOnRecord => ({ template: item.template, part: item.part, requirement: item.requirement, facts: facts.filter(({ itemKey }) => itemKey === item.key) }));
  const ties = tiesOf(steps);
  expect(ties?.from).toEqual(['Back door', null]);
  expect(ties?.parts.find(({ part }) => part === 'P1')).toMatchObject({ at: 'middle', level: 30.1, one: 4, two: 5 });
  expect(ties?.parts.find(({ part }) => part === 'B1')).toMatchObject({ at: 'centre', level: 30.2, one: null, two: null });
  expect(ties?.parts.filter((part) => !lacks(part)).map(({ part }) => part)).toEqual(['P1']);
  expect(tiesOf(steps.filter(({ template }) => template !== 'J7'))).toBeNull();
});
