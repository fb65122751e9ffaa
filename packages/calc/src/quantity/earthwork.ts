import { requireNotNegative, requirePositive } from '../common/require.ts';

/**
 * Loose volume of ground that lay in the bank.
 *
 *   V_loose = V_bank * (1 + swell)
 *
 * @param bank volume in place [m3], >= 0
 * @param swell [-], >= 0; 0.25 for common earth
 * @returns V_loose [m3]
 * Limits: swell is the soil's own; common earth 25 %, sand and gravel 11 to 15 %, clay 30 to 43 % (from memory)
 * Source: earthmoving handbooks; US Army table 10-1
 * Checked against: fixtures/quantity/earthwork.json, rows 19.5, 19.9, 19.10
 */
export function looseVolume(bank: number, swell: number): number {
  requireNotNegative({ bank, swell });
  return bank * (1 + swell);
}

/** Swell from two densities [-]: bank/loose - 1. Checked against: rows 19.7 and 19.8. */
export function swellOf(bankDensity: number, looseDensity: number): number {
  requirePositive({ bankDensity, looseDensity });
  return bankDensity / looseDensity - 1;
}

/** Bank volume in a loose one [-]: loose/bank density. Checked against: row 19.8. */
export function loadFactor(bankDensity: number, looseDensity: number): number {
  requirePositive({ bankDensity, looseDensity });
  return looseDensity / bankDensity;
}

/** What is lost when bank ground is compacted [-]: 1 - bank/compacted density. Checked against: row 19.8. */
export function shrinkageOf(bankDensity: number, compactedDensity: number): number {
  requirePositive({ bankDensity, compactedDensity });
  return 1 - bankDensity / compactedDensity;
}

/** Loads that haul a loose volume, whole trucks. Checked against: row 19.5. */
export function truckLoads(loose: number, truck: number): number {
  requireNotNegative({ loose });
  requirePositive({ truck });
  return Math.floor(loose / truck + 1 - 1e-9);
}
