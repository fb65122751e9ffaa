import { section, stationAt, type SectionOptions } from '@yardfall/drawing';
import { describe, expect, test } from 'vitest';
import { gathered, isInside, pinsOf, pointAt } from './place.ts';

const display = {
  extent: { x0: 0, x1: 10, y0: 0, y1: 4 },
  stations: [[0, 0], [5, 5], [5.5, 40], [10, 44.5]],
  hits: [{ part: 'long', points: [[0, 0], [10, 0], [10, 2], [0, 2]] }, { part: 'small', points: [[1, 1], [2, 1], [2, 2], [1, 2]] }],
} as const satisfies Pick<ReturnType<typeof section>, 'extent' | 'hits' | 'stations'>;

describe('a place that is touched in the section', () => {
  test('is a station and a level, with the smallest part under it', () => {
    expect(pointAt(display, [1.5, 1.5], stationAt)).toEqual({ point: { station: 1.5, level: 1.5 }, part: 'small' });
    expect(pointAt(display, [4, 1], stationAt).part).toBe('long');
    expect(pointAt(display, [4, 3], stationAt).part).toBeNull();
  });
  test('beyond a break is the true station, and outside the drawing its edge', () => {
    expect(pointAt(display, [6.5, 3], stationAt).point).toEqual({ station: 41, level: 3 });
    expect(pointAt(display, [99, -5], stationAt).point).toEqual({ station: 44.5, level: 0 });
  });
});

test('a point is inside a bent shape only where the shape is', () => {
  const bent = [[0, 0], [4, 0], [4, 4], [3, 4], [3, 1], [0, 1]] as const;
  expect([[1, 0.5], [3.5, 3], [1, 2], [5, 0.5]].map(([x = 0, y = 0]) => isInside(bent, [x, y]))).toEqual([true, true, false, false]);
});

test('pins that a thumb could not tell apart stand together, and each group is at least a thumb from the next first', () => {
  const groups = gathered([{ x: 100 }, { x: 10 }, { x: 50 }, { x: 65 }, { x: 130 }], 56);
  expect(groups.map((group) => group.map(({ x }) => x))).toEqual([[10, 50, 65], [100, 130]]);
  expect(gathered([], 56)).toEqual([]);
});

test('only photos with a part or a point are placed', () => {
  const photo = (id: string, part: string | null, point: SectionOptions['pins'][number]['point']) => ({ id, part, point }) as Parameters<typeof pinsOf>[0][number];
  expect(pinsOf([photo('a', null, null), photo('b', 'P1', null), photo('c', null, { station: 1, level: 2 })]).map(({ id }) => id)).toEqual(['b', 'c']);
});
