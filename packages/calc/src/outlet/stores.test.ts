import { describe, expect, it } from 'vitest';
import { GRAVITY, INCH, MINUTE } from '../common/constants.ts';
import { manningVelocity } from '../pipe/manning.ts';
import { fixtureRow, given } from '../testing/fixtures.ts';
import { expectNear, expectRatio } from '../testing/near.ts';
import { dryWellEmptying, dryWellSeepage, dryWellStep, dryWellVolume, type DryWell } from './dryWell.ts';
import { emitterHead, FLOODED_LAWN, openingHead, stormTailwater } from './emitter.ts';
import { percolationPit } from './percolationPit.ts';
import { PERCOLATION_LIMITS, percolationVerdict } from './percolationProcedure.ts';
import { SOAKAWAY_RULES } from './soakawayRules.ts';
import { sheetAtLine, surfaceReturn } from './surfaceReturn.ts';

const row = fixtureRow('outlet/dryWell.json', 'hand');
const well: DryWell = { area: given(row, 'area'), perimeter: given(row, 'perimeter'), depth: given(row, 'depth'), voids: given(row, 'voids'), baseRate: given(row, 'base'), sideRate: given(row, 'side') };

describe('dry well', () => {
  it('row hand: seepage, volume, time to empty', () => {
    expectNear(dryWellSeepage(well, 1.2), row.expected['seepageFull'], 1e-15);
    expectNear(dryWellSeepage(well, 0.6), row.expected['seepageHalf'], 1e-15);
    expectNear(dryWellVolume(well), row.expected['volume'], 1e-12);
    expectNear(dryWellEmptying(well, 1.2, 0), row.expected['empty'], row.tolerance);
    expect([dryWellSeepage(well, 0), dryWellSeepage(well, 9)]).toEqual([0, dryWellSeepage(well, 1.2)]);
  });

  it('with one rate all over it empties as the percolation pit', () => {
    const same = { ...well, baseRate: 3e-6 };
    const pit = percolationPit({ area: 4, perimeter: 8, depth: 1.2, voids: 0.4, bottomLevel: 0 }, 1, 3e-6, null);
    expectRatio(dryWellEmptying(same, 1.2, 0), pit.timeToEmpty ?? NaN, 1e-12);
    expectRatio(dryWellEmptying(well, 1.2, 0.6) + dryWellEmptying(well, 0.6, 0), dryWellEmptying(well, 1.2, 0), 1e-12);
  });

  it('sealed sides or base: straight fall, never quite empty, never at all', () => {
    expectRatio(dryWellEmptying({ ...well, sideRate: 0 }, 1.2, 0.2), 0.4 / 2e-6, 1e-12);
    expectRatio(dryWellEmptying({ ...well, baseRate: 0 }, 1.2, 0.6), (1.6 / 2.4e-5) * Math.log(2), 1e-12);
    expect(dryWellEmptying({ ...well, baseRate: 0 }, 1.2, 0)).toBe(Infinity);
    expect(dryWellEmptying({ ...well, baseRate: 0, sideRate: 0 }, 1.2, 0.6)).toBe(Infinity);
    expect(dryWellEmptying(well, 0.5, 0.5)).toBe(0);
    expect(() => dryWellEmptying(well, 0.5, 0.6)).toThrow('value.negative at fall');
  });

  it('a step under inflow is the balance in small steps, with nothing lost', () => {
    for (const [start, inflow, time] of [[0, 5e-5, 7200], [0.5, 1e-4, 3600], [1.1, 2e-5, 7200], [0.3, 0, 3600]] as const) {
      const own = dryWellStep(well, start, inflow, time);
      let h = start;
      for (let i = 0; i < 20000; i += 1) h += ((inflow - dryWellSeepage(well, h)) * time) / 20000 / 1.6;
      expectNear(own.depth, h, 1e-4);
      expectNear(inflow * time, own.seeped + 1.6 * (own.depth - start) + own.overflow, 1e-12);
      expect(own.overflow).toBe(0);
    }
  });

  it('goes over its top from the moment it is full', () => {
    const own = dryWellStep(well, 1, 1e-3, 3600);
    const full = dryWellSeepage(well, 1.2);
    expect(own.depth).toBe(1.2);
    let [h, over] = [1, 0];
    for (let i = 0; i < 36000; i += 1) {
      h += ((1e-3 - dryWellSeepage(well, h)) * 0.1) / 1.6;
      if (h > 1.2) [h, over] = [1.2, over + (h - 1.2) * 1.6];
    }
    expectRatio(own.overflow, over, 1e-3);
    expectNear(1e-3 * 3600, own.seeped + 1.6 * 0.2 + own.overflow, 1e-12);
    expectNear(dryWellStep(well, 1.2, 1e-3, 100).overflow, 100 * (1e-3 - full), 1e-12);
    // An inflow that the full well just takes keeps it there.
    expectNear(dryWellStep(well, 1.2, full, 3600).overflow, 0, 1e-12);
    const straight = dryWellStep({ ...well, sideRate: 0 }, 1, 1e-3, 3600);
    expectNear(straight.overflow, (3600 - (1.6 * 0.2) / (1e-3 - 8e-6)) * (1e-3 - 8e-6), 1e-9);
  });

  it('empties to the floor and stays there', () => {
    const own = dryWellStep(well, 0.01, 0, 86400);
    expect(own).toEqual({ depth: 0, seeped: expect.closeTo(0.016, 12), overflow: 0 });
    const trickle = dryWellStep(well, 0, 1e-6, 3600);
    expect(trickle).toEqual({ depth: 0, seeped: expect.closeTo(3.6e-3, 12), overflow: 0 });
    expectNear(dryWellStep({ ...well, sideRate: 0 }, 0.5, 0, 3600).depth, 0.5 - (2e-6 * 3600) / 0.4, 1e-12);
  });

  it('names what is wrong', () => {
    expect(() => dryWellSeepage({ ...well, voids: 1.2 }, 0)).toThrow('value.aboveOne at voids');
    expect(() => dryWellSeepage({ ...well, baseRate: -1 }, 0)).toThrow('value.negative at baseRate');
    expect(() => dryWellSeepage(well, -1)).toThrow('value.negative at depth');
    expect(() => dryWellVolume({ ...well, area: 0 })).toThrow('value.notPositive at area');
    expect(() => dryWellEmptying({ ...well, depth: 0 }, 0, 0)).toThrow('value.notPositive at depth');
    expect(() => dryWellStep(well, 1.3, 0, 1)).toThrow('value.negative at room');
    expect(() => dryWellStep(well, 1, -1, 1)).toThrow('value.negative at inflow');
    expect(() => dryWellStep(well, 1, 0, 0)).toThrow('value.notPositive at time');
    expect(() => dryWellStep(well, NaN, 0, 1)).toThrow('value.notFinite at start');
    expect(() => dryWellStep({ ...well, perimeter: 0 }, 1, 0, 1)).toThrow('value.notPositive at perimeter');
  });

  it('row 17.10: the rules that stand beside it', () => expect(SOAKAWAY_RULES).toEqual(fixtureRow('outlet/dryWell.json', '17.10').expected));
});

