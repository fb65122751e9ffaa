import { readFileSync } from 'node:fs';
import type { DesignDocument } from '@yardfall/calc';
import type { ProofTest } from '@yardfall/contracts';
import { expect, it } from 'vitest';
import { openProofs } from './open.ts';

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
