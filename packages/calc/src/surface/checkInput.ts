import { CalcProblem } from '../common/problem.ts';
import { SURFACE_LIMITS } from './surface.ts';
import type { Position, SurfaceInput } from './surface.ts';

function checkNumber(value: unknown, path: string): void {
  if (typeof value !== 'number' || !Number.isFinite(value)) throw new CalcProblem('surface.notFinite', path, { value: String(value) });
  if (Math.abs(value) > SURFACE_LIMITS.farthest) throw new CalcProblem('surface.tooFar', path, { value, most: SURFACE_LIMITS.farthest });
}

function checkPlace(place: Position & { readonly level?: number | undefined }, path: string, needsLevel: boolean): void {
  checkNumber(place.x, `${path}/x`);
  checkNumber(place.y, `${path}/y`);
  if (needsLevel || place.level !== undefined) checkNumber(place.level, `${path}/level`);
}

function checkLine(points: readonly (Position & { readonly level?: number | undefined })[], path: string, least: number, needsLevel: boolean): void {
  if (points.length < least) throw new CalcProblem('surface.lineTooShort', path, { count: points.length, least });
  points.forEach((point, i) => { checkPlace(point, `${path}/${i}`, needsLevel); });
}

/**
 * Shape and limits of a survey before anything is computed.
 * Errors: surface.notFinite, surface.tooFar, surface.lineTooShort, surface.tooMany
 */
export function checkSurfaceInput(input: SurfaceInput): void {
  const { points, breaklines = [], walls = [], boundary } = input;
  let count = points.length + (boundary?.length ?? 0);
  for (const line of [...breaklines, ...walls]) count += line.points.length;
  if (count > SURFACE_LIMITS.mostPoints) throw new CalcProblem('surface.tooMany', 'points', { count, most: SURFACE_LIMITS.mostPoints });
  points.forEach((point, i) => { checkPlace(point, `points/${i}`, true); });
  breaklines.forEach((line, i) => { checkLine(line.points, `breaklines/${i}/points`, 2, true); });
  walls.forEach((line, i) => { checkLine(line.points, `walls/${i}/points`, 2, false); });
  if (boundary) checkLine(boundary, 'boundary', 3, false);
}

/**
 * A surface needs three measured places that are not in one line.
 * Errors: surface.tooFewPoints, surface.inLine
 */
export function checkSpread(x: readonly number[], y: readonly number[], measured: readonly number[]): void {
  const [first] = measured;
  if (first === undefined || measured.length < 3) throw new CalcProblem('surface.tooFewPoints', 'points', { count: measured.length, least: 3 });
  const distance = (i: number): number => Math.sqrt((x[i]! - x[first]!) * (x[i]! - x[first]!) + (y[i]! - y[first]!) * (y[i]! - y[first]!));
  const far = measured.reduce((best, i) => (distance(i) > distance(best) ? i : best), first);
  const length = distance(far);
  const offset = measured.reduce((most, i) => {
    const cross = (x[far]! - x[first]!) * (y[i]! - y[first]!) - (y[far]! - y[first]!) * (x[i]! - x[first]!);
    return Math.max(most, Math.abs(cross) / length);
  }, 0);
  if (!(offset > SURFACE_LIMITS.samePlace)) throw new CalcProblem('surface.inLine', 'points', { count: measured.length });
}
