import { CalcProblem } from '../common/problem.ts';
import { at, requireFinite } from '../common/require.ts';

/** A point of a discharge line: distance from the pump along the pipe, and level of the pipe there [m]. */
export interface LinePoint {
  readonly x: number;
  readonly level: number;
}

/** A line has two points or more, the first at x = 0, each farther than the one before it. */
export function requireProfile(points: readonly LinePoint[]): void {
  if (points.length < 2) throw new CalcProblem('pump.lineTooShort', 'points', { count: points.length });
  points.forEach((point, i) => {
    requireFinite({ [`points/${i}/x`]: point.x, [`points/${i}/level`]: point.level });
    if (i === 0 ? point.x !== 0 : point.x <= at(points, i - 1).x) throw new CalcProblem('pump.lineNotForward', `points/${i}/x`, { x: point.x });
  });
}

/** Level of the pipe at a distance [m]; the ends go on level. */
export function levelAlong(points: readonly LinePoint[], x: number): number {
  for (let i = 1; i < points.length; i += 1) {
    const right = at(points, i);
    if (x > right.x) continue;
    const left = at(points, i - 1);
    return left.level + ((right.level - left.level) * (x - left.x)) / (right.x - left.x);
  }
  return at(points, points.length - 1).level;
}

/** Highest level of the pipe up to a distance [m]: what the front of the water has had to climb. */
export function highestUpTo(points: readonly LinePoint[], x: number): number {
  let high = levelAlong(points, x);
  for (const point of points) if (point.x <= x) high = Math.max(high, point.level);
  return high;
}
