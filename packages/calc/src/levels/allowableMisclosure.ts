import { requireNotNegative } from '../common/require.ts';

const MILE = 1609.344;

/**
 * Misclosure allowed for a run of a given length.
 *
 *   e = k * sqrt(L)
 *
 * @param length L, length of the run [m], >= 0
 * @param perRootMile k [m per square root of a mile]
 * @returns e [m]
 * Source: third-order levelling 0.05 ft*sqrt(miles), rough 0.1 ft*sqrt(miles): from memory
 * Checked against: fixtures/levels/levelling.json, row 1.5
 */
export function allowableMisclosure(length: number, perRootMile: number): number {
  requireNotNegative({ length, perRootMile });
  return perRootMile * Math.sqrt(length / MILE);
}
