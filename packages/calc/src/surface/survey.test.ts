import { describe, expect, test } from 'vitest';
import type { CalcProblem } from '../common/problem.ts';
import { findLowSpots } from './lowSpots.ts';
import { triangulateSurvey } from './survey.ts';
import type { SurveyedSite } from './survey.ts';

const spot = (id: string, x: number | null, y: number, level: number) => ({ id, level, position: x === null ? null : { x, y } });
const courtyard: SurveyedSite = {
  spotLevels: [spot('A', 0, 0, 30.2), spot('sill', null, 0, 30.5), spot('B', 6, 0, 30.2), spot('C', 6, 4, 30.3), spot('D', 0, 4, 30.3), spot('E', 2, 1, 30), spot('F', 4, 3, 30.1)],
  breaklines: [{ id: 'gutter', points: [{ x: 2, y: 1, level: 30 }, { x: 6, y: 1.5, level: 30.05 }] }],
  walls: [{ id: 'house', points: [{ x: 0, y: 0 }, { x: 6, y: 0 }, { x: 6, y: 4 }, { x: 0, y: 4 }, { x: 0, y: 0 }] }],
};

function problem(site: SurveyedSite): Pick<CalcProblem, 'code' | 'path'> {
  try {
    triangulateSurvey(site);
  } catch (error) {
    const { code, path } = error as CalcProblem;
    return { code, path };
  }
  return { code: 'none', path: '' };
}

describe('the ground of a document', () => {
  test('spots without a place are left out; a courtyard with walls all round holds its water', () => {
    const surface = triangulateSurvey(courtyard);
    expect(surface.pointId).not.toContain('sill');
    expect(findLowSpots(surface).lowSpots).toMatchObject([{ bottom: { x: 2, y: 1, level: 30 }, spillLevel: null, topLevel: 30.3 }]);
  });

  test('errors name the place in the site', () => {
    expect(problem({ ...courtyard, spotLevels: [] , breaklines: [] })).toEqual({ code: 'surface.tooFewPoints', path: 'spotLevels' });
    expect(problem({ ...courtyard, spotLevels: [...courtyard.spotLevels, spot('none', null, 0, 1), spot('G', 0, 0, 31)] })).toEqual({ code: 'surface.twoLevels', path: 'spotLevels/8' });
    expect(problem({ ...courtyard, walls: [{ id: 'W', points: [{ x: 0, y: 0 }, { x: Number.NaN, y: 1 }] }] })).toEqual({ code: 'surface.notFinite', path: 'walls/0/points/1/x' });
  });
});
