/**
 * How much is tried: the few cases of every test run, or the many of `npm run soak`, which sets YARDFALL_SOAK to `part/parts`
 * in each of its processes, with `@n` behind it when the first n cases are known and passed over. YARDFALL_SEED runs one single case again. This file alone reads both.
 */
const asked = /^(\d+)\/(\d+)(?:@(\d+))?$/.exec(process.env['YARDFALL_SOAK'] ?? '');
const part = asked === null ? 1 : Number(asked[1]);
const parts = asked === null ? 1 : Number(asked[2]);
const known = Number(asked?.[3] ?? 0);
const single = process.env['YARDFALL_SEED'];

export const isSoak = asked !== null;

/** Cases of this process: `ci` of them in a plain test run, its share of `full` in a soak. */
function soakCount(ci: number, full: number): number {
  return isSoak ? Math.floor((full + parts - 1) / parts) : ci;
}

/** A seed that is the same in every plain run, and another one in each process of a soak. */
const soakSeed = (seed: number): number => seed + (part - 1) * 1_000_003;

/** Seeds of generated cases in this process; one after YARDFALL_SEED=n. */
export function seedsOf(first: number, ci: number, full: number): number[] {
  if (single !== undefined) return [Number(single)];
  const start = soakSeed(first);
  return Array.from({ length: soakCount(ci, full) }, (_, i) => start + i).slice(known);
}

/** Whether all cases run, so that their shares mean something. */
export const isWhole = single === undefined;
