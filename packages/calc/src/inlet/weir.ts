import { FOOT } from '../common/constants.ts';
import { requireNotNegative } from '../common/require.ts';

/** Turns a weir coefficient in feet and seconds into meters and seconds. */
const FROM_US = Math.sqrt(FOOT);

/** Edge of a grate: 3.0 in US units. Source: FHWA HEC-22, as in TxDOT equation 10-30. */
export const GRATE_WEIR = 3.0 * FROM_US;
/** Spill over a rim, US 3.0. Source: common practice, the form of FHWA HEC-22. */
export const SHARP_RIM_WEIR = 3.0 * FROM_US;
/** Rim of slab or close lawn, US 2.6, and of long grass, US 2.0. Source: ours. */
export const SLAB_RIM_WEIR = 2.6 * FROM_US;
export const GRASS_RIM_WEIR = 2.0 * FROM_US;

/**
 * Flow over a level edge.
 *
 *   Q = C * L * h^1.5
 *
 * @param coefficient C [m^0.5/s]
 * @param width  L [m]
 * @param head   h [m]
 * @returns Q [m3/s]
 * Source: FHWA HEC-22, sag grate as a weir
 * Checked against: fixtures/inlet/sagGrate.json
 */
export function weirFlow(coefficient: number, width: number, head: number): number {
  requireNotNegative({ coefficient, width, head });
  return coefficient * width * head * Math.sqrt(head);
}
