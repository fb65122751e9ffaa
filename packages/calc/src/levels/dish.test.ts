import { describe, expect, it } from 'vitest';
import { FOOT } from '../common/constants.ts';
import { fixtureRow, given } from '../testing/fixtures.ts';
import { expectNear, expectRatio } from '../testing/near.ts';
import { adjustByDistance } from './adjustByDistance.ts';
import { dishAt, dishHeight } from './dish.ts';

describe('correction in proportion', () => {
  it('rows 1.3 and 1.4: by set-ups', () => {
    const row = fixtureRow('levels/levelling.json', '1.4');
    const own = adjustByDistance(given(row, 'misclosure') * FOOT, [0, 1, 2, 3, 4, 5], given(row, 'setUps'));
    expectNear((own[1] ?? NaN) / FOOT, row.expected['perSetUp'], row.tolerance);
    expectNear((own[4] ?? NaN) / FOOT, row.expected['fourth'], row.tolerance);
    expect(own[0]).toBe(0);
    const printed = fixtureRow('levels/levelling.json', '1.3').expected;
    const run = fixtureRow('levels/levelling.json', '1.2').expected;
    adjustByDistance((run['misclosure'] ?? NaN) * FOOT, [1, 2, 3, 4], 4).forEach((correction, i) => {
      expectNear((run[`l${i + 1}`] ?? NaN) + correction / FOOT, printed[`a${i + 1}`], 1e-9);
    });
  });
  it('by distance, and not beyond the end', () => {
    expectNear(adjustByDistance(0.03, [30], 120)[0] ?? NaN, -0.0075, 1e-15);
    expectNear(adjustByDistance(-0.03, [120], 120)[0] ?? NaN, 0.03, 1e-15);
    expect(() => adjustByDistance(0.03, [1, 121], 120)).toThrow('levels.beyondRun at along/1');
    expect(() => adjustByDistance(0.03, [-1], 120)).toThrow('value.negative at along/0');
    expect(() => adjustByDistance(0.03, [1], 0)).toThrow('value.notPositive at total');
    expect(() => adjustByDistance(NaN, [1], 1)).toThrow('value.notFinite at misclosure');
  });
});

describe('dish', () => {
  it('walls, bowl and cone by their formulas', () => {
    const top = { topArea: 50, depth: 0.2 };
    expect(dishAt({ ...top, shape: 0 }, 0.1)).toEqual({ area: 50, volume: 5 });
    expectNear(dishAt({ ...top, shape: 1 }, 0.1).area, 25, 1e-12);
    expectNear(dishAt({ ...top, shape: 1 }, 0.1).volume, 1.25, 1e-12);
    expectNear(dishAt({ ...top, shape: 2 }, 0.2).volume, (50 * 0.2) / 3, 1e-12);
    expectNear(dishAt({ ...top, shape: 2 }, 0.1).area, 12.5, 1e-12);
    expect([dishAt({ ...top, shape: 2 }, 0), dishAt({ ...top, shape: 0 }, 0)]).toEqual([{ area: 0, volume: 0 }, { area: 50, volume: 0 }]);
  });
  it('turned round, and not over its rim', () => {
    for (const shape of [0, 0.7, 1, 2]) {
      const dish = { topArea: 40, depth: 0.15, shape };
      for (const height of [0.02, 0.1, 0.15]) expectRatio(dishHeight(dish, dishAt(dish, height).volume), height, 1e-12);
      expect(dishHeight(dish, 0)).toBe(0);
      expect(() => dishHeight(dish, (40 * 0.15) / (shape + 1) + 1e-9)).toThrow('levels.overDish at volume');
      expect(() => dishAt(dish, 0.151)).toThrow('levels.overDish at height');
    }
    expect(() => dishAt({ topArea: 0, depth: 1, shape: 1 }, 0)).toThrow('value.notPositive at topArea');
    expect(() => dishAt({ topArea: 1, depth: 1, shape: -1 }, 0)).toThrow('value.negative at shape');
    expect(() => dishAt({ topArea: 1, depth: 1, shape: 1 }, -1)).toThrow('value.negative at height');
    expect(() => dishHeight({ topArea: 1, depth: 0, shape: 1 }, 0)).toThrow('value.notPositive at depth');
    expect(() => dishHeight({ topArea: 1, depth: 1, shape: 1 }, -1)).toThrow('value.negative at volume');
  });
});
