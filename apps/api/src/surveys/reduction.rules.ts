import {
  CalcProblem, type CandidateOutlet, gravityFall, hoseTest, type LevelBook, reduceLevelBook, type ReducedLevels, stageCurve, volumeAtLevel,
} from '@yardfall/calc';
import type { SurveyContent, SurveyReduction } from '@yardfall/contracts';

type Problem = SurveyReduction['problems'][number];
type Point = SurveyContent['points'][number];

const verdicts = { pass: 'closes', warn: 'caution', fail: 'open', notClosed: 'notClosed' } as const satisfies Record<ReducedLevels['verdict'], SurveyReduction['verdict']>;

/** What the level book and the tests of a survey come to. Nothing here decides: every number is the calc package's. */
export function reduceSurvey(content: SurveyContent): SurveyReduction {
  const reduced = reduceLevelBook(bookOf(content));
  const problems: Problem[] = reduced.problems.map(({ code, readingId, params }) => ({ code, readingId, params: { ...params } }));
  const levels = levelsOf(reduced);
  problems.push(...unknownPoints(content.points, levels));
  return {
    points: reduced.points.map((p) => ({ readingId: p.readingId, point: p.point, level: p.level, adjusted: p.adjustedLevel, instrumentHeight: p.heightOfInstrument })),
    sumCheck: reduced.sums === null ? null : { backsights: reduced.sums.backsights, foresights: reduced.sums.foresights, difference: reduced.sums.difference, agrees: reduced.sums.agrees },
    misclosure: reduced.misclosure,
    allowable: reduced.allowable.pass,
    verdict: verdicts[reduced.verdict],
    gravity: gravityOf(content.points, levels),
    volumeToSill: caught(problems, () => volumeToSill(content, levels)),
    drainTests: content.drainTests.map((test) => ({ id: test.id, ...hoseTestOf(test, problems) })),
    problems,
  };
}

function bookOf({ levelBook }: SurveyContent): LevelBook {
  return { mode: levelBook.mode, benchMark: levelBook.benchMark, readings: levelBook.readings, closingOn: null };
}

/** Adjusted level of each point by its name; a point that was shot again keeps its last reading. */
export function levelsOf(reduced: Pick<ReducedLevels, 'points'>): Map<string, number> {
  return new Map(reduced.points.map((point) => [point.point, point.adjustedLevel]));
}

export function lowestOf(points: readonly Point[], role: Point['role'], levels: ReadonlyMap<string, number>): number | null {
  const found = points.filter((point) => point.role === role).flatMap((point) => levels.get(point.point) ?? []);
  return found.length === 0 ? null : Math.min(...found);
}

/** Candidate outlets that were shot and paced, against the surveyed invert of the collector. */
export function outletsOf(points: readonly Point[], levels: ReadonlyMap<string, number>): CandidateOutlet[] {
  const collectorInvert = lowestOf(points, 'collectorInvert', levels);
  if (collectorInvert === null) return [];
  return points.flatMap((point, index) => {
    const level = levels.get(point.point);
    if (point.role !== 'outlet' || point.distance === null || level === undefined) return [];
    return [{ id: `K${String(index + 1)}`, name: point.point, kind: 'daylight' as const, level, distance: point.distance, tailwater: point.tailwater ?? 0, collectorInvert }];
  });
}

function gravityOf(points: readonly Point[], levels: ReadonlyMap<string, number>): SurveyReduction['gravity'] {
  return outletsOf(points, levels).map((outlet) => {
    const { shortfall, shortfallWithMargin, feasible } = gravityFall(outlet);
    return { outlet: outlet.name, shortfall, shortfallWithMargin, feasible };
  });
}

function volumeToSill({ points, stageArea }: SurveyContent, levels: ReadonlyMap<string, number>): number | null {
  const sill = lowestOf(points, 'sill', levels);
  return sill === null || stageArea.length < 2 ? null : volumeAtLevel(stageCurve(stageArea), sill);
}

function hoseTestOf(test: SurveyContent['drainTests'][number], problems: Problem[]): { volume: number | null; blindLength: number | null } {
  const { hoseFlow, backedUpAfter, diameter } = test;
  if (backedUpAfter === null) return { volume: null, blindLength: null };
  return caught(problems, () => hoseTest(hoseFlow, backedUpAfter, diameter)) ?? { volume: null, blindLength: null };
}

function unknownPoints(points: readonly Point[], levels: ReadonlyMap<string, number>): Problem[] {
  return points.filter((point) => levels.size > 0 && !levels.has(point.point)).map((point) => ({ code: 'surveys.pointNotShot', readingId: null, params: { point: point.point } }));
}

/** A figure that cannot be had is a problem of the survey, not of the request. */
function caught<T>(problems: Problem[], compute: () => T): T | null {
  try {
    return compute();
  } catch (error) {
    if (!(error instanceof CalcProblem)) throw error;
    problems.push({ code: error.code, readingId: null, params: { ...error.params } });
    return null;
  }
}
