import { GRAVITY, WATER_DENSITY } from '../common/constants.ts';
import { requireFinite, requireNotNegative, requirePositive } from '../common/require.ts';
import { basinArea } from './volumePerHeight.ts';

/** Plain concrete, 150 lb/ft3 [kg/m3]. Source: FM 5-428 and common tables. */
export const CONCRETE_DENSITY = 2402.77;

export interface BuriedBasin {
  readonly diameter: number;
  readonly floorLevel: number;
  readonly rimLevel: number;
  readonly collarVolume: number;
  readonly emptyMass: number;
}

export interface Flotation {
  /** Buoyant force on the empty basin [N]. */
  readonly uplift: number;
  /** Weight of basin and lid, and of the collar less what the water carries of it [N]. */
  readonly resistance: number;
  /** Resistance over uplift; null when no water stands above the floor. */
  readonly factor: number | null;
}

/**
 * Whether an empty basin floats in wet ground.
 *
 *   uplift = rho*g*A*(water - floor);  factor = (m*g + V_collar*(rho_c - rho)*g) / uplift
 *
 * @param basin size, collar, empty mass; the pump is not counted
 * @param waterLevel of the ground water; above the rim counts as at the rim
 * @returns forces [N] and factor
 * Limits: friction of the soil and the weight of backfill are not counted
 * Source: Archimedes; collar taken under water
 * Checked against: fixtures/basin/ternHollow.json, 510 lb and 919 lb, 1 lb
 */
export function flotation(basin: BuriedBasin, waterLevel: number): Flotation {
  requirePositive({ diameter: basin.diameter, height: basin.rimLevel - basin.floorLevel });
  requireNotNegative({ collarVolume: basin.collarVolume, emptyMass: basin.emptyMass });
  requireFinite({ waterLevel });
  const submerged = Math.max(0, Math.min(waterLevel, basin.rimLevel) - basin.floorLevel);
  const uplift = WATER_DENSITY * GRAVITY * basinArea(basin.diameter) * submerged;
  const resistance = GRAVITY * (basin.emptyMass + basin.collarVolume * (CONCRETE_DENSITY - WATER_DENSITY));
  return { uplift, resistance, factor: submerged === 0 ? null : resistance / uplift };
}

/** Collar [m3] that holds the basin down with a factor. Same source. */
export function collarFor(basin: Omit<BuriedBasin, 'collarVolume'>, waterLevel: number, factor: number): number {
  requirePositive({ factor });
  const { uplift } = flotation({ ...basin, collarVolume: 0 }, waterLevel);
  return Math.max(0, (factor * uplift) / GRAVITY - basin.emptyMass) / (CONCRETE_DENSITY - WATER_DENSITY);
}

/** Least factors: at the seasonal high water table, and with water at grade. Source: ours, after common practice for buried tanks. */
export const FLOTATION_AT_TABLE = 1.2;
export const FLOTATION_AT_GRADE = 1.1;

export interface FlotationCheck {
  readonly atTable: Flotation;
  readonly atGrade: Flotation;
  readonly holds: boolean;
}

/**
 * Both cases in which a basin must not float: ground water at its seasonal high, and water up to the rim. The pump is not counted.
 *
 * @param basin size, collar, empty mass
 * @param waterTable seasonal high level [m]; null when not known, which leaves the case at grade
 * @returns both answers, and whether both factors suffice
 * Source: as flotation
 * Checked against: the collar that just holds, on both sides, for each case
 */
export function flotationCheck(basin: BuriedBasin, waterTable: number | null): FlotationCheck {
  const atTable = flotation(basin, waterTable ?? basin.floorLevel);
  const atGrade = flotation(basin, basin.rimLevel);
  const enough = ({ factor }: Flotation, least: number): boolean => factor === null || factor >= least;
  return { atTable, atGrade, holds: enough(atTable, FLOTATION_AT_TABLE) && enough(atGrade, FLOTATION_AT_GRADE) };
}
