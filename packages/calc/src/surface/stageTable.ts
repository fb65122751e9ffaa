import { CalcProblem } from '../common/problem.ts';
import type { StageArea } from '../document/document.ts';
import type { GroundLowSpot } from './lowSpots.ts';
import { facetOf, stagesAt } from './stage.ts';
import { refined, thinned } from './stageRows.ts';
import type { Ground } from './surface.ts';

/** Rules of the table; ours. */
const TABLE = {
  /** Height of the step that stands for level ground, whose area comes all at once: share of the depth, at most [m]. */
  stepShare: 1e-5,
  mostStep: 1e-6,
  /** A point has no area and a document wants one: this share of the area at the top. */
  pointArea: 1e-9,
} as const;

const stepOf = (lowSpot: GroundLowSpot): number => Math.min(TABLE.mostStep, TABLE.stepShare * (lowSpot.topLevel - lowSpot.bottom.level));

/** Levels at which the area changes its course: those of the vertices, and just above every piece of level ground. */
function knots(surface: Ground, lowSpot: GroundLowSpot): number[] {
  const { bottom, topLevel, faces } = lowSpot;
  const step = stepOf(lowSpot);
  const levels = [bottom.level, topLevel - step, topLevel];
  for (const face of faces) {
    const { low, middle, high } = facetOf(surface, face);
    levels.push(low, middle, high);
    if (high - low < step) levels.push(high + step);
  }
  const sorted = levels.filter((level) => level >= bottom.level && level <= topLevel).sort((p, q) => p - q);
  const apart: number[] = [];
  for (const level of sorted) {
    if (apart.length === 0 || level - apart[apart.length - 1]! >= step / 2) apart.push(level);
  }
  if (apart.length > 1) apart[apart.length - 1] = topLevel;
  return apart;
}

/**
 * Stage-area pairs of a low spot for a design document, from its lowest point to its top level.
 *
 * @param most rows at most, 2 or more; a longer table is thinned where it matters least
 * @returns rising levels [m] and areas [m2]; by the frustum rule between them the volume is within 0.1 % of the exact one
 * Level ground is a step of 0.001 mm or less; a lowest point has a billionth of the area at the top.
 * Errors: surface.noDepth for a low spot without depth, surface.tooFewRows
 * Source: geometry; the frustum rule as in stageCurve
 */
export function stageAreaOf(surface: Ground, lowSpot: GroundLowSpot, most = 200): StageArea[] {
  if (!(most >= 2)) throw new CalcProblem('surface.tooFewRows', 'most', { most });
  if (!(lowSpot.topLevel - lowSpot.bottom.level > TABLE.mostStep) || !(lowSpot.area > 0)) throw new CalcProblem('surface.noDepth', 'lowSpot', { level: lowSpot.bottom.level });
  const stages = refined((levels) => stagesAt(surface, lowSpot.faces, levels), knots(surface, lowSpot), stepOf(lowSpot), lowSpot.volume);
  const floor = lowSpot.faces.reduce((sum, face) => {
    const facet = facetOf(surface, face);
    return facet.high === lowSpot.bottom.level ? sum + facet.area : sum;
  }, 0);
  stages[0] = { ...stages[0]!, area: floor };
  let area = TABLE.pointArea * lowSpot.area;
  return thinned(stages, most, lowSpot.volume).map((stage) => {
    area = Math.max(area, stage.area);
    return { level: stage.level, area };
  });
}
