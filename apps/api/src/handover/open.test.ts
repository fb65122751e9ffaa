import { readFileSync } from 'node:fs';
import type { DesignDocument } from '@yardfall/calc';
import { buildChecklist, DesignDocumentSchema, type ItemInState, type ProofTest } from '@yardfall/contracts';
import { expect, it } from 'vitest';
import { openProofs, openSteps } from './open.ts';

const file = new URL('../../../../prisma/seed/sites/tern-hollow.json', import.meta.url);
const document = JSON.parse(readFileSync(file, 'utf8')) as DesignDocument;
const proof = (verdict: ProofTest['verdict'], note = '') => ({ pump: 'M1', verdict, note }) as ProofTest;
const codes = (tests: readonly ProofTest[], waived: readonly string[] = []) => openProofs(document, tests, new Set(waived)).map(({ code, params }) => `${code} ${String(params['item'])}`);

it('each duty pump needs a test of which the last one settles, or the waiver of its item', () => {
  expect(codes([])).toEqual(['handover.open.noProof J1:M1']);
  expect(codes([proof('fail'), proof('pass')])).toEqual(['handover.open.proofFailed J1:M1']);
  expect(codes([proof('pass'), proof('fail')])).toEqual([]);
  expect([codes([proof('explain')]), codes([proof('explain', 'cold water')])]).toEqual([['handover.open.proofFailed J1:M1'], []]);
  expect(codes([], ['J1:M1'])).toEqual([]);
});

it('each closed hold point and each step that was left undone is named, once; what is proven, waived or does not apply is not', async () => {
  const items = await buildChecklist(DesignDocumentSchema.parse(document));
  const as = (state: (template: string) => ItemInState['state']) => items.map(({ key, template, part }): ItemInState => ({ key, template, part, state: state(template), freshUntil: 0 }));
  const told = (states: readonly ItemInState[]) => openSteps(states).map(({ code, params }) => [code.split('.')[2], params['holdPoint'], params['item']].filter(Boolean).join(' '));
  expect(told(as(() => 'open'))).toHaveLength(items.length);
  expect(told(as(() => 'proven'))).toEqual([]);
  expect(told(as((id) => (['A2', 'B6', 'E5'].includes(id) ? 'open' : ['B1', 'J8'].includes(id) ? 'started' : 'proven')))).toEqual(['item HP-1 A2', 'item HP-3 B6', 'item HP-7 E5:R1', 'item HP-7 E5:P1', 'step B1', 'step J8']);
  // A hold point takes a waiver and no "does not apply"; any other step takes that with its reason.
  expect(told(as((id) => (id === 'E5' ? 'waived' : ['E1', 'B1'].includes(id) ? 'notApplicable' : 'proven')))).toEqual(['item HP-6 E1:P1']);
});
