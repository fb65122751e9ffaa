import { applyOperations, type DraftOperation } from '@yardfall/contracts';
import { describe, expect, test } from 'vitest';
import { inversesOf } from './inverse.ts';

const draft = {
  title: 'Patio',
  system: { parts: [{ id: 'CH1', drainsTo: 'P1', length: 5 }, { id: 'P1', drainsTo: null, length: 4 }] },
};

describe('taking edits back', () => {
  const groups: Record<string, DraftOperation[]> = {
    'a replaced figure': [{ kind: 'replace', path: ['system', 'parts', '@P1', 'length'], value: 9 }],
    'two edits of one field': [
      { kind: 'replace', path: ['title'], value: 'One' },
      { kind: 'replace', path: ['title'], value: 'Two' },
    ],
    'a connection': [{ kind: 'connect', part: 'CH1', drainsTo: null }],
    'an added part': [{ kind: 'add', path: ['system', 'parts', '-'], value: { id: 'O1', drainsTo: null, length: 1 } }],
    'a removed last part': [{ kind: 'connect', part: 'CH1', drainsTo: null }, { kind: 'remove', path: ['system', 'parts', '@P1'] }],
  };
  test.each(Object.entries(groups))('%s leaves the draft as it was', (_, operations) => {
    const after = applyOperations(draft, operations);
    expect(after).not.toEqual(draft);
    expect(applyOperations(after, inversesOf(draft, operations, applyOperations))).toEqual(draft);
  });
});
