import {
  CalcProblem, candidateOutlets, gravityFall, gravityWithBand, hoseTest, type LevelBook, levelsByPoint, levelUncertainty, lowestOfRole, reduceLevelBook, type ReducedLevels, stageCurve, volumeAtLevel,
} from '@yardfall/calc';
import type { SurveyContent, SurveyReduction } from '@yardfall/contracts';

type Problem = SurveyReduction['problems'][number];
type Point = SurveyContent['points'][number];

const verdicts = { pass: 'closes', warn: 'caution', fail: 'open', notClosed: 'notClosed' } as const satisfies Record<ReducedLevels['verdict'], SurveyReduction['verdict']>;

/** What the level book and the tests of a survey come to. Nothing here decides: every number is the calc package's. */
export function reduceSurvey(content: SurveyContent): SurveyReduction {
  const reduced = reduceLevelBook(bookOf(content));
  const problems: Problem[] = reduced.problems.map(({ code, readingId, params }) => ({ code, readingId, params: { ...params } }));
  const levels = levelsByPoint(reduced);
  problems.push(...unknownPoints(content.points, levels));
  return {
    points: reduced.points.map((p) => ({ readingId: p.readingId, point: p.point, level: p.level, adjusted: p.adjustedLevel, instrumentHeight: p.heightOfInstrument })),
    sumCheck: reduced.sums === null ? null : { backsights: reduced.sums.backsights, foresights: reduced.sums.foresights, difference: reduced.sums.difference, agrees: reduced.sums.agrees },
    misclosure: reduced.misclosure,
    allowable: reduced.allowable.pass,
    verdict: verdicts[reduced.verdict],
    gravity: gravityOf(content.points, levels, levelUncertainty(reduced)),
    volumeToSill: caught(problems, () => volumeToSill(content, levels)),
    drainTests: content.drainTests.map((test) => ({ id: test.id, ...hoseTestOf(test, problems) })),
    problems,
  };
}

function bookOf({ levelBook }: SurveyContent): LevelBook {
  return { mode: levelBook.mode, benchMark: levelBook.benchMark, readings: levelBook.readings, closingOn: null };
}

function gravityOf(points: readonly Point[], levels: ReadonlyMap<string, number>, uncertainty: number): SurveyReduction['gravity'] {
  return candidateOutlets(points, levels).map((outlet) => {
    const { shortfall, shortfallWithMargin, feasible } = gravityFall(outlet);
    const { verdict } = gravityWithBand(outlet, uncertainty);
    return { outlet: outlet.name, shortfall, shortfallWithMargin, feasible, uncertainty, verdict };
  });
}

function volumeToSill({ points, stageArea }: SurveyContent, levels: ReadonlyMap<string, number>): number | null {
  const sill = lowestOfRole(points, 'sill', levels);
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
