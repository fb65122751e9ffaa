import { quantityCodes } from '@yardfall/calc';
import type { PriceItem } from '@yardfall/contracts';

/** The trade's unit for each unit of the take-off. */
const tradeUnit: Readonly<Record<string, PriceItem['unit']>> = { m: 'ft', m2: 'ft2', m3: 'yd3', kg: 'ton', bag80: 'bag', cutMetreInch: 'inchFoot', each: 'each' };

/** Quantities that a design can need and that the list does not price. */
export function unpriced(codes: readonly string[], items: readonly { readonly code: string }[]): readonly string[] {
  const there = new Set(items.map((item) => item.code));
  return codes.filter((code) => !there.has(code));
}

/** A price that is not on the list yet; it has no id until it is stored. */
export function emptyItem(code: string): PriceItem {
  return { id: '', code, name: '', kind: 'material', unit: tradeUnit[quantityCodes[code] ?? 'each'] ?? 'each', unitCost: 0, hoursPerUnit: 0, taxable: true, active: true };
}
