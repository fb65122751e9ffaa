import type { Quantity } from '@yardfall/calc';
import { expect, test } from 'vitest';
import { materialsOf, stepped } from './takeOff.ts';

const of = (code: string, amount: number, unit: Quantity['unit'], part: string | null = null): Quantity => ({ code, amount, unit, part, origin: 'drawing' });

test('materials of the design stand once each, in the units in which they come', () => {
  expect(materialsOf([
    of('pipe.4', 6.096, 'm', 'P1'), of('pipe.4', 3.048, 'm', 'P2'), of('slabBag', 11.2, 'bag80'), of('bedding', 0.764554857984, 'm3'), of('pump', 1, 'each'), of('slabReinforcement', 45.359237, 'kg'),
  ])).toEqual([
    { code: 'pipe.4', unit: 'ft', designed: 30 }, { code: 'slabBag', unit: 'bag', designed: 12 }, { code: 'bedding', unit: 'yd3', designed: 1 }, { code: 'pump', unit: 'each', designed: 1 }, { code: 'slabReinforcement', unit: 'lb', designed: 100 },
  ]);
});

test('work, papers and nothing are no materials', () => {
  expect(materialsOf([of('mobilization', 1, 'each'), of('excavation.sand', 3, 'm3'), of('sawCut', 20, 'cutMetreInch'), of('permit', 1, 'each'), of('checkValve', 0, 'each')])).toEqual([]);
});

test('a press is a length, a bag or half a yard, and never less than nothing', () => {
  expect([stepped(30, 'ft', 1), stepped(30, 'ft', -1), stepped(0, 'bag', -1), stepped(1, 'yd3', 1), stepped(0.3, 'yd3', -1)]).toEqual([35, 25, 0, 1.5, 0]);
});
