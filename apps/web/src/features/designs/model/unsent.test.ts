import type { DraftOperation } from '@yardfall/contracts';
import { expect, test } from 'vitest';
import { onTop } from './unsent.ts';

const document = { title: 'A', parts: [{ id: 'P1', length: 3 }, { id: 'P2', length: 4 }] };
const lengthen = (id: string, length: number): DraftOperation => ({ kind: 'replace', path: ['parts', `@${id}`, 'length'], value: length });
const add = (id: string): DraftOperation => ({ kind: 'add', path: ['parts', '-'], value: { id, length: 1 } });

test('edits go on top in order, also one of what an earlier one added', () => {
  expect(onTop(document, [add('P3'), lengthen('P3', 9), lengthen('P1', 5)])).toEqual({
    document: { title: 'A', parts: [{ id: 'P1', length: 5 }, { id: 'P2', length: 4 }, { id: 'P3', length: 9 }] }, aside: [],
  });
  expect(document.parts).toHaveLength(2);
});

test('an edit without a place is set aside by itself, and the others stand', () => {
  const gone = lengthen('P9', 5);
  const twice = add('P2');
  expect(onTop(document, [gone, lengthen('P2', 8), twice])).toEqual({ document: { title: 'A', parts: [{ id: 'P1', length: 3 }, { id: 'P2', length: 8 }] }, aside: [gone, twice] });
});

test('any other fault is not hidden', () => {
  expect(() => onTop(document, [{ kind: 'replace', path: null, value: 1 } as unknown as DraftOperation])).toThrow(TypeError);
});
