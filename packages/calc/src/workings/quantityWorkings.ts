import type { Working, WorkingSymbol } from '../results/results.ts';
import { quantitySheets, type QuantitySheet } from './quantitySheets.ts';
import { symbol, working, type WorkingInput } from './working.ts';

const near = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(b));

/** A count that the drawing or the custom of the job gives: one a part, one a job, or as many as are drawn. */
const counted = (amount: number): QuantitySheet => ({ formula: 'n', symbols: [symbol('n', 'counted', amount, 'count')], value: amount });

/** Every line of the take-off. Lines of one code and part are told apart by their amount. */
export function quantityWorkings({ document, results }: WorkingInput): Working[] {
  return results.quantities.map((item, index) => {
    const sheet = quantitySheets(document, item.code, item.part).find(({ value }) => near(value, item.amount)) ?? counted(item.amount);
    const symbols: readonly WorkingSymbol[] = sheet.symbols;
    return working({
      result: `/results/quantities/${index}/amount`, at: item.part, formula: `n_q = ${sheet.formula}`, symbols, value: item.amount, unit: unitOf[item.unit],
      source: item.origin === 'drawing' ? 'Geometry of the drawing; waste and swell by common practice' : 'Goes with every job; ours', tolerance: 1e-6,
    });
  });
}

const unitOf = { m: 'length', m2: 'area', m3: 'bulk', each: 'count', kg: 'mass', bag80: 'count', cutMetreInch: 'number' } as const;
