import type { Evaluation } from '@yardfall/calc';
import type { PriceItem, PriceLine, PriceSheet, PriceTotals } from '@yardfall/contracts';
import type { PriceItem as ItemRow, PriceLine as LineRow, Prisma } from '../generated/prisma/client.ts';
import { type Money, totalsOf } from './money.rules.ts';
import { type ListItem, missingCodes, type SheetLine } from './sheet.rules.ts';
import { thousandths } from './units.rules.ts';

export const sheetParts = {
  priceLines_sheet: { orderBy: { position: 'asc' } },
  revision: { select: { number: true, evaluation: true, design: { select: { name: true } } } },
} satisfies Prisma.PriceSheetInclude;
export type SheetRecord = Prisma.PriceSheetGetPayload<{ include: typeof sheetParts }>;

export function presentItem(row: ItemRow): PriceItem {
  return {
    id: row.id, code: row.code, name: row.name, kind: row.kind as PriceItem['kind'], unit: row.unit as PriceItem['unit'], unitCost: Number(row.unitCost),
    hoursPerUnit: row.hoursPerUnit.toNumber(), taxable: row.taxable, active: row.active,
  };
}

export function listItemOf(row: ItemRow): ListItem {
  const hours = BigInt(row.hoursPerUnit.times(10_000).toFixed(0));
  return { code: row.code, name: row.name, kind: row.kind as ListItem['kind'], unit: row.unit as ListItem['unit'], unitCost: row.unitCost, hours, taxable: row.taxable };
}

export function sheetLineOf(row: LineRow): SheetLine {
  return {
    code: row.code, name: row.name, kind: row.kind as SheetLine['kind'], unit: row.unit as SheetLine['unit'], quantity: BigInt(row.quantity.times(1000).toFixed(0)),
    unitCost: row.unitCost, taxable: row.taxable, origin: row.origin as SheetLine['origin'], reason: row.reason,
  };
}

export function quantitiesOf(evaluation: Uint8Array | null): Evaluation['results']['quantities'] {
  return evaluation === null ? [] : (JSON.parse(Buffer.from(evaluation).toString('utf8')) as Evaluation).results.quantities;
}

/** Amounts are worked out from the lines at every reading; the stored cost of a line is what they are held against. */
export function presentSheet(row: SheetRecord): PriceSheet {
  const money = totalsOf(row.priceLines_sheet.map(sheetLineOf), row);
  return {
    id: row.id, jobId: row.jobId, revisionId: row.revisionId, revisionNumber: row.revision.number, designName: row.revision.design.name, status: row.status as PriceSheet['status'],
    marginBasisPoints: row.marginBasisPoints, taxBasisPoints: row.taxBasisPoints, contingencyBasisPoints: row.contingencyBasisPoints, labourRate: Number(row.labourRate),
    lines: row.priceLines_sheet.map(presentLine), totals: presentTotals(money), missing: missingCodes(quantitiesOf(row.revision.evaluation), row.priceLines_sheet),
    version: row.version, createdAt: row.createdAt.toISOString(), frozenAt: row.frozenAt?.toISOString() ?? null,
  };
}

function presentLine(row: LineRow): PriceLine {
  const { quantity, unitCost, ...line } = sheetLineOf(row);
  return { id: row.id, position: row.position, ...line, quantity: row.quantity.toNumber(), unitCost: Number(unitCost), cost: Number(row.cost) };
}

export function presentTotals(money: Money): PriceTotals {
  const byKind = Object.fromEntries(Object.entries(money.byKind).map(([kind, cents]) => [kind, Number(cents)]));
  const { lines, tax, direct, contingency, cost, price, margin, priceAsMarkup, lossAsMarkup } = money;
  return {
    byKind, lines: Number(lines), tax: Number(tax), direct: Number(direct), contingency: Number(contingency), cost: Number(cost), price: Number(price), margin: Number(margin),
    marginBasisPoints: money.marginBasisPoints, markupBasisPoints: money.markupBasisPoints, priceAsMarkup: Number(priceAsMarkup), lossAsMarkup: Number(lossAsMarkup),
  };
}

export function lineFromInput(input: Omit<SheetLine, 'quantity' | 'unitCost'> & { quantity: number; unitCost: number }): SheetLine {
  return { ...input, quantity: thousandths(input.quantity), unitCost: BigInt(input.unitCost) };
}
