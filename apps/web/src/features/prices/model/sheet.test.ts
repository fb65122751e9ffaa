import { quantityCodes } from '@yardfall/calc';
import type { Design, PriceSheet } from '@yardfall/contracts';
import { isMessageCode } from '@yardfall/text';
import { describe, expect, test } from 'vitest';
import { basisPointsOf, bodyOf, byKind, changedLine, editedSheet, emptyLine, freeCode, issuedRevisions, labourCode, percentOf, withLine, withoutLine, withRates } from './sheet.ts';

const line = (code: string, kind: 'material' | 'labour', over: object = {}) => ({
  id: `id ${code}`, position: 0, code, name: code, kind, unit: 'each' as const, quantity: 2, unitCost: 10_000, taxable: true, origin: 'drawing' as const, reason: null, cost: 200, ...over,
});
const sheet = {
  marginBasisPoints: 3800, taxBasisPoints: 700, contingencyBasisPoints: 600, labourRate: 420_000,
  lines: [line(labourCode, 'labour'), line('pump', 'material'), line('allowance.1', 'material', { origin: 'allowance' })],
} as unknown as PriceSheet;
const edited = editedSheet(sheet);
const [labour, pump, allowance] = edited.lines;
if (!labour || !pump || !allowance) throw new Error('three lines');

describe('a price sheet on the screen', () => {
  test('goes back to the office as it came', () => {
    expect(bodyOf(edited)).toEqual({
      marginBasisPoints: 3800, taxBasisPoints: 700, contingencyBasisPoints: 600, labourRate: 420_000,
      lines: sheet.lines.map(({ id: _, position: __, cost: ___, ...rest }) => rest),
    });
  });

  test('marks a changed figure of the drawing as changed, with its reason and without a cost', () => {
    expect(changedLine(pump, { ...pump, quantity: 3, reason: 'a spare' })).toMatchObject({ origin: 'override', reason: 'a spare', cost: null, key: pump.key });
  });

  test('keeps the origin when only the name changes, and of an allowance always', () => {
    expect(changedLine(pump, { ...pump, name: 'Other' })).toMatchObject({ origin: 'drawing', cost: 200, reason: null });
    expect(changedLine(allowance, { ...allowance, quantity: 5 })).toMatchObject({ origin: 'allowance', reason: null, cost: null });
  });

  test('adds, changes and removes a line', () => {
    const more = withLine(edited, emptyLine('own.1', 'Stump', 'allowance'));
    expect(more.lines.map((each) => each.code)).toEqual([labourCode, 'pump', 'allowance.1', 'own.1']);
    expect(withLine(more, { ...pump, quantity: 9 }).lines[1]?.quantity).toBe(9);
    expect(withoutLine(more, pump.key).lines.map((each) => each.code)).toEqual([labourCode, 'allowance.1', 'own.1']);
    expect(freeCode(more.lines)).toBe('own.2');
  });

  test('shows a new rate in the line of the crew only', () => {
    const raised = withRates(edited, { ...edited.rates, labourRate: 480_000 });
    expect(raised.lines.map((each) => [each.code, each.unitCost, each.cost])).toEqual([[labourCode, 480_000, null], ['pump', 10_000, 200], ['allowance.1', 10_000, 200]]);
  });

  test('stands in the order of the kinds', () => {
    expect(byKind(edited.lines).map((group) => [group.kind, group.lines.length])).toEqual([['material', 2], ['labour', 1]]);
  });

  test('turns percentages and basis points into each other within bounds', () => {
    expect(percentOf(6129)).toBe(61.3);
    expect(basisPointsOf(38, 9500)).toBe(3800);
    expect(basisPointsOf(99, 9500)).toBe(9500);
    expect(basisPointsOf(null, 9500)).toBe(0);
  });
});

test('only issued revisions are priced, the newest first', () => {
  const revision = (id: string, status: string, issuedAt: string | null) => ({ id, status, issuedAt });
  const designs = [
    { revisions: [revision('a', 'issued', '2031-03-04T10:00:00Z'), revision('b', 'draft', null)] },
    { revisions: [revision('c', 'issued', '2031-03-05T10:00:00Z'), revision('d', 'superseded', '2031-03-01T10:00:00Z')] },
  ] as unknown as Design[];
  expect(issuedRevisions(designs).map(({ id }) => id)).toEqual(['c', 'a']);
});

test('every quantity of a take-off has a name', () => {
  expect(Object.keys(quantityCodes).filter((code) => !isMessageCode(`prices.item.${code}`))).toEqual([]);
});
