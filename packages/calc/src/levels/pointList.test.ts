import { describe, expect, test } from 'vitest';
import { CalcProblem } from '../common/problem.ts';
import { parsePointList } from './pointList.ts';

const problemOf = (run: () => unknown): { readonly code: string; readonly params: unknown } => {
  try {
    run();
  } catch (error) {
    if (error instanceof CalcProblem) return { code: error.code, params: error.params };
    throw error;
  }
  throw new Error('nothing was refused');
};

/** Invented points; the figures in meters are worked out by hand with 1 ft = 0.3048 m exactly. */
const usual = '1,500100.00,2100200.00,99.50,"TOP OF SILL, DOOR"\n2,500110.00,2100200.00,98.00,GROUND\n\n3,500100.00,2100230.00,98.25,GROUND SHOT\n';

describe('a list of surveyed points', () => {
  test('in the usual order, large grid coordinates as a plan of its own', () => {
    const { points, origin, heading } = parsePointList(usual);
    expect(origin).toEqual({ easting: 2_100_200, northing: 500_100 });
    expect(heading).toBe(false);
    expect(points.map(({ point, description }) => [point, description])).toEqual([['1', 'TOP OF SILL, DOOR'], ['2', 'GROUND'], ['3', 'GROUND SHOT']]);
    expect(points.map(({ x, y }) => [x, y])).toEqual([[0, 0], [0, 10 * 0.3048], [30 * 0.3048, 0]]);
    expect(points[0]?.level).toBeCloseTo(30.3276, 12);
  });

  test('in another order, with tabs and a heading, in meters', () => {
    const { points, heading } = parsePointList('Nr\tE\tN\tZ\n7\t4.5\t2\t30.1\n8\t1.5\t6\t30.2', ['point', 'easting', 'northing', 'elevation'], 'metre');
    expect(heading).toBe(true);
    expect(points).toEqual([{ point: '7', description: '', x: 3, y: 0, level: 30.1 }, { point: '8', description: '', x: 0, y: 4, level: 30.2 }]);
  });

  test('parted by blanks, the description as long as it likes; a byte order mark and old line ends', () => {
    const { points } = parsePointList('\uFEFF1 10 20 5 edge of slab\r2 11 21 6 x\r', ['point', 'northing', 'easting', 'elevation', 'description'], 'metre');
    expect(points.map(({ description, level }) => [description, level])).toEqual([['edge of slab', 5], ['x', 6]]);
  });

  test('the survey foot is longer by two parts in a million: 1200/3937 m (NIST SP 811)', () => {
    const [, far] = parsePointList('1,0,0,100,\n2,0,3937,100,', undefined, 'usSurveyFoot').points;
    expect(far?.x).toBeCloseTo(1200, 9);
  });

  test.each([
    ['no points', '', 'levels.list.empty', 1, 1],
    ['a word for a number', '1,10,20,5,a\n2,10,2x,5,b', 'levels.list.notANumber', 2, 3],
    ['a missing cell', '1,10,20,5,a\n2,10,20', 'levels.list.cellMissing', 2, 4],
    ['an open quote', '1,10,20,5,"a', 'levels.list.openQuote', 1, 5],
    ['a point twice', '1,10,20,5,a\n1,11,20,5,b', 'levels.list.twice', 2, 1],
    ['columns in another order than said', '1,500100,99.5,2100200,sill\n2,500100,98.5,2100230,ground\n3,4,98.5,2100230,ground', 'levels.list.tooWide', 3, 3],
  ])('refuses %s with its place', (_, text, code, line, column) => {
    expect(problemOf(() => parsePointList(text))).toEqual({ code, params: expect.objectContaining({ line, column }) as unknown });
  });

  test('refuses an order without elevations, and more points than a yard has', () => {
    expect(problemOf(() => parsePointList(usual, ['point', 'northing', 'easting'])).code).toBe('levels.list.order');
    expect(problemOf(() => parsePointList(Array.from({ length: 1002 }, (_line, i) => `${i},${i},1,1,`).join('\n'))).code).toBe('levels.list.tooMany');
  });
});
