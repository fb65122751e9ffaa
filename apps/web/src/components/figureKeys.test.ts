import { parseLength } from '@yardfall/text';
import { expect, test } from 'vitest';
import { closed, keyed } from './figureKeys.ts';

test.each([
  ['', 2, '1/8'], ['3', 2, '3 1/8'], ['3 1/8', 1, '3 3/16'], ['1/2', 8, '1'], ['3.25', 1, '3 5/16'], ['-1/16', 1, '-1/8'], ["4'", 4, `4' 1/4"`], [`4' 2"`, 8, `4' 2 1/2"`], [`4' 2`, 8, `4' 2 1/2"`],
  ['three', 2, 'three'],
])('%s and %d sixteenths', (text, sixteenths, after) => expect(keyed(text, { sixteenths })).toBe(after));

test('feet end where figures stand, and a minus goes and comes', () => {
  expect([keyed('12', 'feet'), keyed("12' 3", 'feet'), keyed('', 'feet')]).toEqual(["12' ", "12' 3", '']);
  expect([keyed('1/8', 'minus'), keyed('-1/8', 'minus'), keyed('', 'minus')]).toEqual(['-1/8', '1/8', '-']);
});

test('what the keys write is read as it stands', () => {
  const metres = (text: string, unit: 'ft' | 'in') => {
    const read = parseLength(closed(text), { unit, offered: ['ft', 'in'] });
    return read.ok ? read.metres / 0.0254 : null;
  };
  expect(metres(keyed(keyed('3', { sixteenths: 2 }), { sixteenths: 1 }), 'in')).toBeCloseTo(3.1875, 12);
  expect(metres(`${keyed('4', 'feet')}2`, 'ft')).toBeCloseTo(50, 12);
  expect(metres(keyed(`${keyed('4', 'feet')}2`, { sixteenths: 8 }), 'ft')).toBeCloseTo(50.5, 12);
  expect(metres(keyed('4', 'feet'), 'ft')).toBeCloseTo(48, 12);
});
