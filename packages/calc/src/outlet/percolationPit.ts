import { log } from '../math/log.ts';
import { requireFinite, requireNotNegative, requirePositive, requireShare } from '../common/require.ts';

export interface PercolationPit {
  readonly area: number;
  /** Length of the sides around the pit [m]. */
  readonly perimeter: number;
  /** Depth of stone below the tee [m]. */
  readonly depth: number;
  readonly voids: number;
  readonly bottomLevel: number;
}

export interface PitResult {
  /** Water that the stone holds [m3], and its share of the line's content [-]. */
  readonly volume: number;
  readonly share: number;
  readonly holdsLine: boolean;
  /** Height of the bottom over the seasonal high water table [m]; null when that is not known. */
  readonly aboveWaterTable: number | null;
  /** Time until a full pit is empty [s]; null without an infiltration rate. */
  readonly timeToEmpty: number | null;
}

/**
 * Stone pit under the tee at the end of a discharge line: it takes what stands in the line, not the storm.
 *
 *   V = n*A*d;  time through base and sides that wet the stone: t = (n*A/(f*p)) * ln(1 + p*d/A)
 *
 * @param pit size, voids, bottom level
 * @param lineVolume content of the line [m3], > 0
 * @param infiltration f, measured and halved [m/s]; null when not tested
 * @param waterTable seasonal high level [m]; null when not known
 * @returns what it holds and when it is empty again
 * Limits: below the water table it holds nothing, whatever the stone
 * Source: water balance dh/dt = -f*(A + p*h)/(n*A), integrated; void share of clean stone 0.4, common practice
 * Checked against: fixtures/outlet/pits.json, 12.5 gal and 7.9 gal of the demo site; the integral by small steps
 */
export function percolationPit(pit: PercolationPit, lineVolume: number, infiltration: number | null, waterTable: number | null): PitResult {
  requirePositive({ area: pit.area, perimeter: pit.perimeter, voids: pit.voids, lineVolume });
  requireShare({ voids: pit.voids });
  requireNotNegative({ depth: pit.depth });
  requireFinite({ bottomLevel: pit.bottomLevel });
  const dry = waterTable === null ? pit.depth : Math.max(0, pit.depth - Math.max(0, waterTable - pit.bottomLevel));
  const volume = pit.voids * pit.area * dry;
  return {
    volume, share: volume / lineVolume, holdsLine: volume >= lineVolume,
    aboveWaterTable: waterTable === null ? null : pit.bottomLevel - waterTable,
    timeToEmpty: infiltration === null ? null : emptyingTime(pit, dry, infiltration),
  };
}

function emptyingTime(pit: PercolationPit, depth: number, infiltration: number): number {
  requirePositive({ infiltration });
  return ((pit.voids * pit.area) / (infiltration * pit.perimeter)) * log(1 + (pit.perimeter * depth) / pit.area);
}