describe('emitter', () => {
  const r = fixtureRow('outlet/emitter.json', 'hand');
  const emitter = { lidMass: given(r, 'mass'), lidArea: given(r, 'area'), openArea: given(r, 'open'), coefficient: given(r, 'c') };
  it('row hand: opening head, head at the flow, half blocked', () => {
    expectNear(openingHead(emitter.lidMass, emitter.lidArea), r.expected['opening'], r.tolerance);
    expectNear(emitterHead(emitter, given(r, 'flow'), 0.5), r.expected['half'], r.tolerance);
    // The whole opening needs less than the lid: the lid rules.
    expect(r.expected['head']).toBeLessThan(r.expected['opening'] ?? NaN);
    expectNear(emitterHead(emitter, given(r, 'flow')), r.expected['opening'], r.tolerance);
    expectNear(emitterHead({ ...emitter, lidMass: 0 }, given(r, 'flow')), r.expected['head'], r.tolerance);
    expectRatio(emitterHead({ ...emitter, lidMass: 0 }, 0.002, 0.5), 4 * emitterHead({ ...emitter, lidMass: 0 }, 0.002), 1e-12);
    expect(emitterHead(emitter, 0)).toBe(0);
  });
  it('a wet lawn stands over the lid unless the water is known', () => {
    expect([stormTailwater(2, null), stormTailwater(2, 2.5), stormTailwater(2, 1)]).toEqual([2 + FLOODED_LAWN, 2.5, 1]);
    expectNear(FLOODED_LAWN, 0.1 * 0.3048, 1e-15);
  });
  it('names what is wrong', () => {
    expect(() => emitterHead(emitter, 0.001, 1)).toThrow('value.notPositive at left');
    expect(() => emitterHead(emitter, 0.001, -0.1)).toThrow('value.negative at blocked');
    expect(() => emitterHead(emitter, -1)).toThrow('value.negative at flow');
    expect(() => emitterHead({ ...emitter, openArea: 0 }, 0)).toThrow('value.notPositive at openArea');
    expect(() => openingHead(-1, 1)).toThrow('value.negative at lidMass');
    expect(() => openingHead(1, 0)).toThrow('value.notPositive at lidArea');
  });
});

