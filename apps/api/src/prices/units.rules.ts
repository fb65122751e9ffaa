import type { Quantity } from '@yardfall/calc';
import type { PriceLineInput } from '@yardfall/contracts';

type Unit = PriceLineInput['unit'];
type From = Quantity['unit'];

const foot = 0.3048;
/** Short ton by the international pound [kg]. */
const ton = 907.184_74;

/** SI amount of one trade unit. What is counted may be priced by the piece, the lump, the day or the hour. */
const sizes: Readonly<Record<From, Partial<Record<Unit, number>>>> = {
  m: { ft: foot },
  m2: { ft2: foot ** 2 },
  m3: { ft3: foot ** 3, yd3: (3 * foot) ** 3 },
  kg: { ton },
  bag80: { bag: 1 },
  cutMetreInch: { inchFoot: foot },
  each: { each: 1, lump: 1, day: 1, hour: 1, bag: 1 },
};

/** The amount in thousandths of the trade's unit, half up; null when the unit does not fit the quantity. */
export function tradeQuantity(amount: number, from: From, to: Unit): bigint | null {
  const size = sizes[from][to];
  if (size === undefined) return null;
  return thousandths(amount / size);
}

/** A number with three decimals as a whole number of thousandths. A float's dust below 1e-9 does not count. */
export function thousandths(value: number): bigint {
  return BigInt(Math.floor(Number((value * 1000 + 0.5).toPrecision(15))));
}

export function fromThousandths(value: bigint): string {
  const digits = value.toString().padStart(4, '0');
  return `${digits.slice(0, -3)}.${digits.slice(-3)}`;
}
