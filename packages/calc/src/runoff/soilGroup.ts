import { HOUR, INCH } from '../common/constants.ts';
import { requireNotNegative } from '../common/require.ts';

export type SoilGroup = 'A' | 'B' | 'C' | 'D';
export type SoilTexture =
  | 'sand' | 'loamySand' | 'sandyLoam' | 'loam' | 'siltLoam' | 'sandyClayLoam' | 'clayLoam' | 'siltyClayLoam' | 'sandyClay' | 'siltyClay' | 'clay';

const inchPerHour = INCH / HOUR;
/** Transmission rates at which the groups part, A over the first. Source: TR-55 (1986) appendix A: 0.30, 0.15, 0.05 in/h. */
const LEAST_RATE: readonly (readonly [SoilGroup, number])[] = [['A', 0.3 * inchPerHour], ['B', 0.15 * inchPerHour], ['C', 0.05 * inchPerHour]];
const ROUNDING = 1e-12;

/** Source: TR-55 (1986) appendix A, texture classes of disturbed soils. */
const BY_TEXTURE: Readonly<Record<SoilTexture, SoilGroup>> = {
  sand: 'A', loamySand: 'A', sandyLoam: 'A', siltLoam: 'B', loam: 'B', sandyClayLoam: 'C',
  clayLoam: 'D', siltyClayLoam: 'D', sandyClay: 'D', siltyClay: 'D', clay: 'D',
};

/** A water table nearer than this makes any soil group D: 24 in [m]. Source: NEH 630 chapter 7. */
export const HIGH_WATER_TABLE = 24 * INCH;

/**
 * Hydrologic soil group from the rate at which a wet soil takes water.
 *
 *   A over 0.30, B 0.15 to 0.30, C 0.05 to 0.15, D under 0.05 in/h
 *
 * @param rate of transmission [m/s], >= 0
 * @returns group; a rate on the line counts to the wetter group
 * Source: TR-55 (1986), appendix A
 * Checked against: fixtures/runoff/soilGroups.json, row 5.7
 */
export function soilGroupOfRate(rate: number): SoilGroup {
  requireNotNegative({ rate });
  for (const [group, least] of LEAST_RATE) if (rate > least * (1 + ROUNDING)) return group;
  return 'D';
}

/** Group by texture of disturbed soil. Source: TR-55 (1986), appendix A. Checked against: row 5.7. */
export function soilGroupOfTexture(texture: SoilTexture): SoilGroup {
  return BY_TEXTURE[texture];
}

/**
 * Group when the seasonal high water table is counted: within 24 in of the surface a soil is group D.
 *
 * @param group of the soil itself
 * @param depthToWater below the surface [m]; null when not known
 * Source: NEH 630 chapter 7, from memory
 * Checked against: the rule on both sides of 24 in
 */
export function withWaterTable(group: SoilGroup, depthToWater: number | null): SoilGroup {
  if (depthToWater === null) return group;
  requireNotNegative({ depthToWater });
  return depthToWater < HIGH_WATER_TABLE ? 'D' : group;
}
