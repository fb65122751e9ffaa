import { requirePositive } from '../common/require.ts';

/**
 * Percolation rate of a test hole, time for the water to fall a given height.
 *
 *   rate = interval / drop
 *
 * @param interval of the last reading [s], > 0
 * @param drop of the water in it [m], > 0
 * @returns [s/m]
 * Limits: after the presoak, last of like readings; over 60 min/in a hole is taken as unsuitable by some codes
 * Source: US local codes of on-site systems (12 in presoak, 30-minute readings of 6 in of water)
 * Checked against: fixtures/outlet/pits.json, 80 and 12 min/in
 */
export function percolationRate(interval: number, drop: number): number {
  requirePositive({ interval, drop });
  return interval / drop;
}

/**
 * Infiltration rate of the soil from a percolation test in a round hole: the sides drink too.
 *
 *   f = drop*r / (interval*(r + 2*h_mean))
 *
 * @param radius r of the hole [m], > 0
 * @param startDepth water at the start of the interval [m], > drop
 * @param drop in the interval [m], > 0
 * @param interval [s], > 0
 * @returns f [m/s]
 * Limits: without gravel in the hole; design with half of it
 * Source: inverse borehole (Porchet) method, from memory
 * Checked against: water balance of the hole, exact by definition
 */
export function infiltrationFromHole(radius: number, startDepth: number, drop: number, interval: number): number {
  requirePositive({ radius, startDepth, drop, interval, left: startDepth - drop / 2 });
  return (drop * radius) / (interval * (radius + 2 * (startDepth - drop / 2)));
}
