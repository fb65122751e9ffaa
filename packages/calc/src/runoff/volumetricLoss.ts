import { requireNotNegative, requireShare } from '../common/require.ts';

/**
 * Rain that runs off, block by block: the surface keeps its depression storage first,
 * then a fixed share of the rest runs off.
 *
 * @param rain depth of each block [mm]
 * @param coefficient share of rain that runs off once the surface is wet [-]
 * @param depressionStorage [mm]
 * @returns depth that runs off in each block [mm]
 * Source: FHWA HEC-22 chapter 3 for the volumetric coefficient; depression storage first: ours
 * Checked against: its own volume balance, exact
 */
export function volumetricLoss(rain: readonly number[], coefficient: number, depressionStorage: number): number[] {
  requireShare({ coefficient });
  requireNotNegative({ depressionStorage });
  let room = depressionStorage;
  return rain.map((depth) => {
    const kept = Math.min(room, depth);
    room -= kept;
    return (depth - kept) * coefficient;
  });
}
