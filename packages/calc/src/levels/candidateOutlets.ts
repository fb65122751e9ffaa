import type { CandidateOutlet } from '../document/document.ts';
import type { ReducedLevels } from './levelBook.ts';

/** What a surveyed point is; the lengths count for an outlet only [m]. */
export interface SurveyedPoint {
  readonly point: string;
  readonly role: string;
  readonly distance: number | null;
  readonly tailwater: number | null;
}

/** Adjusted level of each point by its name; a point that was shot again keeps its last reading. */
export function levelsByPoint({ points }: Pick<ReducedLevels, 'points'>): Map<string, number> {
  return new Map(points.map(({ point, adjustedLevel }) => [point, adjustedLevel]));
}

/** Lowest level of the points of a role [m]; null when none was shot. */
export function lowestOfRole(points: readonly SurveyedPoint[], role: string, levels: ReadonlyMap<string, number>): number | null {
  const found = points.filter((point) => point.role === role).flatMap((point) => levels.get(point.point) ?? []);
  return found.length === 0 ? null : Math.min(...found);
}

/**
 * Outlets of a survey that can be judged: shot, with the length of pipe to them, against the lowest invert of the collector.
 *
 * @param points what was shot, with its role
 * @param levels adjusted level of each point [m]
 * @returns candidate outlets, none without an invert of the collector
 * Limits: an outlet without a length, or of no length, is left out
 * Source: ours, check L4
 * Checked against: the survey of the demo site
 */
export function candidateOutlets(points: readonly SurveyedPoint[], levels: ReadonlyMap<string, number>): CandidateOutlet[] {
  const collectorInvert = lowestOfRole(points, 'collectorInvert', levels);
  if (collectorInvert === null) return [];
  return points.flatMap((point, index) => {
    const level = levels.get(point.point);
    if (point.role !== 'outlet' || point.distance === null || point.distance <= 0 || level === undefined) return [];
    return [{ id: `K${String(index + 1)}`, name: point.point, kind: 'daylight' as const, level, distance: point.distance, tailwater: point.tailwater ?? 0, collectorInvert }];
  });
}
