import { describe, expect, test } from 'vitest';
import { differenceAs, judge, type Measure } from './judge.ts';

const inch = 0.0254;
/** Limits as the list sets them: ours. */
const recess: Measure = { name: 'recessUp', quantity: 'height', target: (3 * inch) / 32, min: inch / 16, max: inch / 8 };
const invert: Measure = { name: 'invertUp', quantity: 'level', target: 30, min: 30 - inch / 16, max: 30 + inch / 16 };
const sump: Measure = { name: 'sumpDepth', quantity: 'height', target: 6 * inch, min: 6 * inch, max: null };

describe('a measured value', () => {
  test('at its limit is good', () => expect([inch / 16, inch / 8].map((value) => judge(recess, value).good)).toEqual([true, true]));
  test('of a level says which way to move it, to the level of the design', () => {
    expect(judge(invert, 30 - inch / 4)).toMatchObject({ good: false, way: 'raise' });
    expect(judge(invert, 30 - inch / 4).by).toBeCloseTo(inch / 4, 12);
    expect(judge(invert, 30 + inch / 2)).toMatchObject({ good: false, way: 'lower' });
  });
  test('of a height says short or too much', () => {
    expect(judge(recess, inch / 2).way).toBe('less');
    expect(judge(sump, 5 * inch)).toMatchObject({ good: false, way: 'more' });
    expect(judge(sump, 40 * inch).good).toBe(true);
  });
  test('without limits is only noted', () => expect(judge({ ...sump, min: null }, -3).good).toBe(true));
});

test('a difference of levels is told as a tape tells it', () => expect(differenceAs('level')).toBe('tape'));
