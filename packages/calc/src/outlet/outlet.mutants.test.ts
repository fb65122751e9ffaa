import { describe, expect, it } from 'vitest';
import { expectProblems } from '../testing/expectProblems.ts';
import { dryWellEmptying, dryWellStep } from './dryWell.ts';
import { percolationPit } from './percolationPit.ts';
import { infiltrationFromHole } from './percolationTest.ts';
import { halfWettedArea, soakageRate, soakaway } from './soakaway.ts';
import { surfaceReturn } from './surfaceReturn.ts';

const pit = { area: 0.6, perimeter: 3, depth: 0.2, voids: 0.4, bottomLevel: 29.9 };
const well = { area: 2, perimeter: 6, depth: 1, voids: 0.4, baseRate: 2e-5, sideRate: 1e-5 };

describe('pits and soakaways, corner by corner', () => {
  it('refuse what no pit is', () => {
    expectProblems([
      [() => percolationPit({ ...pit, area: 0 }, 0.04, null, null), 'value.notPositive at area'],
      [() => percolationPit({ ...pit, voids: 1.1 }, 0.04, null, null), 'value.aboveOne at voids'],
      [() => percolationPit({ ...pit, depth: -0.1 }, 0.04, null, null), 'value.negative at depth'],
      [() => percolationPit({ ...pit, bottomLevel: NaN }, 0.04, null, null), 'value.notFinite at bottomLevel'],
      [() => percolationPit(pit, 0.04, 0, null), 'value.notPositive at infiltration'],
      [() => infiltrationFromHole(0, 0.3, 0.01, 60), 'value.notPositive at radius'],
      [() => infiltrationFromHole(0.1, 0.3, 0.6, 60), 'value.notPositive at left'],
      [() => soakaway(0, [{ duration: 60, depth: 1 }], 1, 1e-5), 'value.notPositive at area'],
      [() => soakaway(1, [{ duration: 0, depth: 1 }], 1, 1e-5), 'value.notPositive at storms/0/duration'],
      [() => soakaway(1, [{ duration: 60, depth: -1 }], 1, 1e-5), 'value.negative at storms/0/depth'],
      [() => soakaway(1, [], 1, 1e-5), 'soakaway.noStorms at storms'],
      [() => halfWettedArea(0, 1, 1), 'value.notPositive at length'],
      [() => soakageRate(0, 1, 1), 'value.notPositive at volume'],
      [() => dryWellStep(well, NaN, 0, 60), 'value.notFinite at start'],
    ]);
    // Water that falls by nearly all of what stood: a drop of 0.5 m from 0.3 m means 0.05 m left on average.
    expect(infiltrationFromHole(0.1, 0.3, 0.5, 60)).toBeCloseTo((0.5 * 0.1) / (60 * (0.1 + 2 * 0.05)), 12);
  });

  it('a pit below the water table holds less, one whose table lies below datum all of it', () => {
    expect(percolationPit({ ...pit, bottomLevel: -2 }, 0.04, null, null).volume).toBeCloseTo(0.4 * 0.6 * 0.2, 12);
    const exact = percolationPit({ ...pit, area: 1, depth: 1, voids: 0.5 }, 0.5, null, null);
    expect([exact.share, exact.holdsLine]).toEqual([1, true]);
    expect(percolationPit(pit, 0.024, null, null).share).toBeCloseTo(2, 12);
  });

  it('a soakaway is as big as its worst storm, the first of equals, and nothing when all soaks away', () => {
    const { worst } = soakaway(100, [{ duration: 600, depth: 10 }, { duration: 600, depth: 10 }], 10, 1e-5);
    expect(worst).toEqual({ duration: 600, inflow: 1, outflow: 10 * 1e-5 * 600, storage: 1 - 10 * 1e-5 * 600 });
    // Two storms that need the very same room: inflow less outflow is 1 m3 in both.
    expect(soakaway(1000, [{ duration: 1024, depth: 2 }, { duration: 2048, depth: 3 }], 1, 1 / 1024).worst.duration).toBe(1024);
    expect(soakaway(100, [{ duration: 600, depth: 10 }, { duration: 700, depth: 5 }], 10, 1e-5).worst.duration).toBe(600);
    const none = soakaway(1, [{ duration: 3600, depth: 1 }], 10, 1e-3);
    expect(none.worst.storage).toBeLessThan(0);
    expect(none.halfEmptyTime).toBe(0);
  });

  it('a dry well empties in no time from a depth to itself, and never through a sealed floor', () => {
    expect(dryWellEmptying(well, 0.5, 0.5)).toBe(0);
    const sealed = { ...well, baseRate: 0, sideRate: 0 };
    expect([dryWellEmptying(sealed, 0.5, 0.5), dryWellEmptying(sealed, 0.5, 0)]).toEqual([0, Infinity]);
    const floorOnly = { ...well, sideRate: 0 };
    expect(dryWellEmptying(floorOnly, 0.75, 0.25)).toBeCloseTo((0.4 * 0.5) / 2e-5, 6);
    expect(dryWellEmptying({ ...well, area: 1, baseRate: 1, sideRate: 0 }, 0.75, 0.5)).toBeCloseTo(0.1, 12);
    const sidesOnly = { ...well, baseRate: 0 };
    expect(dryWellEmptying(sidesOnly, 0.5, 0)).toBe(Infinity);
    expect(dryWellEmptying(sidesOnly, 1, 0.5)).toBeCloseTo(((0.4 * 2) / 6e-5) * Math.log(2), 6);
    expect(dryWellEmptying({ ...well, area: 1, baseRate: 1, sideRate: 1, perimeter: 1 }, 1, 0)).toBeCloseTo(0.4 * Math.log(2), 12);
    // A full well under more rain spills from the first moment on.
    const full = dryWellStep(well, 1, 1e-3, 100);
    expect(full.depth).toBe(1);
    expect(full.overflow + full.seeped).toBeCloseTo(0.1, 12);
    expect(full.seeped).toBeCloseTo(100 * (2 * 2e-5 + 6e-5), 9);
  });

  it('water finds no way back when no ridge was measured and the ground falls away', () => {
    expect(surfaceReturn(1, 2, null, 10).returns).toBe(false);
    expect(surfaceReturn(2, 1, null, 10).returns).toBe(true);
  });
});
