import { describe, expect, it } from 'vitest';
import { CUBIC_FOOT, FOOT, GRAVITY, INCH } from '../common/constants.ts';
import { fixtureRow, given } from '../testing/fixtures.ts';
import { expectNear, expectRatio } from '../testing/near.ts';
import { grateEdge } from './grateEdge.ts';
import { orificeFlow } from './orifice.ts';
import { ALLOWED_GRATE_HEAD, grateTransitionHead, sagGrateFlow, sagGrateHead } from './sagGrate.ts';
import { GRASS_RIM_WEIR, GRATE_WEIR, SHARP_RIM_WEIR, SLAB_RIM_WEIR, weirFlow } from './weir.ts';

const grate = { perimeter: 1.2, openArea: 0.03, clogging: 0.5 };

describe('head over a grate', () => {
  it('gives the capacity back, as weir and as orifice', () => {
    for (const flow of [1e-4, 5e-3, 0.02, 0.1]) {
      const head = sagGrateHead(grate, flow);
      expectRatio(sagGrateFlow(grate, head).capacity, flow, 1e-9);
    }
    expect([sagGrateFlow(grate, sagGrateHead(grate, 1e-3)).control, sagGrateFlow(grate, sagGrateHead(grate, 0.1)).control]).toEqual(['weir', 'orifice']);
    expect(sagGrateHead(grate, 0)).toBe(0);
  });
  it('row 7.2 turned round', () => {
    const row = fixtureRow('inlet/sagGrate.json', '7.2');
    const clean = { perimeter: given(row, 'p') * FOOT, openArea: given(row, 'a') * FOOT * FOOT, clogging: 1 };
    expectRatio(sagGrateHead(clean, (row.expected['weir'] ?? NaN) * CUBIC_FOOT) / FOOT, given(row, 'd'), 1e-4);
  });
  it('spreads by a quarter below 30 mm and not above', () => {
    const low = sagGrateFlow(grate, 0.0299);
    expect([low.low / low.capacity, low.high / low.capacity].map((v) => Number(v.toFixed(12)))).toEqual([0.75, 1.25]);
    const high = sagGrateFlow(grate, 0.03);
    expect([high.low, high.high, high.belowPublishedHead]).toEqual([high.capacity, high.capacity, false]);
  });
  it('says when weir and orifice are near each other', () => {
    const meet = grateTransitionHead(grate.perimeter, grate.openArea);
    const near = (share: number): boolean => sagGrateFlow(grate, meet * share).inTransition;
    expect([near(0.749), near(0.751), near(1), near(1.249), near(1.251)]).toEqual([false, true, true, true, false]);
    expect([sagGrateFlow(grate, meet * 0.99).control, sagGrateFlow(grate, meet * 1.01).control]).toEqual(['weir', 'orifice']);
    expectRatio(meet, (0.67 * 0.03 * Math.sqrt(2 * GRAVITY)) / (3 * Math.sqrt(FOOT) * 1.2), 1e-12);
  });
  it('names what is wrong', () => {
    expect(() => sagGrateHead({ ...grate, clogging: 0 }, 1)).toThrow('value.notPositive at clogging');
    expect(() => sagGrateHead({ ...grate, clogging: 1.1 }, 1)).toThrow('value.aboveOne at clogging');
    expect(() => sagGrateHead(grate, -1)).toThrow('value.negative at flow');
    expect(() => sagGrateHead({ ...grate, openArea: 0 }, 1)).toThrow('value.notPositive at openArea');
    expect(() => sagGrateFlow({ ...grate, perimeter: 0 }, 1)).toThrow('value.notPositive at perimeter');
    expect(() => grateTransitionHead(0, 1)).toThrow('value.notPositive at perimeter');
    expect(ALLOWED_GRATE_HEAD).toBe(INCH);
  });
});

describe('edge of a grate', () => {
  it('row 7.4: four sides of a 4 in box; a side at the curb is left out', () => {
    const row = fixtureRow('inlet/sagGrate.json', '7.4');
    expectNear(grateEdge(4 * INCH, 4 * INCH, 2, 2) / FOOT, given(row, 'p'), 1e-4);
    expect([grateEdge(3, 0.5, 2, 2), grateEdge(3, 0.5, 1, 2), grateEdge(3, 0.5, 1, 0), grateEdge(3, 0.5, 0, 1)]).toEqual([7, 4, 3, 0.5]);
    expect(() => grateEdge(3, 0.5, 0, 0)).toThrow('inlet.noSide at longSides');
    expect(() => grateEdge(3, 0.5, 3, 0)).toThrow('inlet.sides at longSides');
    expect(() => grateEdge(3, 0.5, 1, -1)).toThrow('inlet.sides at shortSides');
    expect(() => grateEdge(0, 0.5, 1, 1)).toThrow('value.notPositive at length');
  });
});

describe('weirs and openings', () => {
  it('coefficients of rims in US units, and flows by hand', () => {
    expect([SHARP_RIM_WEIR, SLAB_RIM_WEIR, GRASS_RIM_WEIR, GRATE_WEIR].map((c) => Number((c / Math.sqrt(FOOT)).toFixed(9)))).toEqual([3, 2.6, 2, 3]);
    expectNear(weirFlow(1.7, 2, 0.09), 1.7 * 2 * 0.027, 1e-12);
    expectNear(orificeFlow(0.6, 0.01, 0.5), 0.006 * Math.sqrt(GRAVITY), 1e-12);
    for (const [a, b, c] of [[-1, 1, 1], [1, -1, 1], [1, 1, -1]] as const) {
      expect(() => weirFlow(a, b, c)).toThrow('value.negative');
      expect(() => orificeFlow(a, b, c)).toThrow('value.negative');
    }
  });
});
