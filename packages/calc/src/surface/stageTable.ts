import { CalcProblem } from '../common/problem.ts';
import type { StageArea } from '../document/document.ts';
import type { GroundLowSpot } from './lowSpots.ts';
import { facetOf, stagesAt } from './stage.ts';
import type { Stage } from './stage.ts';
import type { Ground } from './surface.ts';

/** Rules of the table; ours. */
const TABLE = {
  /** Height of the step that stands for level ground, whose area comes all at once: share of the depth, at most [m]. */
  stepShare: 1e-5,
  mostStep: 1e-6,
  /** A point has no area and a document wants one: this share of the area at the top. */
  pointArea: 1e-9,
  /** Allowed difference of the frustum rule in one interval, as a share of its own volume, */
  ofInterval: 5e-4,
  /** or of the whole volume. */
  ofWhole: 1e-5,
  rounds: 14,
} as const;

const stepOf = (lowSpot: GroundLowSpot): number => Math.min(TABLE.mostStep, TABLE.stepShare * (lowSpot.topLevel - lowSpot.bottom.level));

const frustum = (from: Stage, to: Stage): number => ((to.level - from.level) / 3) * (from.area + to.area + Math.sqrt(from.area * to.area));

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

/** Halves the intervals in which the frustum rule is too far from the exact volume, round by round. */
function refined(surface: Ground, lowSpot: GroundLowSpot): Stage[] {
  let levels = knots(surface, lowSpot);
  for (let round = 0; ; round += 1) {
    const stages = stagesAt(surface, lowSpot.faces, levels);
    const middles = stages.flatMap((to, i) => {
      const from = stages[i - 1];
      if (from === undefined || to.level - from.level < 2 * stepOf(lowSpot)) return [];
      const exact = to.volume - from.volume;
      const allowed = Math.max(TABLE.ofInterval * exact, TABLE.ofWhole * lowSpot.volume);
      return Math.abs(frustum(from, to) - exact) > allowed ? [(from.level + to.level) / 2] : [];
    });
    if (middles.length === 0 || round === TABLE.rounds) return stages;
    levels = [...levels, ...middles].sort((p, q) => p - q);
  }
}

/** Leaves out the rows whose loss changes the volume least, until the table is short enough. */
function shortened(stages: Stage[], most: number, whole: number): Stage[] {
  const rows = [...stages];
  const loss = (i: number): number => {
    const from = rows[i - 1];
    const to = rows[i + 1];
    if (from === undefined || to === undefined) return Infinity;
    return Math.abs(frustum(from, to) - (to.volume - from.volume)) / (to.volume + whole / 1000);
  };
  const losses = rows.map((_, i) => loss(i));
  while (rows.length > most) {
    const least = losses.reduce((best, value, i) => (value < losses[best]! ? i : best), 0);
    rows.splice(least, 1);
    losses.splice(least, 1);
    for (const i of [least - 1, least]) if (i >= 0 && i < rows.length) losses[i] = loss(i);
  }
  return rows;
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
  const stages = refined(surface, lowSpot);
  const floor = lowSpot.faces.reduce((sum, face) => {
    const facet = facetOf(surface, face);
    return facet.high === lowSpot.bottom.level ? sum + facet.area : sum;
  }, 0);
  stages[0] = { level: lowSpot.bottom.level, area: floor, volume: 0 };
  let area = TABLE.pointArea * lowSpot.area;
  return shortened(stages, most, lowSpot.volume).map((stage) => {
    area = Math.max(area, stage.area);
    return { level: stage.level, area };
  });
}
