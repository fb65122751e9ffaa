import { describe, expect, it } from 'vitest';
import { HOUR } from '../common/constants.ts';
import type { Catchment, RainTable } from '../document/document.ts';
import { SHARP_RIM_WEIR } from '../inlet/weir.ts';
import { LevelTable } from '../routing/levelTable.ts';
import type { PondStore } from '../routing/model.ts';
import { expectProblems } from '../testing/expectProblems.ts';
import { expectRatio } from '../testing/near.ts';
import { demoSite } from '../testing/sites.ts';
import { annualLevel } from './annualLevel.ts';
import { spilledDown } from './closedForm.ts';
import { BLOCKS, hourShares, ormsbeeHour, sharedHour, uniformHour, waysOf, wetSteps } from './disaggregate.ts';
import { gaugeDistance } from './gaugeDistance.ts';
import { LossStore, recoveryShare } from './lossStore.ts';
import { poissonAtMost, poissonLimits } from './poissonLimits.ts';
import { MISSING, type RainRecord } from './rainRecord.ts';
import { Watch } from './watch.ts';

const site = demoSite('tern-hollow');
const recordOf = (depths: readonly number[], step: 3600 | 300 = 3600): RainRecord =>
  ({ gauge: { id: 'X', name: '', latitude: null, longitude: null, distance: null }, step, startDay: 0, depths: Float64Array.from(depths), accumulations: [], rejected: 0 });
const blocks = (fill: (into: Float64Array) => void): number[] => {
  const into = new Float64Array(BLOCKS).fill(9);
  fill(into);
  return Array.from(into);
};

describe('levels once in years', () => {
  it('are read off the ranks: the m-th highest of n has the return period (n + 1)/m', () => {
    const years = [3, 1, 2, 5].map((level, i) => ({ year: 2001 + i, level }));
    // 5, 3, 2, 1 at 5, 2.5, 5/3 and 5/4 years; places 2.5, 1.25 and 3 between them, and the lowest for every year.
    expect([2, 4, 5 / 3, 1].map((period) => annualLevel(years, period))).toEqual([2.5, 4.5, expect.closeTo(2, 12), 1]);
    for (const period of [0.99, 4.01, NaN]) expect(() => annualLevel(years, period)).toThrow('record.beyondRecord at returnPeriod');
  });
});

