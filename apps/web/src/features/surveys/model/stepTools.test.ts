import { describe, expect, test } from 'vitest';
import { drainFigures, hoseFigures, hoseOf, listOf, percolationFigures, percolationOf, slabHolesWanted, usualBucket, withNext, type Figures } from './stepTools.ts';

const INCH = 0.0254;
const FOOT = 0.3048;
const gpm = 0.003785411784 / 60;

describe('the tools of a diagnosis', () => {
  test('a list is as long as its numbers go on', () => {
    expect(listOf({ fill1: 40, fill2: 41, fill4: 9 }, 'fill')).toEqual([40, 41]);
    expect(withNext({ start1: 1, drop1: 2 }, { start: 3, drop: 4 })).toEqual({ start1: 1, drop1: 2, start2: 3, drop2: 4 });
  });
  test('three fills of 40 seconds are 7.5 gpm', () => {
    const figures = [40, 40, 40].reduce<Figures>((before, fill) => withNext(before, { fill }), {});
    expect(hoseOf(figures)?.good).toBe(true);
    expect((hoseFigures(figures)['flow'] ?? NaN) / gpm).toBeCloseTo(7.5, 9);
    expect(hoseFigures(figures)['bucket']).toBe(usualBucket);
    expect(hoseFigures({})).toEqual({});
  });
  test('7.5 gpm for six minutes into a 4 in drain: 45 gal, about 69 ft (the demo site: 68 ft by 0.66 gal/ft)', () => {
    const figures = drainFigures({ seconds: 360 }, 7.5 * gpm);
    expect((figures['volume'] ?? NaN) / 0.003785411784).toBeCloseTo(45, 9);
    expect((figures['blindLength'] ?? NaN) / FOOT).toBeCloseTo(68.93, 2);
    expect(drainFigures({ seconds: 360 }, null)['volume']).toBeUndefined();
    expect(drainFigures({}, 7.5 * gpm)['volume']).toBeUndefined();
  });
  test('percolation: three drops of an inch in half an hour from 6 in in a 6 in hole give 3/7 in/h, design with half', () => {
    const figures = [1, 1, 1].reduce<Figures>((before, drop) => withNext(before, { interval: 1800, start: 6 * INCH, drop: drop * INCH }), {});
    expect(percolationOf(figures)?.settled).toBe(true);
    const kept = percolationFigures(figures);
    expect([(kept['measured'] ?? NaN) / (INCH / 3600), (kept['design'] ?? NaN) / (INCH / 3600), kept['settled']]).toEqual([expect.closeTo(3 / 7, 9), expect.closeTo(1.5 / 7, 9), 1]);
    expect(percolationFigures({})).toEqual({});
  });
  test('a reading that makes no sense is kept and not counted', () => {
    expect(percolationOf({ interval1: 1800, start1: 0.1, drop1: 0 })).toBeNull();
    expect(percolationOf({ interval1: 1800, start1: 0.1, drop1: 0.3 })).toBeNull();
  });
  test('a hole for each ten feet of cut, two at least', () => {
    expect([0, 10, 20, 20.1, 35].map((feet) => slabHolesWanted(feet * FOOT))).toEqual([2, 2, 2, 3, 4]);
  });
});
