import { contourLines, documentLowSpots, findLowSpots, flowArrows, planGround, triangulateSurvey, waterExtent, type DesignDocument } from '@yardfall/calc';
import type { PlanGround } from '@yardfall/drawing';

/** Step between contours [m]: a quarter of a foot, or ten centimeters. */
const intervals = { foot: 0.25 * 0.3048, metre: 0.1 } as const;
const mostContours = 40;
const mostArrows = 200;
/** Levels with a place that make a ground. */
const leastShots = 3;

/** The ground that the spot levels of a document make, with water at a level; null where there is none or it cannot be made. */
export function drawnGround(site: DesignDocument['site'], level: number | null, unit: keyof typeof intervals): PlanGround | null {
  if (site.spotLevels.filter(({ position }) => position !== null).length < leastShots) return null;
  try {
    const ground = triangulateSurvey(planGround(site));
    const drainage = findLowSpots(ground);
    const spots = documentLowSpots(ground, drainage).flatMap(({ index }) => drainage.lowSpots[index] ?? []);
    const range = Math.max(...ground.level) - Math.min(...ground.level);
    const step = intervals[unit] * Math.max(1, Math.ceil(range / intervals[unit] / mostContours));
    const water = spots.flatMap((spot) => {
      const at = Math.min(level ?? spot.bottom.level, spot.topLevel);
      return at > spot.bottom.level ? waterExtent(ground, spot, at) : [];
    });
    return {
      contours: contourLines(ground, step), arrows: flowArrows(ground).slice(0, mostArrows), water,
      lowSpots: spots.map(({ bottom, spillPoint, spillLevel }) => ({ bottom, spillPoint, spillLevel })),
    };
  } catch (error) {
    // Shots that make no surface (one line, one point twice) leave a plan without a ground; what is wrong with them stands on the page of the design.
    if (typeof (error as { readonly code?: unknown }).code !== 'string') throw error;
    return null;
  }
}
