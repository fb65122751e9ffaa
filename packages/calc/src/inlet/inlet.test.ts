import { describe, expect, it } from 'vitest';
import { CUBIC_FOOT, FOOT } from '../common/constants.ts';
import { fixtureRow, given } from '../testing/fixtures.ts';
import { grateTransitionHead, sagGrateFlow } from './sagGrate.ts';
import { GRASS_RIM_WEIR, GRATE_WEIR, SLAB_RIM_WEIR, weirFlow } from './weir.ts';

const FILE = 'inlet/sagGrate.json';

describe('grate in a sag', () => {
  for (const id of ['7.1', '7.2', '7.4']) {
    it(`row ${id}`, () => {
      const row = fixtureRow(FILE, id);
      const own = sagGrateFlow({ perimeter: given(row, 'p') * FOOT, openArea: given(row, 'a') * FOOT * FOOT, clogging: 1 }, given(row, 'd') * FOOT);
      expect(Math.abs(own.weir / CUBIC_FOOT / (row.expected['weir'] ?? NaN) - 1)).toBeLessThan(row.tolerance);
      expect(Math.abs(own.orifice / CUBIC_FOOT / (row.expected['orifice'] ?? NaN) - 1)).toBeLessThan(row.tolerance);
      expect(own.control).toBe((row.expected['weir'] ?? 0) < (row.expected['orifice'] ?? 0) ? 'weir' : 'orifice');
      expect(own.capacity).toBe(Math.min(own.weir, own.orifice));
    });
  }

  it('row 7.5: weir and orifice meet', () => {
    const row = fixtureRow(FILE, '7.5');
    const perimeter = given(row, 'p') * FOOT;
    const openArea = given(row, 'a') * FOOT * FOOT;
    const head = grateTransitionHead(perimeter, openArea);
    expect(Math.abs(head / FOOT / (row.expected['d'] ?? NaN) - 1)).toBeLessThan(row.tolerance);
    const there = sagGrateFlow({ perimeter, openArea, clogging: 1 }, head);
    expect(there.weir / there.orifice).toBeCloseTo(1, 12);
  });

  it('half blocked takes half, and shallow water is marked', () => {
    const grate = { perimeter: 1, openArea: 0.02, clogging: 1 };
    expect(sagGrateFlow({ ...grate, clogging: 0.5 }, 0.05).capacity).toBeCloseTo(sagGrateFlow(grate, 0.05).capacity / 2, 12);
    expect([sagGrateFlow(grate, 0.029).belowPublishedHead, sagGrateFlow(grate, 0.031).belowPublishedHead]).toEqual([true, false]);
    expect(() => sagGrateFlow(grate, 0)).toThrow('value.notPositive');
    expect(() => sagGrateFlow({ ...grate, clogging: 1.2 }, 0.1)).toThrow('value.aboveOne');
  });
});

describe('rim', () => {
  it('the metric coefficient is 1.66, and grass takes less than slab', () => {
    expect(GRATE_WEIR).toBeCloseTo(1.66, 2);
    expect(weirFlow(GRATE_WEIR, 6 * FOOT, 0.25 * FOOT) / CUBIC_FOOT).toBeCloseTo(3 * 6 * 0.125, 9);
    expect(weirFlow(GRASS_RIM_WEIR, 2, 0.1)).toBeLessThan(weirFlow(SLAB_RIM_WEIR, 2, 0.1));
    expect(weirFlow(GRATE_WEIR, 2, 0)).toBe(0);
  });
});
