import { readFileSync } from 'node:fs';
import { evaluate, type DesignDocument } from '@yardfall/calc';
import type { LibraryEntry } from '@yardfall/contracts';
import { expect, test } from 'vitest';
import { mostAlternatives, pumpAlternatives } from './pumpAlternatives.ts';

const document = JSON.parse(readFileSync(new URL('../../../../../../prisma/seed/sites/tern-hollow.json', import.meta.url), 'utf8')) as DesignDocument;
const pump = document.system.parts.find((part) => part.kind === 'pump');
if (pump?.kind !== 'pump') throw new Error('the site has no pump');
const scaled = (scale: number, active = true): LibraryEntry => ({
  id: String(scale), name: `x ${String(scale)}`, source: '', priceCode: null, sha256: '', active, version: 1, updatedAt: '', by: '',
  content: { kind: 'pump', solids: pump.solids, minSubmergence: pump.minSubmergence, curve: pump.curve.map(({ flow, head }) => ({ flow: flow * scale, head })) },
});

test('another pump works on the line as it would if it were drawn', () => {
  const [other] = pumpAlternatives(document, pump.id, [scaled(1.5)]);
  const parts = document.system.parts.map((part) => (part.id === pump.id && part.kind === 'pump' ? { ...part, curve: pump.curve.map(({ flow, head }) => ({ flow: flow * 1.5, head })) } : part));
  const { pumps } = evaluate({ ...document, system: { ...document.system, parts } }, { band: false, workings: false }).results;
  expect(other?.duty.dutyAtOff).toEqual(pumps[0]?.dutyAtOff);
  expect(other?.duty.dutyAtOff.flow).toBeGreaterThan(evaluate(document, { band: false, workings: false }).results.pumps[0]?.dutyAtOff.flow ?? Infinity);
});

test('the drawn pump, pumps out of use and other parts are no alternatives; the nearest are shown, the strongest last', () => {
  expect(pumpAlternatives(document, pump.id, [scaled(1), scaled(2, false)])).toEqual([]);
  const shown = pumpAlternatives(document, pump.id, [4, 0.2, 1.2, 0.9, 1.4, 0.8].map((scale) => scaled(scale)));
  expect(shown).toHaveLength(mostAlternatives);
  expect(shown.map(({ entry }) => entry)).toEqual(['0.8', '0.9', '1.2', '1.4']);
});
