import { requirePositive } from '../common/require.ts';

export interface HoseFlow {
  /** Mean of the fills [m3/s]. */
  readonly flow: number;
  /** Widest less narrowest flow, over the mean [-]. */
  readonly spread: number;
  /** Enough fills, and alike. */
  readonly good: boolean;
}

/** Fills that a hose is measured by, and how far they may differ. Source: common practice, no source. */
export const HOSE_LIMITS = { fills: 3, spread: 0.05 } as const;

/**
 * Flow of a hose by the time that it needs to fill a bucket.
 *
 *   q_i = V / t_i;  Q = mean of q_i;  spread = (max q_i - min q_i) / Q
 *
 * @param bucket V [m3], > 0
 * @param fills  t_i [s], each > 0
 * @returns flow, spread and whether it is good enough; null without a fill
 * Source: common practice, no source; a spigot gives 5 to 12 gpm
 * Checked against: a bucket of 5 gal in 40 s is 7.5 gpm, by hand
 */
export function hoseCalibration(bucket: number, fills: readonly number[]): HoseFlow | null {
  requirePositive({ bucket });
  fills.forEach((time, i) => requirePositive({ [`fills/${i}`]: time }));
  if (fills.length === 0) return null;
  const flows = fills.map((time) => bucket / time);
  const flow = flows.reduce((sum, one) => sum + one, 0) / flows.length;
  requirePositive({ flow });
  const spread = (Math.max(...flows) - Math.min(...flows)) / flow;
  return { flow, spread, good: fills.length >= HOSE_LIMITS.fills && spread <= HOSE_LIMITS.spread + 1e-12 };
}