describe('an hour in five-minute blocks', () => {
  const ormsbee = (before: number, depth: number, after: number) => blocks((into) => { ormsbeeHour(before, depth, after, into); });
  it('along the hours beside it: trough, its mirror, small depths, nothing', () => {
    // 8, 2, 4: t* = 6/8; area to t* 0.375 x 10 = 3.75, in all 4.5. First block (8 - 4/12)/12 x 2/4.5; last (4.5 - 3.75 - (2 + 2/3)/6) x 2/4.5.
    const [first, last] = [((8 - 4 / 12) / 12) * (2 / 4.5), (0.75 - (2 + 2 / 3) / 6) * (2 / 4.5)];
    for (const scale of [1, 0.1]) {
      const trough = ormsbee(8 * scale, 2 * scale, 4 * scale);
      expect([trough[0], trough[11]]).toEqual([expect.closeTo(first * scale, 12), expect.closeTo(last * scale, 12)]);
      const mirror = ormsbee(4 * scale, 2 * scale, 8 * scale);
      trough.forEach((depth, i) => { expect(mirror[11 - i]).toBeCloseTo(depth, 12); });
    }
    // 2, 6, 6: t* = 1 and the line runs straight from 2 to 6: block i holds (2 + 4 (i - 1/2)/12)/12 of 4, times 6.
    ormsbee(2, 6, 6).forEach((depth, i) => { expect(depth).toBeCloseTo(((2 + (4 * (i + 0.5)) / 12) / 12 / 4) * 6, 12); });
    expect(ormsbee(0, 0, 0)).toEqual(new Array(12).fill(0));
    expect(ormsbee(3, 0.5, 3).reduce((sum, depth) => sum + depth, 0)).toBeCloseTo(0.5, 14);
  });

  it('adds up in its order to the very depth, whatever the depth', () => {
    const shares = hourShares(site.rain.table);
    expect(shares.reduce((sum, share) => sum + share, 0)).toBe(1);
    for (let k = 1; k <= 400; k += 1) {
      const depth = k * 0.254;
      for (const fill of [(into: Float64Array) => { uniformHour(depth, into); }, (into: Float64Array) => { ormsbeeHour(k % 7, depth, k % 11, into); }, (into: Float64Array) => { sharedHour(depth, shares, into); }]) {
        const sum = blocks(fill).reduce((total, value) => total + value, 0);
        if (!(Math.abs(sum - depth) <= 2.3e-16 * depth)) expect(sum).toBe(depth);
      }
    }
  });

  it('puts what rounding leaves over where most rain falls: a dry five minutes stays dry', () => {
    const burst = Float64Array.from([0, 0.05, 0.05, 0.07, 0.09, 0.13, 0.21, 0.17, 0.11, 0.07, 0.05, 0]);
    let put = 0;
    for (let k = 1; k <= 100; k += 1) {
      const depth = k * 0.1234567;
      const made = blocks((into) => { sharedHour(depth, burst, into); });
      made.forEach((part, i) => { if (i !== 6) expect(part).toBe(depth * burst[i]!); });
      if (made[6] !== depth * 0.21) put += 1;
    }
    expect(put).toBeGreaterThan(5);
  });

  const table = (returnPeriods: readonly number[], five: readonly number[], hour: readonly number[]): RainTable =>
    ({ ...site.rain.table, durations: [300, 3600], returnPeriods, depths: [five, hour] });
  it('by the rain table at two years, or at the end of a table without them', () => {
    const largest = (made: RainTable) => Math.max(...hourShares(made));
    expect(largest(table([1, 2, 5], [10, 8, 12], [20, 20, 20]))).toBeCloseTo(0.4, 12);
    expect(largest(table([5, 10], [12, 8], [20, 20]))).toBeCloseTo(0.6, 12);
    expect(largest(table([0.5, 1], [8, 10], [20, 20]))).toBeCloseTo(0.5, 12);
    expect(largest(table([2, 5], [0.2, 0.3], [0.5, 0.6]))).toBeCloseTo(0.4, 12);
    expectProblems([[() => hourShares(table([1, 2], [0, 0], [0, 0])), 'rain.zeroDepth at rain/table/depths']]);
    // Rounding leaves no more than a last bit of one over.
    for (let k = 1; k <= 60; k += 1) expect(Math.abs(hourShares(table([2, 5], [k / 300, k], [1, 2 * k])).reduce((sum, share) => sum + share, 0) - 1)).toBeLessThan(2.3e-16);
  });

  it('the wet steps of a part: neighbors of an hour, its own five minutes, no dry ones', () => {
    const hourly = recordOf([5, 4, 20, 6, 0, 12, 0.5]);
    const along = wetSteps(hourly, 'ormsbee', null, 2, 3);
    expect([along.index[0], along.index.at(-1), along.index.length]).toEqual([24, 35, 12]);
    expect(along.depth).toEqual(ormsbee(4, 20, 6));
    expect(wetSteps(hourly, 'ormsbee', null, 0, 1).depth).toEqual(ormsbee(MISSING, 5, 4));
    expect(wetSteps(hourly, 'ormsbee', null, 6, 7).depth).toEqual(ormsbee(12, 0.5, MISSING));
    expect(wetSteps(hourly, 'uniform', null, 4, 6)).toEqual({ index: Array.from({ length: 12 }, (_, k) => 60 + k), depth: new Array(12).fill(1) });
    const burst = Float64Array.from([0, 0, 0, 0, 0, 0, 0.75, 0.25, 0, 0, 0, 0]);
    expect(wetSteps(hourly, 'alternatingBlock', burst, 5, 6)).toEqual({ index: [66, 67], depth: [9, 3] });
    expect(wetSteps(recordOf([0, 2, MISSING, 0.5], 300), 'recorded', null, 0, 4)).toEqual({ index: [1, 3], depth: [2, 0.5] });
    expect([waysOf(hourly), waysOf(recordOf([], 300))]).toEqual([['ormsbee', 'alternatingBlock'], ['recorded']]);
  });
});

describe('losses', () => {
  it('recover whole at 24 h and not before; a soil that is outrun lets the rest run off', () => {
    expect([recoveryShare(24 * HOUR), recoveryShare(24 * HOUR - 1) > 0]).toEqual([0, true]);
    const lawn = site.site.catchments.find(({ surface }) => surface === 'lawn') as Catchment;
    // 1e-6 m/s for 300 s are 0.3 mm of 0.5 mm.
    const store = new LossStore({ ...lawn, depressionStorage: 0, loss: { method: 'horton', initial: 1e-6, final: 1e-6, decay: 1e-3 } });
    expect(store.excess(0.5, 300)).toBeCloseTo(0.2, 12);
  });
});

describe('distance of a gauge, by hand', () => {
  it('great circles of known length', () => {
    const share = (a: readonly [number, number], b: readonly [number, number]) => gaugeDistance({ latitude: a[0], longitude: a[1] }, { latitude: b[0], longitude: b[1] }) / (Math.PI * 6_371_008.8);
    // A quarter of the way round from the equator to any place 90 degrees east; 120 degrees over the pole; half round.
    expect([share([0, 0], [60, 90]), share([60, 90], [0, 0]), share([30, 0], [30, 180]), share([-90, 360], [90, -360]), share([82, -180], [-82, 0])]).toEqual([0.5, 0.5, 2 / 3, 1, 1].map((value) => expect.closeTo(value, 9)));
  });

  it('places beyond the poles and the whole turn', () => {
    const bad = (latitude: number, longitude: number) => () => gaugeDistance({ latitude: 0, longitude: 0 }, { latitude, longitude });
    for (const [latitude, longitude] of [[-90.5, 0], [90.5, 0], [0, 360.5], [0, -360.5]] as const) expect(bad(latitude, longitude)).toThrow('record.place at site');
  });
});

