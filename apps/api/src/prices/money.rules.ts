/**
 * Money as the trade counts it: cents as bigint, unit costs in 1/100 cent, quantities in thousandths.
 * Every rounding is half up and happens once: each line, the tax on the sum of taxable lines, the contingency on the
 * sum of lines and tax, the price.
 */
export interface MoneyLine {
  readonly kind: string;
  /** Thousandths of the unit. */
  readonly quantity: bigint;
  /** 1/100 cent. */
  readonly unitCost: bigint;
  readonly taxable: boolean;
}

export interface MoneyRates {
  readonly marginBasisPoints: number;
  readonly taxBasisPoints: number;
  readonly contingencyBasisPoints: number;
}

export interface Money {
  readonly byKind: Readonly<Record<string, bigint>>;
  readonly lines: bigint;
  readonly tax: bigint;
  readonly direct: bigint;
  readonly contingency: bigint;
  readonly cost: bigint;
  readonly price: bigint;
  readonly margin: bigint;
  readonly marginBasisPoints: number;
  readonly markupBasisPoints: number;
  readonly priceAsMarkup: bigint;
  readonly lossAsMarkup: bigint;
}

const whole = 10_000n;

/** numerator / denominator to the nearest whole, a half going up. */
export function halfUp(numerator: bigint, denominator: bigint): bigint {
  if (denominator <= 0n) throw new RangeError('the denominator must be positive');
  const doubled = 2n * numerator + denominator;
  const quotient = doubled / (2n * denominator);
  return doubled < 0n && doubled % (2n * denominator) !== 0n ? quotient - 1n : quotient;
}

/** Cents of one line. */
export function lineCost(line: Pick<MoneyLine, 'quantity' | 'unitCost'>): bigint {
  return halfUp(line.quantity * line.unitCost, 100_000n);
}

/** Price that leaves the margin: cost / (1 - margin). */
export function priceAtMargin(cost: bigint, marginBasisPoints: number): bigint {
  return halfUp(cost * whole, whole - BigInt(marginBasisPoints));
}

export function totalsOf(lines: readonly MoneyLine[], rates: MoneyRates): Money {
  const byKind: Record<string, bigint> = {};
  let sum = 0n;
  let taxable = 0n;
  for (const line of lines) {
    const cost = lineCost(line);
    byKind[line.kind] = (byKind[line.kind] ?? 0n) + cost;
    sum += cost;
    if (line.taxable) taxable += cost;
  }
  const tax = share(taxable, rates.taxBasisPoints);
  const direct = sum + tax;
  const contingency = share(direct, rates.contingencyBasisPoints);
  const cost = direct + contingency;
  const price = priceAtMargin(cost, rates.marginBasisPoints);
  const priceAsMarkup = halfUp(cost * (whole + BigInt(rates.marginBasisPoints)), whole);
  return {
    byKind, lines: sum, tax, direct, contingency, cost, price, margin: price - cost,
    marginBasisPoints: price === 0n ? 0 : Number(halfUp((price - cost) * whole, price)),
    markupBasisPoints: cost === 0n ? 0 : Number(halfUp((price - cost) * whole, cost)),
    priceAsMarkup, lossAsMarkup: price - priceAsMarkup,
  };
}

function share(amount: bigint, basisPoints: number): bigint {
  return halfUp(amount * BigInt(basisPoints), whole);
}
