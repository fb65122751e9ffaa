import { requireNotNegative, requireShare } from '../common/require.ts';
import { afterDryStep, type Recovery } from './storeRecovery.ts';

/**
 * Rain that runs off, block by block: the surface keeps its depression storage first,
 * then a fixed share of the rest runs off.
 *
 * @param rain depth of each block [mm]
 * @param coefficient share of rain that runs off once the surface is wet [-]
 * @param depressionStorage [mm]
 * @param recovery how the storage empties in dry blocks; null for one storm
 * @returns depth that runs off in each block [mm]
 * Source: FHWA HEC-22 chapter 3 for the volumetric coefficient; depression storage first, and its emptying: ours, see storeRecovery
 * Checked against: its own volume balance, exact
 */
export function volumetricLoss(rain: readonly number[], coefficient: number, depressionStorage: number, recovery: Recovery | null = null): number[] {
  requireShare({ coefficient });
  requireNotNegative({ depressionStorage });
  let room = depressionStorage;
  let dry = 0;
  return rain.map((depth) => {
    if (depth === 0 && recovery !== null) {
      dry += recovery.step;
      room = depressionStorage - afterDryStep(depressionStorage - room, dry, recovery);
      return 0;
    }
    dry = 0;
    const kept = Math.min(room, depth);
    room -= kept;
    return (depth - kept) * coefficient;
  });
}