describe('chances of counts', () => {
  /** The same sum, term by term. */
  const summed = (n: number, mean: number) => {
    let term = Math.exp(-mean);
    let sum = term;
    for (let k = 1; k <= n; k += 1) {
      term *= mean / k;
      sum += term;
    }
    return sum;
  };
  it('agree with the plain sum on both sides of the mean and of the long series', () => {
    for (const [n, mean] of [[3, 0], [0, 0.5], [3, 3], [64, 60], [64, 70], [65, 60], [65, 65], [66, 70], [90, 100], [200, 190]] as const) expectRatio(poissonAtMost(n, mean), summed(n, mean), 2e-12);
  });

  it('limits at 95 % unless another confidence is asked for; a million and no more', () => {
    // No event in the record: 1 - 0.025 of all means above -ln 0.025 would have shown one.
    expect(poissonLimits(0)).toEqual({ lower: 0, upper: expect.closeTo(-Math.log(0.025), 9) });
    expectProblems([[() => poissonLimits(1, 0), 'record.confidence at confidence'], [() => poissonLimits(1_000_001), 'record.count at count']]);
    expect(poissonLimits(0, 0.9999).upper).toBeCloseTo(-Math.log(0.00005), 8);
    // Large counts are nearly normal: n + (z^2 + 2)/3 + z sqrt(n), from memory; z = 1.96.
    const { lower, upper } = poissonLimits(1_000_000);
    expect([Math.abs(upper - 1_001_963) < 2, Math.abs(lower - 998_041) < 2]).toEqual([true, true]);
  });
});

describe('a low spot that is watched', () => {
  const tank = LevelTable.tabulate(0, 4, 40, (level) => 10 * level); // 10 m2
  it('highest level, events and minutes of each sill, part by part', () => {
    const watch = new Watch(tank, [1, 2]);
    watch.see(5, 1, 1);
    watch.see(10, 2, 1);
    watch.see(20, 10, 2);
    watch.fall(25, 0.5, 10, 20); // 20 minutes over the lower sill, 5 m3 and so 10 minutes over the upper one
    watch.fall(9, 0.5, 30, 20);
    expect(watch.close(3)).toEqual({ maxLevel: 2, events: [1, 1], minutesOver: [23, 12] });
    expect(watch.close(0)).toEqual({ maxLevel: expect.closeTo(0.3, 12), events: [0, 0], minutesOver: [0, 0] });
    watch.see(20, 389, 1); // 358 minutes after the lower sill, 368 after the upper one
    expect(watch.close(0)).toMatchObject({ events: [0, 1], minutesOver: [1, 1] });
  });

  it('six hours apart are two events; water at the very sill is an event, a dry bottom none', () => {
    const watch = new Watch(tank, [1]);
    for (const minute of [1, 362, 722]) watch.see(10, minute, 1); // gaps of 360 and 359 minutes
    watch.fall(10, 1, 2000, 10);
    watch.fall(15, 0, 4000, 10);
    expect(watch.close(0)).toMatchObject({ events: [4], minutesOver: [3 + 0 + 10] });
    const bottom = new Watch(tank, [0]);
    bottom.see(0, 1, 1);
    bottom.fall(0, 1, 1, 10);
    expect(bottom.close(0)).toMatchObject({ events: [0] });
    bottom.see(0.001, 3, 1);
    expect(bottom.close(0)).toMatchObject({ events: [1], minutesOver: [1] });
  });
});

describe('spilling over the rim, at its edges', () => {
  const pond = (volumeAt: (level: number) => number): PondStore => ({ id: 'P', storage: LevelTable.tabulate(0, 2, 20, volumeAt), rimLevel: 1, spillWidth: 2, spillsTo: -1, loss: 0 });
  it('follows A dh/dt = -C L h^1.5, integrated in small steps', () => {
    const straight = pond((level) => 10 * level);
    let head = 0.05;
    const slope = (h: number) => (-SHARP_RIM_WEIR * 2 * h * Math.sqrt(h)) / 10;
    for (let k = 0; k < 10_000; k += 1) { // midpoint rule
      head += 0.01 * slope(head + 0.005 * slope(head));
    }
    expectRatio(spilledDown(straight, 10.5, 100)! - 10, 10 * head, 1e-6);
    expect([spilledDown(straight, 10, 100), spilledDown(straight, 9.9, 100)]).toEqual([10, null]);
  });

  it('not from a cell with another area', () => {
    for (const above of [20, 5]) expect(spilledDown(pond((level) => 10 * level + (above - 10) * Math.max(0, level - 1.1)), 10 + 1 + above * 0.05, 100)).toBeNull();
  });
});
