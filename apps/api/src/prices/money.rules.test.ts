import { describe, expect, test } from 'vitest';
import { halfUp, lineCost, priceAtMargin, totalsOf, type MoneyLine } from './money.rules.ts';

const dollars = (amount: number) => BigInt(Math.round(amount * 100));
/** A lump of the given dollars as one line. */
const lump = (kind: string, amount: number, taxable = false): MoneyLine => ({ kind, quantity: 1000n, unitCost: dollars(amount) * 100n, taxable });
const rates = { marginBasisPoints: 3800, taxBasisPoints: 700, contingencyBasisPoints: 600 };

/** The flagship's illustrative price with invented unit costs (ours): every line as it was printed. */
const materials = [576, 70, 348.4, 165, 420, 330, 78, 151.2, 70, 144, 155, 40, 169, 71.5, 90, 95, 54, 60].map((amount) => lump('material', amount, true));
const flagship: MoneyLine[] = [
  ...materials, lump('equipment', 465), lump('subcontract', 950), lump('subcontract', 520), lump('permit', 85),
  { kind: 'labour', quantity: 62_500n, unitCost: 420_000n, taxable: false },
];

describe('the worked example of the flagship (ours)', () => {
  const money = totalsOf(flagship, rates);
  test('materials, tax, direct cost, contingency and cost to the cent', () => {
    expect(money.byKind['material']).toBe(dollars(3087.1));
    expect(money.tax).toBe(dollars(216.1));
    expect(money.byKind['labour']).toBe(dollars(2625));
    expect(money.direct).toBe(dollars(7948.2));
    expect(money.contingency).toBe(dollars(476.89));
    expect(money.cost).toBe(dollars(8425.09));
  });
  test('the price that leaves 38 % is $13,588.85, a markup of 61.3 %', () => {
    expect(money.price).toBe(dollars(13_588.85));
    expect(money.marginBasisPoints).toBe(3800);
    expect(Math.round(money.markupBasisPoints / 10) / 10).toBe(61.3);
  });
  test('38 % taken for a markup would sell it at $11,626.62', () => {
    expect(money.priceAsMarkup).toBe(dollars(11_626.62));
    expect(money.lossAsMarkup).toBe(dollars(13_588.85 - 11_626.62));
  });
});

/** markup = m / (1 - m): 30 -> 42.9, 35 -> 53.8, 38 -> 61.3, 40 -> 66.7, 50 -> 100 (arithmetic). */
test.each([[3000, 42.9], [3500, 53.8], [3800, 61.3], [4000, 66.7], [5000, 100]])('a margin of %d basis points is a markup of %d percent', (margin, markup) => {
  const money = totalsOf([lump('material', 1_000_000)], { marginBasisPoints: margin, taxBasisPoints: 0, contingencyBasisPoints: 0 });
  expect(Math.abs(money.markupBasisPoints - markup * 100)).toBeLessThanOrEqual(5);
});

test('half goes up, once a line', () => {
  expect(halfUp(5n, 10n)).toBe(1n);
  expect(halfUp(4n, 10n)).toBe(0n);
  expect(halfUp(-5n, 10n)).toBe(0n);
  expect(halfUp(-6n, 10n)).toBe(-1n);
  expect(lineCost({ quantity: 1n, unitCost: 50_000n })).toBe(1n);
  expect(lineCost({ quantity: 1n, unitCost: 49_999n })).toBe(0n);
  expect(() => halfUp(1n, 0n)).toThrow(RangeError);
});

test('thousands of small lines lose no cent to a float', () => {
  const lines = Array.from({ length: 3000 }, () => ({ kind: 'material', quantity: 100n, unitCost: 1_000n, taxable: false }));
  expect(totalsOf(lines, { marginBasisPoints: 0, taxBasisPoints: 0, contingencyBasisPoints: 0 }).cost).toBe(3000n);
});

test('nothing costs nothing', () => {
  expect(totalsOf([], rates)).toMatchObject({ price: 0n, markupBasisPoints: 0, marginBasisPoints: 0 });
  expect(priceAtMargin(100n, 9500)).toBe(2000n);
});
