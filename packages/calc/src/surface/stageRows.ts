import type { Stage } from './stage.ts';

/** Allowed difference of the frustum rule in one interval, as a share of its own volume, or of the whole volume; ours. */
const OF_INTERVAL = 5e-4;
const OF_WHOLE = 1e-5;
/** A row low down counts against this share of the whole volume rather than against next to nothing; ours. */
const LEAST_SHARE = 1e-3;

/** Volume between two stages by the frustum rule [m3]. */
const frustum = (from: Stage, to: Stage): number => ((to.level - from.level) / 3) * (from.area + to.area + Math.sqrt(from.area * to.area));

/** How far the frustum rule is from the exact volume between two stages [m3]. */
const missed = (from: Stage, to: Stage): number => Math.abs(frustum(from, to) - (to.volume - from.volume));

/**
 * Halves the intervals between rising levels until the frustum rule is near enough to the exact volume of each: within 0.05 % of its own or
 * 0.001 % of the whole. An interval of less than two steps is never halved.
 *
 * @param stagesOf exact stages at rising levels
 * @param whole    volume of the low spot [m3]
 */
export function refined(stagesOf: (levels: readonly number[]) => Stage[], knots: readonly number[], step: number, whole: number): Stage[] {
  for (let levels = knots; ;) {
    const stages = stagesOf(levels);
    const middles = stages.slice(1).flatMap((to, i) => {
      const from = stages[i]!;
      const isFar = missed(from, to) > Math.max(OF_INTERVAL * (to.volume - from.volume), OF_WHOLE * whole);
      return isFar && to.level - from.level >= 2 * step ? [(from.level + to.level) / 2] : [];
    });
    if (middles.length === 0) return stages;
    levels = [...levels, ...middles].sort((p, q) => p - q);
  }
}

/**
 * Leaves out rows until so many are left, each time the one without which the frustum rule misses least for the volume up to the next row.
 * The first and the last row stay.
 *
 * @param most  rows at most, 2 or more
 * @param whole volume of the low spot [m3]
 */
export function thinned(stages: readonly Stage[], most: number, whole: number): Stage[] {
  const rows = [...stages];
  const loss = (i: number): number => {
    const from = rows[i - 1];
    const to = rows[i + 1];
    return from === undefined || to === undefined ? Infinity : missed(from, to) / (to.volume + LEAST_SHARE * whole);
  };
  const losses = rows.map((_, i) => loss(i));
  while (rows.length > most) {
    const least = losses.reduce((best, value, i) => (value < losses[best]! ? i : best), 1);
    rows.splice(least, 1);
    losses.splice(least, 1);
    losses[least - 1] = loss(least - 1);
    losses[least] = loss(least);
  }
  return rows;
}
