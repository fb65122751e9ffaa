import { z } from 'zod';
import { Cents, finite, Id, Instant, JobParams, text } from './common.ts';
import { endpoint } from './endpoint.ts';

export const PriceKind = z.enum(['material', 'labour', 'equipment', 'subcontract', 'permit', 'disposal']).meta({ id: 'PriceKind' });
export const PriceUnit = z.enum(['ft', 'ft2', 'ft3', 'yd3', 'each', 'bag', 'hour', 'day', 'lump', 'inchFoot', 'ton']).meta({ id: 'PriceUnit' });
/** Unit cost in 1/100 of a cent. */
export const UnitCost = z.number().int().min(0).max(1e12).meta({ id: 'UnitCost' });
/** Quantity with three decimals. */
const Amount = finite(0, 1e7);
const BasisPoints = (max: number) => z.number().int().min(0).max(max);

export const PriceItem = z
  .object({
    id: Id, code: z.string(), name: z.string(), kind: PriceKind, unit: PriceUnit, unitCost: UnitCost,
    /** Crew hours that one unit takes; a design line brings its labor with it. */
    hoursPerUnit: z.number(), taxable: z.boolean(), active: z.boolean(),
  })
  .meta({ id: 'PriceItem' });
export type PriceItem = z.infer<typeof PriceItem>;

export const PriceLineInput = z
  .strictObject({
    code: text(60, 1), name: text(160, 1), kind: PriceKind, unit: PriceUnit, quantity: Amount, unitCost: UnitCost, taxable: z.boolean(),
    origin: z.enum(['drawing', 'allowance', 'override']), reason: text(300).nullable(),
  })
  .meta({ id: 'PriceLineInput' });
export type PriceLineInput = z.infer<typeof PriceLineInput>;
export const PriceLine = PriceLineInput.extend({ id: Id, position: z.number().int(), cost: Cents }).meta({ id: 'PriceLine' });
export type PriceLine = z.infer<typeof PriceLine>;

export const PriceTotals = z
  .object({
    byKind: z.record(z.string(), Cents), lines: Cents, tax: Cents, direct: Cents, contingency: Cents, cost: Cents, price: Cents, margin: Cents,
    marginBasisPoints: z.number().int(), markupBasisPoints: z.number().int(),
    /** What the price would be if the margin were taken for a markup by mistake, and the loss. */
    priceAsMarkup: Cents, lossAsMarkup: Cents,
  })
  .meta({ id: 'PriceTotals' });
export type PriceTotals = z.infer<typeof PriceTotals>;

const rates = {
  marginBasisPoints: BasisPoints(9500), taxBasisPoints: BasisPoints(3000), contingencyBasisPoints: BasisPoints(5000), labourRate: UnitCost,
};
export const PriceSheet = z
  .object({
    id: Id, jobId: Id, revisionId: Id, revisionNumber: z.number().int(), designName: z.string(), status: z.enum(['draft', 'frozen']), ...rates,
    lines: z.array(PriceLine), totals: PriceTotals, missing: z.array(z.string()), version: z.number().int(), createdAt: Instant, frozenAt: Instant.nullable(),
  })
  .meta({ id: 'PriceSheet' });
export type PriceSheet = z.infer<typeof PriceSheet>;

const SheetParams = z.strictObject({ jobId: Id, sheetId: Id });

export const prices = {
  items: endpoint({
    id: 'prices.items', method: 'GET', path: '/price-items', summary: 'The price list of the company',
    access: { permission: 'prices.read' }, status: 200, params: null, query: null, body: null, response: z.object({ items: z.array(PriceItem) }),
  }),
  saveItem: endpoint({
    id: 'prices.saveItem', method: 'PUT', path: '/price-items/:code', summary: 'Add or change a line of the price list',
    access: { permission: 'prices.edit' }, status: 200, params: z.strictObject({ code: text(60, 1) }), query: null,
    body: z.strictObject({ name: text(160, 1), kind: PriceKind, unit: PriceUnit, unitCost: UnitCost, hoursPerUnit: finite(0, 1000), taxable: z.boolean(), active: z.boolean() }),
    response: PriceItem,
  }),
  list: endpoint({
    id: 'prices.list', method: 'GET', path: '/jobs/:jobId/price-sheets', summary: 'Price sheets of a job, newest first',
    access: { permission: 'prices.read' }, status: 200, params: JobParams, query: null, body: null, response: z.object({ items: z.array(PriceSheet) }), errors: ['notFound'],
  }),
  create: endpoint({
    id: 'prices.create', method: 'POST', path: '/jobs/:jobId/price-sheets', summary: 'Price a revision: its quantities meet the price list',
    access: { permission: 'prices.edit' }, status: 201, params: JobParams, query: null, body: z.strictObject({ revisionId: Id }), response: PriceSheet, concurrency: 'etag',
    errors: ['notFound', 'conflict.state'],
  }),
  replace: endpoint({
    id: 'prices.replace', method: 'PUT', path: '/jobs/:jobId/price-sheets/:sheetId', summary: 'Store lines and rates; the service computes every amount',
    access: { permission: 'prices.edit' }, status: 200, params: SheetParams, query: null,
    body: z.strictObject({ ...rates, lines: z.array(PriceLineInput).max(300) }), response: PriceSheet, concurrency: 'ifMatch',
    errors: ['notFound', 'conflict.state', 'conflict.stale', 'conflict.preconditionRequired'],
  }),
};
