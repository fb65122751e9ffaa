import { type Choice, type CostIndex, evaluate, type DesignDocument, OptionSpace, type Quantity } from '@yardfall/calc';
import { lineCost } from '../prices/money.rules.ts';
import { type LabourLine, linesOf, type ListItem } from '../prices/sheet.rules.ts';
import { tradeQuantity } from '../prices/units.rules.ts';
import type { Bought } from './options.rules.ts';

export interface PriceList {
  readonly items: ReadonlyMap<string, ListItem>;
  readonly labour: LabourLine;
}

/** Costs of the alternatives in cents of direct cost, without tax, contingency and margin; or an order, one step for each alternative, where a price is missing. */
export interface OptionCost {
  readonly kind: 'money' | 'order';
  readonly index: CostIndex;
  /** Codes of the take-off, or of the price list, that have no price. */
  readonly unpriced: readonly string[];
}

const quantitiesOf = (document: DesignDocument): readonly Quantity[] => evaluate(document, { band: false, workings: false }).results.quantities;

/** What each alternative costs more than what is drawn, by the take-off of the design with it alone. */
export function optionCost(document: DesignDocument, choices: readonly Choice[], bought: readonly Bought[], list: PriceList): OptionCost {
  const unpriced = new Set<string>();
  const priceOf = (of: DesignDocument, own: readonly Bought[]): bigint => {
    const quantities = quantitiesOf(of);
    const replaced = quantities.filter(({ code, part }) => own.some((one) => one.part === part && code.startsWith(one.instead)));
    const { lines, missing } = linesOf(quantities.filter((quantity) => !replaced.includes(quantity)), list.items, list.labour);
    for (const code of missing) unpriced.add(code);
    return replaced.reduce((sum, quantity) => sum + boughtCost(quantity, own, list, unpriced), lines.reduce((sum, line) => sum + lineCost(line), 0n));
  };
  const asDrawn = bought.filter(({ alternative }) => alternative === 'drawn');
  const base = priceOf(document, asDrawn);
  const alternatives = Object.fromEntries(choices.map((choice, at) => [choice.id, Object.fromEntries(choice.alternatives.map((alternative, digit) => {
    const space = new OptionSpace(document, [choice], { base: 0, alternatives: { [choice.id]: Object.fromEntries(choice.alternatives.map(({ id }) => [id, 0])) } });
    const own = [...asDrawn.filter((one) => one.choice !== choice.id), ...bought.filter((one) => one.choice === choice.id && one.alternative === alternative.id)];
    return [alternative.id, digit === 0 && choices[at]?.kind !== 'diversion' ? 0 : Number(priceOf(space.documentOf([digit]), own) - base)];
  }))]));
  if (unpriced.size === 0) return { kind: 'money', index: { base: Number(base), alternatives }, unpriced: [] };
  const order = Object.fromEntries(choices.map((choice) => [choice.id, Object.fromEntries(choice.alternatives.map((one, step) => [one.id, step]))]));
  return { kind: 'order', index: { base: 0, alternatives: order }, unpriced: [...unpriced] };
}

function boughtCost({ amount, code, part, unit }: Quantity, own: readonly Bought[], { items }: PriceList, unpriced: Set<string>): bigint {
  const priceCode = own.find((one) => one.part === part && code.startsWith(one.instead))?.priceCode ?? code;
  const item = items.get(priceCode);
  const quantity = item === undefined ? null : tradeQuantity(amount, unit, item.unit);
  if (item === undefined || quantity === null) {
    unpriced.add(priceCode);
    return 0n;
  }
  return lineCost({ quantity, unitCost: item.unitCost });
}
