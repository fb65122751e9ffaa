import type { Quantity } from '@yardfall/calc';
import type { PriceLineInput } from '@yardfall/contracts';
import { halfUp } from './money.rules.ts';
import { tradeQuantity } from './units.rules.ts';

export const labourCode = 'labour.crew';

export interface ListItem {
  readonly code: string;
  readonly name: string;
  readonly kind: PriceLineInput['kind'];
  readonly unit: PriceLineInput['unit'];
  readonly unitCost: bigint;
  /** Crew hours of one unit, in 1/10,000 hour. */
  readonly hours: bigint;
  readonly taxable: boolean;
}

export interface SheetLine extends Omit<PriceLineInput, 'quantity' | 'unitCost'> {
  /** Thousandths. */
  readonly quantity: bigint;
  /** 1/100 cent. */
  readonly unitCost: bigint;
}

export interface LabourLine {
  readonly name: string;
  readonly rate: bigint;
}

interface Taken {
  readonly code: string;
  readonly unit: Quantity['unit'];
  amount: number;
  drawn: boolean;
}

/** The take-off of one revision against the price list: one line a code, and the labor that the lines bring with them. */
export function linesOf(quantities: readonly Quantity[], list: ReadonlyMap<string, ListItem>, labour: LabourLine): { lines: SheetLine[]; missing: string[] } {
  const lines: SheetLine[] = [];
  const missing: string[] = [];
  let hours = 0n;
  for (const taken of takeOff(quantities)) {
    const item = list.get(taken.code);
    const quantity = item === undefined ? null : tradeQuantity(taken.amount, taken.unit, item.unit);
    if (item === undefined || quantity === null) {
      missing.push(taken.code);
      continue;
    }
    hours += quantity * item.hours;
    lines.push({
      code: item.code, name: item.name, kind: item.kind, unit: item.unit, quantity, unitCost: item.unitCost, taxable: item.taxable,
      origin: taken.drawn ? 'drawing' : 'allowance', reason: null,
    });
  }
  if (hours > 0n) lines.push(labourLine(halfUp(hours, 10_000n), labour));
  return { lines, missing };
}

function labourLine(quantity: bigint, labour: LabourLine): SheetLine {
  return { code: labourCode, name: labour.name, kind: 'labour', unit: 'hour', quantity, unitCost: labour.rate, taxable: false, origin: 'drawing', reason: null };
}

/** Quantities by code and unit; what two parts need of the same is one line. Nothing is not a line. */
function takeOff(quantities: readonly Quantity[]): Taken[] {
  const byCode = new Map<string, Taken>();
  for (const { code, unit, amount, origin } of quantities) {
    if (amount === 0) continue;
    const key = `${code} ${unit}`;
    const taken = byCode.get(key) ?? { code, unit, amount: 0, drawn: false };
    taken.amount += amount;
    taken.drawn ||= origin === 'drawing';
    byCode.set(key, taken);
  }
  return [...byCode.values()];
}

/** Codes of the take-off for which the sheet has no line. */
export function missingCodes(quantities: readonly Quantity[], lines: readonly { readonly code: string }[]): string[] {
  const there = new Set(lines.map((line) => line.code));
  return [...new Set(takeOff(quantities).map((taken) => taken.code))].filter((code) => !there.has(code));
}

/** Crew labor is paid at the rate of the sheet, whatever the line was given. */
export function atSheetRate(line: SheetLine, rate: bigint): SheetLine {
  return line.code === labourCode ? { ...line, kind: 'labour', unit: 'hour', unitCost: rate } : line;
}
