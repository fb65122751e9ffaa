import { orient2d } from 'robust-predicates';

/**
 * On which side of the way from a to b the place c lies.
 *
 * @param places coordinates by number [m]
 * @returns above zero left, below zero right, zero on the line, with y upwards; the sign is exact
 * Source: library robust-predicates (Shewchuk 1997, Adaptive precision floating-point arithmetic); only + - * and Math.abs
 */
export function turn(places: { readonly x: readonly number[]; readonly y: readonly number[] }, a: number, b: number, c: number): number {
  const { x, y } = places;
  return -orient2d(x[a]!, y[a]!, x[b]!, y[b]!, x[c]!, y[c]!);
}
