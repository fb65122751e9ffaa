import type { FlowAt } from './flowAt.ts';
import type { WellStore } from './model.ts';

/**
 * Water that a dry well or trench gives to the soil [m3/s].
 *
 *   Q = f * (A + P*d)
 *
 * @param well  plan area A [m2], perimeter P [m], top of the stone [m], design rate f [m/s]
 * @param level of the water in it [m]; d is its depth, no more than that of the stone
 * @param out   flow with its slope
 * Limits: saturated soil at unit gradient; the rate is already divided by its safety factor; not below a water table
 * Source: Darcy at unit gradient, wetted base and sides, BRE Digest 365 type method
 */
export function seepageAt(well: WellStore, level: number, out: FlowAt): void {
  const { bottom } = well.storage;
  const side = level < well.topLevel;
  const depth = (side ? level : well.topLevel) - bottom;
  out.set(well.rate * (well.area + well.perimeter * (depth > 0 ? depth : 0)), side && depth > 0 ? well.rate * well.perimeter : 0, 0);
}