describe('water on the way over ground', () => {
  it('comes back when the ground falls back and no ridge stands between', () => {
    expect(surfaceReturn(10, 9.8, null, 20)).toEqual({ slope: expect.closeTo(0.01, 12), returns: true });
    expect(surfaceReturn(9.8, 10, null, 20).returns).toBe(false);
    expect(surfaceReturn(10, 10, null, 20)).toEqual({ slope: 0, returns: false });
    expect([surfaceReturn(10, 9.8, 10.1, 20).returns, surfaceReturn(10, 9.8, 10, 20).returns, surfaceReturn(10, 9.8, 9.9, 20).returns]).toEqual([false, false, true]);
    expect(() => surfaceReturn(NaN, 1, null, 1)).toThrow('value.notFinite at outletGround');
    expect(() => surfaceReturn(1, 1, NaN, 1)).toThrow('value.notFinite at ridge');
    expect(() => surfaceReturn(1, 1, null, 0)).toThrow('value.notPositive at distance');
  });
  it('crosses the lot line as a sheet: Manning at R = y', () => {
    const own = sheetAtLine(0.004, 6, 0.02, 0.24);
    expectRatio(own.velocity, manningVelocity(own.depth, 0.02, 0.24), 1e-12);
    expectNear(own.velocity * own.depth * 6, 0.004, 1e-15);
    expect(sheetAtLine(0, 6, 0.02, 0.24)).toEqual({ depth: 0, velocity: 0 });
    expect(() => sheetAtLine(-1, 6, 0.02, 0.24)).toThrow('value.negative at flow');
    expect(() => sheetAtLine(0, 0, 0.02, 0.24)).toThrow('value.notPositive at width');
    expect(GRAVITY).toBe(9.80665);
  });
});

describe('percolation procedure', () => {
  const reading = (minutes: number, inches: number): { interval: number; drop: number } => ({ interval: minutes * MINUTE, drop: inches * INCH });
  const perInch = (rate: number | null): number => ((rate ?? NaN) * INCH) / MINUTE;

  it('the last of three like readings counts', () => {
    const own = percolationVerdict([reading(30, 1), reading(30, 0.6), reading(30, 0.55), reading(30, 0.5625)]);
    expectNear(perInch(own.rate), 30 / 0.5625, 1e-9);
    expect([own.settled, own.suitable, own.useFastInterval]).toEqual([true, true, false]);
    expect(percolationVerdict([reading(30, 0.6), reading(30, 0.6)]).settled).toBe(false);
    expect(percolationVerdict([reading(30, 0.6), reading(30, 0.6), reading(30, 0.6625)]).settled).toBe(true);
    expect(percolationVerdict([reading(30, 0.6), reading(30, 0.6), reading(30, 0.664)]).settled).toBe(false);
    expect(percolationVerdict([reading(15, 0.6), reading(30, 0.6), reading(30, 0.6)]).settled).toBe(false);
    expect(percolationVerdict([reading(30, 2), reading(30, 0.6), reading(30, 0.6), reading(30, 0.6)]).settled).toBe(true);
  });
  it('over 60 min/in is unsuitable; standing water has no rate', () => {
    expect([percolationVerdict([reading(60, 1)]).suitable, percolationVerdict([reading(60, 0.99)]).suitable]).toEqual([true, false]);
    expect(percolationVerdict([reading(30, 0)])).toEqual({ rate: null, settled: false, useFastInterval: false, suitable: false });
    expectNear(perInch(PERCOLATION_LIMITS.slowest), 60, 1e-12);
  });
  it('more than 6 in lost in 30 minutes calls for short readings', () => {
    const fast = (minutes: number, inches: number): boolean => percolationVerdict([reading(minutes, inches)]).useFastInterval;
    expect([fast(30, 6.1), fast(30, 6), fast(10, 6.1)]).toEqual([true, false, false]);
    expect([PERCOLATION_LIMITS.slowInterval, PERCOLATION_LIMITS.fastInterval, PERCOLATION_LIMITS.likeReadings]).toEqual([1800, 600, 3]);
  });
  it('names what is wrong', () => {
    expect(() => percolationVerdict([])).toThrow('percolation.noReadings at readings');
    expect(() => percolationVerdict([{ interval: 0, drop: 1 }])).toThrow('value.notPositive at readings/0/interval');
    expect(() => percolationVerdict([{ interval: 1, drop: -1 }])).toThrow('value.negative at readings/0/drop');
  });
});
