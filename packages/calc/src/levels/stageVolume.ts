import { CalcProblem } from '../common/problem.ts';
import { at, requireFinite, requireNotNegative } from '../common/require.ts';
import type { StageArea } from '../document/document.ts';
import { cbrt } from '../math/cbrt.ts';

/** Stage-area pairs made ready for the routing loop. */
export interface StageCurve {
  readonly levels: readonly number[];
  /** Square roots of the areas: they vary in a straight line between two levels. */
  readonly roots: readonly number[];
  readonly volumes: readonly number[];
}

const SAME_AREA = 1e-9;

function frustum(height: number, root1: number, root2: number): number {
  return (height / 3) * (root1 * root1 + root1 * root2 + root2 * root2);
}

/**
 * Stage-volume curve from stage-area pairs by the frustum rule.
 *
 *   V = h/3 * (A1 + A2 + sqrt(A1*A2))
 *
 * @param pairs rising levels [m] with water-surface areas [m2], at least two, not shrinking with height
 * @returns curve for volumeAtLevel, levelAtVolume, areaAtLevel
 * Limits: below the first level empty; above the last one the area stays as it is there
 * Source: volume of a frustum, geometry
 * Checked against: fixtures/levels/ternHollow.json, row stage: 650 gal to the sill
 */
export function stageCurve(pairs: readonly StageArea[]): StageCurve {
  if (pairs.length < 2) throw new CalcProblem('stage.tooFewPairs', 'stageArea', { count: pairs.length });
  const levels: number[] = [];
  const roots: number[] = [];
  const volumes: number[] = [];
  pairs.forEach((pair, i) => {
    requireFinite({ [`stageArea/${i}/level`]: pair.level });
    requireNotNegative({ [`stageArea/${i}/area`]: pair.area });
    const root = Math.sqrt(pair.area);
    if (i === 0) volumes.push(0);
    else {
      const height = pair.level - at(levels, i - 1);
      if (height <= 0) throw new CalcProblem('stage.notRising', `stageArea/${i}/level`, { level: pair.level });
      if (root < at(roots, i - 1)) throw new CalcProblem('stage.areaShrinks', `stageArea/${i}/area`, { area: pair.area });
      volumes.push(at(volumes, i - 1) + frustum(height, at(roots, i - 1), root));
    }
    levels.push(pair.level);
    roots.push(root);
  });
  if (at(roots, roots.length - 1) === 0) throw new CalcProblem('stage.noArea', 'stageArea', {});
  return { levels, roots, volumes };
}

/** Index of the interval that holds a value of a rising list; the last interval for anything above it. */
function intervalOf(list: readonly number[], value: number): number {
  let i = list.length - 1;
  while (i > 0 && at(list, i) > value) i -= 1;
  return i;
}

function rootAt(curve: StageCurve, i: number, level: number): number {
  const next = curve.levels[i + 1];
  const root = at(curve.roots, i);
  if (next === undefined) return root;
  const base = at(curve.levels, i);
  return root + ((at(curve.roots, i + 1) - root) * (level - base)) / (next - base);
}

/** Water-surface area [m2] at a level [m]; 0 below the lowest point. */
export function areaAtLevel(curve: StageCurve, level: number): number {
  if (level < at(curve.levels, 0)) return 0;
  const root = rootAt(curve, intervalOf(curve.levels, level), level);
  return root * root;
}

/** Volume [m3] that stands below a level [m]. */
export function volumeAtLevel(curve: StageCurve, level: number): number {
  if (level <= at(curve.levels, 0)) return 0;
  const i = intervalOf(curve.levels, level);
  return at(curve.volumes, i) + frustum(level - at(curve.levels, i), at(curve.roots, i), rootAt(curve, i, level));
}

/** Level [m] at which a volume [m3] stands; the lowest point for an empty store. */
export function levelAtVolume(curve: StageCurve, volume: number): number {
  if (volume <= 0) return at(curve.levels, 0);
  const i = intervalOf(curve.volumes, volume);
  const rest = volume - at(curve.volumes, i);
  const base = at(curve.levels, i);
  const root = at(curve.roots, i);
  const next = curve.levels[i + 1];
  if (next === undefined) return base + rest / (root * root);
  const rise = (at(curve.roots, i + 1) - root) / (next - base);
  if (rise * (next - base) < SAME_AREA * (root + SAME_AREA)) return base + rest / (root * root);
  return base + (cbrt(root * root * root + 3 * rest * rise) - root) / rise;
}
