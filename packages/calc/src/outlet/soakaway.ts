import { CalcProblem } from '../common/problem.ts';
import { requireNotNegative, requirePositive } from '../common/require.ts';

export interface SoakawayStorm {
  readonly duration: number;
  /** Depth of rain [mm]. */
  readonly depth: number;
}

export interface SoakawayRow {
  readonly duration: number;
  readonly inflow: number;
  readonly outflow: number;
  readonly storage: number;
}

/**
 * Store that a soakaway needs, over storms of every duration.
 *
 *   I = A*R;  O = a_s50*f*D;  S = I - O
 *
 * @param area A, hard surface that drains to it [m2], > 0
 * @param storms depth R [mm] for each duration D [s]
 * @param wettedArea a_s50, sides at half the effective depth, base not counted [m2], > 0
 * @param infiltration f [m/s], > 0
 * @returns every storm [m3], the one that needs most, and the time to half empty that store [s]
 * Limits: half empty within 24 h; at least 5 m from buildings; bottom 1 m above ground water
 * Source: BRE Digest 365 type method
 * Checked against: fixtures/outlet/soakaway.json, rows 17.7 and 17.8, 0.01 m3
 */
export function soakaway(
  area: number, storms: readonly SoakawayStorm[], wettedArea: number, infiltration: number,
): { readonly rows: readonly SoakawayRow[]; readonly worst: SoakawayRow; readonly halfEmptyTime: number } {
  requirePositive({ area, wettedArea, infiltration });
  const rows = storms.map((storm, i) => {
    requirePositive({ [`storms/${i}/duration`]: storm.duration });
    requireNotNegative({ [`storms/${i}/depth`]: storm.depth });
    const inflow = (area * storm.depth) / 1000;
    const outflow = wettedArea * infiltration * storm.duration;
    return { duration: storm.duration, inflow, outflow, storage: inflow - outflow };
  });
  let worst = rows[0];
  if (worst === undefined) throw new CalcProblem('soakaway.noStorms', 'storms', {});
  for (const row of rows) if (row.storage > worst.storage) worst = row;
  return { rows, worst, halfEmptyTime: (0.5 * Math.max(worst.storage, 0)) / (wettedArea * infiltration) };
}

/** a_s50 of a rectangular trench [m2]: half the effective depth all around. Same source. */
export function halfWettedArea(length: number, width: number, effectiveDepth: number): number {
  requirePositive({ length, width, effectiveDepth });
  return (length + width) * effectiveDepth;
}

/** f from a soakage test [m/s]: V(75-25) / (a_p50 * t(75-25)). Same source. */
export function soakageRate(volume: number, meanWettedArea: number, time: number): number {
  requirePositive({ volume, meanWettedArea, time });
  return volume / (meanWettedArea * time);
}
