import fc from 'fast-check';
import type { SurfaceInput, SurveyPoint } from '../surface/surface.ts';

// The same cases in every run: a failure is found again by running it.
fc.configureGlobal({ seed: 20_261_128 });

/** A survey written as rows of x, y, level. */
export function spots(rows: readonly (readonly [number, number, number])[]): SurveyPoint[] {
  return rows.map(([x, y, level], i) => ({ id: `S${i + 1}`, x, y, level }));
}

/** A square grid of spots with a level for each place. */
export function grid(across: number, up: number, step: number, levelAt: (x: number, y: number) => number): SurveyPoint[] {
  const rows: [number, number, number][] = [];
  for (let j = 0; j <= up; j += 1) for (let i = 0; i <= across; i += 1) rows.push([i * step, j * step, levelAt(i * step, j * step)]);
  return spots(rows);
}

const place = fc.record({ x: fc.integer({ min: 0, max: 400 }), y: fc.integer({ min: 0, max: 400 }) });

/** Surveys of 4 to 60 spots on a 0.05 m raster, so that spots in line and on one circle are common. */
export const anyPoints: fc.Arbitrary<SurveyPoint[]> = fc
  .uniqueArray(fc.tuple(place, fc.integer({ min: 0, max: 300 })), { minLength: 4, maxLength: 60, selector: ([p]) => `${p.x}:${p.y}` })
  .map((list) => spots(list.map(([p, level]) => [p.x / 20, p.y / 20, 100 + level / 100] as const)))
  .filter((list) => list.some((p) => (list[1]!.x - list[0]!.x) * (p.y - list[0]!.y) !== (list[1]!.y - list[0]!.y) * (p.x - list[0]!.x)));

/** The same with up to three walls of two to four corners. */
export const anySurvey: fc.Arbitrary<SurfaceInput> = fc.record({
  points: anyPoints,
  walls: fc.array(fc.array(place, { minLength: 2, maxLength: 4 }), { maxLength: 3 })
    .map((walls) => walls.map((points, i) => ({ id: `W${i + 1}`, points: points.map((p) => ({ x: p.x / 20, y: p.y / 20 })) }))),
});
