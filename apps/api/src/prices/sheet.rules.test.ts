import type { Quantity } from '@yardfall/calc';
import { describe, expect, test } from 'vitest';
import { atSheetRate, labourCode, linesOf, missingCodes, type ListItem } from './sheet.rules.ts';
import { fromThousandths, thousandths, tradeQuantity } from './units.rules.ts';

const item = (code: string, unit: ListItem['unit'], unitCost: bigint, hours = 0n): [string, ListItem] =>
  [code, { code, name: code, kind: 'material', unit, unitCost, hours, taxable: true }];
const quantity = (code: string, amount: number, unit: Quantity['unit'], part: string | null = null, origin: Quantity['origin'] = 'drawing'): Quantity =>
  ({ code, part, amount, unit, origin });
const labour = { name: 'Crew labor', rate: 420_000n };

describe('a take-off against the price list', () => {
  test('18 ft of channel and 14 + 120 ft of pipe become one line each, in feet', () => {
    const list = new Map([item('channel.4in', 'ft', 320_000n), item('pipe.4in', 'ft', 26_000n)]);
    const { lines, missing } = linesOf(
      [quantity('channel.4in', 18 * 0.3048, 'm', 'CH1'), quantity('pipe.4in', 14 * 0.3048, 'm', 'P1'), quantity('pipe.4in', 120 * 0.3048, 'm', 'R1')], list, labour);
    expect(missing).toEqual([]);
    expect(lines.map(({ code, quantity: q, unit }) => [code, q, unit])).toEqual([['channel.4in', 18_000n, 'ft'], ['pipe.4in', 134_000n, 'ft']]);
  });
  test('hours of the lines add up to one line of crew labor, rounded once', () => {
    const list = new Map([item('a', 'each', 100n, 3_333n), item('b', 'each', 100n, 3_333n)]);
    const { lines } = linesOf([quantity('a', 1, 'each'), quantity('b', 2, 'each')], list, labour);
    expect(lines.find((line) => line.code === labourCode)).toMatchObject({ quantity: 1_000n, unitCost: 420_000n, kind: 'labour', unit: 'hour' });
  });
  test('a code without a price and a unit that does not fit are missing, not free', () => {
    const list = new Map([item('soil', 'ft', 100n)]);
    expect(linesOf([quantity('soil', 3, 'm3'), quantity('stone', 1, 'm3')], list, labour)).toEqual({ lines: [], missing: ['soil', 'stone'] });
  });
  test('nothing needed is no line, and an allowance is told from the drawing', () => {
    const list = new Map([item('a', 'each', 1n), item('b', 'each', 1n)]);
    const { lines } = linesOf([quantity('a', 0, 'each'), quantity('b', 1, 'each', null, 'allowance')], list, labour);
    expect(lines.map(({ code, origin }) => [code, origin])).toEqual([['b', 'allowance']]);
  });
  test('what a sheet lacks is found again after it was edited by hand', () => {
    expect(missingCodes([quantity('a', 1, 'each'), quantity('b', 1, 'each')], [{ code: 'b' }])).toEqual(['a']);
  });
  test('crew labor keeps to the rate of the sheet', () => {
    const [line] = linesOf([quantity('a', 1, 'each')], new Map([item('a', 'each', 1n, 10_000n)]), labour).lines.slice(-1);
    expect(line && atSheetRate({ ...line, unitCost: 1n }, 500_000n).unitCost).toBe(500_000n);
  });
});

/** International foot 0.3048 m, short ton 907.18474 kg (exact by definition). */
test.each([
  [1, 'm', 'ft', 3281n], [1, 'm2', 'ft2', 10_764n], [1, 'm3', 'yd3', 1308n], [1, 'm3', 'ft3', 35_315n], [907.18474, 'kg', 'ton', 1000n],
  [0.3048 * 4, 'cutMetreInch', 'inchFoot', 4000n], [26, 'bag80', 'bag', 26_000n], [1, 'each', 'lump', 1000n],
] as const)('%d %s is told in %s', (amount, from, to, expected) => {
  expect(tradeQuantity(amount, from, to)).toBe(expected);
});

test('metres are not priced by the bag', () => {
  expect(tradeQuantity(1, 'm', 'bag')).toBeNull();
});

test('three decimals, half up, without a float in between', () => {
  expect(thousandths(0.0005)).toBe(1n);
  expect(thousandths(1.0004999)).toBe(1000n);
  expect(thousandths(62.5)).toBe(62_500n);
  expect(fromThousandths(62_500n)).toBe('62.500');
  expect(fromThousandths(5n)).toBe('0.005');
});
