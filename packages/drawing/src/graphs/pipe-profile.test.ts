import { builtProfile, type PipeShot } from '@yardfall/calc';
import { describe, expect, test } from 'vitest';
import { lines, outside, polygons, texts } from '../testing/read.ts';
import { pipeProfile } from './pipe-profile.ts';

const foot = 0.3048;
const inch = 0.0254;
/** 40 ft that fall 5 in: 1/8 in per ft. */
const designed = { length: 40 * foot, invertUp: 30, invertDown: 30 - 5 * inch };
const shot = (feet: number, off = 0): PipeShot => ({ at: feet * foot, level: 30 - (5 * inch * feet) / 40 + off * inch });
const drawn = (...shots: readonly PipeShot[]) => pipeProfile({ designed, shots, built: builtProfile(shots, 0.1016, 0.01, 1 / 192) }, { width: 342, height: 220 });

describe('a laid pipe alone', () => {
  test('fills its picture, so that a quarter of an inch is seen', () => {
    const list = drawn(shot(0), shot(20), shot(40));
    expect(outside(list)).toEqual([]);
    const { y0, y1 } = list.extent;
    expect(((inch / 4) / (y1 - y0)) * 220).toBeGreaterThan(5);
    expect(list.exaggeration).toBeGreaterThan(20);
    expect(texts(list, 'drawing.profile.falls').map(({ label }) => label.params['slope'])).toEqual([expect.closeTo(1 / 96, 9), expect.closeTo(1 / 96, 9)]);
    expect(polygons(list, null)).toEqual([]);
  });

  test('with a belly names the segment that climbs at its middle, in a line of its own kind, and stands water in it', () => {
    const list = drawn(shot(0), shot(13, -2), shot(26, 1), shot(40));
    const [climbs] = texts(list, 'drawing.profile.back');
    expect(climbs?.at[0]).toBeCloseTo(19.5 * foot, 9);
    expect(climbs?.label.params['rise']).toBeCloseTo(3 * inch - (5 * inch * 13) / 40, 9);
    expect(lines(list, null).filter(({ role, dash }) => role === 'sill' && dash === 'dot')).toHaveLength(1);
    const [water] = polygons(list, null);
    expect(water?.hatch).toBe('water');
    const levels = water?.points.map(([, y]) => y) ?? [];
    expect(Math.max(...levels)).toBeCloseTo(shot(26, 1).level, 9);
    expect(Math.min(...levels)).toBeCloseTo(shot(13, -2).level, 9);
    // It begins where the pipe comes down to that level.
    const [x, y] = water?.points[0] ?? [NaN, NaN];
    expect(30 + ((shot(13, -2).level - 30) * x) / (13 * foot)).toBeCloseTo(y, 9);
  });

  test('says flat and slack as well, and numbers its shots', () => {
    const list = drawn(shot(0), { at: 10 * foot, level: 30 }, { at: 20 * foot, level: 30 - inch / 4 }, shot(40));
    expect([texts(list, 'drawing.profile.flat').length, texts(list, 'drawing.profile.slack').length]).toEqual([1, 1]);
    expect(texts(list, 'drawing.profile.shot').map(({ label }) => label.params['n'])).toEqual([1, 2, 3, 4]);
  });
});
