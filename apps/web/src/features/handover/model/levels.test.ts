import type { DesignDocument } from '@yardfall/calc';
import type { Checklist } from '@yardfall/contracts';
import { expect, test } from 'vitest';
import { levelsAsked } from './levels.ts';

const document = { system: { parts: [
  { kind: 'pipe', id: 'P2', name: 'Pipe to the basin', invertUp: 29.6, invertDown: 29.5 },
  { kind: 'checkValve', id: 'V1', name: 'Check valve' },
  { kind: 'outlet', id: 'O1', name: 'Emitter', level: 30.1 },
] } } as unknown as DesignDocument;

const fact = (name: string, value: number, verdict: 'kept' | 'refused') => ({ verdict, fact: { kind: 'measured', name, value } });
const checklist = { items: [
  { part: 'P2', facts: [fact('invertUp', 29.58, 'kept'), fact('invertUp', 29.61, 'kept'), fact('invertUp', 31, 'refused')] },
  { part: 'O1', facts: [fact('lidLevel', 30.12, 'kept')] },
] } as unknown as Checklist;

test('levels come from what the crew measured and counts, the newest; what nobody measured stays empty', () => {
  expect(levelsAsked(document, checklist).map(({ part, field, measured }) => [part, field, measured])).toEqual([['P2', 'invertUp', 29.61], ['P2', 'invertDown', null], ['O1', 'level', 30.12]]);
});
