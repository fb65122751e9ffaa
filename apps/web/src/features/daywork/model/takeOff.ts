import type { Quantity } from '@yardfall/calc';

/** As it is bought and counted on site. */
export type GoodsUnit = 'ft' | 'ft2' | 'yd3' | 'each' | 'bag' | 'lb';

export interface Material {
  /** Of the take-off; its name is `prices.item.<code>`. */
  readonly code: string;
  readonly unit: GoodsUnit;
  /** What the design needs of it, in that unit. */
  readonly designed: number;
}

const foot = 0.3048;
const pound = 0.453_592_37;
const units: Readonly<Record<Quantity['unit'], { readonly unit: GoodsUnit; readonly size: number } | null>> = {
  m: { unit: 'ft', size: foot }, m2: { unit: 'ft2', size: foot ** 2 }, m3: { unit: 'yd3', size: (3 * foot) ** 3 }, each: { unit: 'each', size: 1 }, bag80: { unit: 'bag', size: 1 }, kg: { unit: 'lb', size: pound },
  cutMetreInch: null,
};

/** Work and papers of the take-off; nobody delivers them. */
const noGoods = /^(?:mobilization|siteProtection|locateTicket|permit|sawCut|slabBreak|excavation|spoilHaul|rubbleHaul|backfill|weepHole|swale|electrician|commissioning|asBuilt|handover)(?:\.|$)/;

/** The materials of a design as the crew names and counts them, each once; bags and pieces are whole. */
export function materialsOf(quantities: readonly Quantity[]): readonly Material[] {
  const all = new Map<string, Material>();
  for (const { code, amount, unit } of quantities) {
    const trade = units[unit];
    if (trade === null || amount <= 0 || noGoods.test(code)) continue;
    const known = all.get(`${code} ${trade.unit}`)?.designed ?? 0;
    all.set(`${code} ${trade.unit}`, { code, unit: trade.unit, designed: known + amount / trade.size });
  }
  return [...all.values()].map((one) => ({ ...one, designed: rounded(one) }));
}

function rounded({ unit, designed }: Material): number {
  if (unit === 'yd3') return Math.round(designed * 10) / 10;
  return unit === 'ft' || unit === 'ft2' || unit === 'lb' ? Math.round(designed) : Math.ceil(designed - 1e-9);
}

const steps: Readonly<Record<GoodsUnit, number>> = { ft: 5, ft2: 10, yd3: 0.5, each: 1, bag: 1, lb: 10 };

/** One press more or less, never below nothing. */
export function stepped(amount: number, unit: GoodsUnit, by: 1 | -1): number {
  return Math.max(0, Math.round((amount + by * steps[unit]) * 10) / 10);
}
