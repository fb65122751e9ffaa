import { expect, test } from 'vitest';
import { partsOpenAt } from './openParts.ts';

const all = ['site', 'locates', 'work', 'proof', 'handover'] as const;
const at = (...given: Parameters<typeof partsOpenAt> extends [infer S, infer H, infer R, unknown] ? [S, H, R] : never) => {
  const { order, open } = partsOpenAt(...given, all);
  return { order, open: [...open] };
};

test('whoever only digs finds the list first and the rest closed; at the proof, the proof', () => {
  expect(at('released', '', ['crew'])).toEqual({ order: ['work', 'site', 'locates', 'proof', 'handover'], open: ['work'] });
  expect(at('proving', '', ['crew'])).toEqual({ order: ['proof', 'work', 'site', 'locates', 'handover'], open: ['proof', 'work'] });
  expect(at('intake', '', ['crew'])).toEqual({ order: all, open: ['site'] });
});

test('the office keeps the order of the record, and a link opens the part that it leads to', () => {
  expect(at('released', '#handover', ['crew', 'owner'])).toEqual({ order: all, open: ['locates', 'work', 'handover'] });
});
