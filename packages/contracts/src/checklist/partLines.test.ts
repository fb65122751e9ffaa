import { expect, test } from 'vitest';
import { buildChecklist } from './build.ts';
import { foldItem } from './fold.ts';
import { site } from './sites.test-d.ts';
import { fact, stepOf } from './times.test-d.ts';

const a5 = stepOf('A5');
const at = '2026-03-02T11:00:00Z';
const line = (name: string, value: number) => fact(at, { kind: 'measured', name, value });
const rest = [fact(at, { kind: 'photo' }), fact(at, { kind: 'photo' }), fact(at, { kind: 'written', name: 'pumpModel', text: 'SP-50' }), fact(at, { kind: 'written', name: 'pumpSerial', text: 'A-17' }), fact(at, { kind: 'ticked', note: '' })];

test('each line of the pallet says what the design says of it', () => {
  const pump = site('tern-hollow').system.parts.find((part) => part.kind === 'pump');
  // 4 in of slab and 2 in more.
  expect(a5.requirement.params).toMatchObject({ 'is:pumpCurve:M1': pump?.curveName, 'is:lineSize:N1': '1 1/2 in', 'at:M1': pump?.name, 'is:blades': expect.closeTo(0.1524, 6) });
});

test('one line left out keeps it open, and a wrong one fails it', () => {
  const names = a5.requirement.measures.map(({ name }) => name);
  const [first = '', ...others] = names;
  expect(foldItem(a5.requirement, [...others.map((name) => line(name, 1)), ...rest])).toMatchObject({ state: 'started', missing: [`value:${first}`] });
  expect(foldItem(a5.requirement, [...names.map((name) => line(name, 1)), ...rest])).toMatchObject({ state: 'proven' });
  expect(foldItem(a5.requirement, [...others.map((name) => line(name, 1)), line(first, 0), ...rest])).toMatchObject({ state: 'failed', missing: [`outside:${first}`, 'correction'] });
});

test('without a pump there is nothing of one to check', async () => {
  const items = await buildChecklist(site('ridgeback'));
  expect(items.find(({ template }) => template === 'A5')?.requirement.measures.map(({ name }) => name)).toEqual(['couplings', 'blades']);
});
