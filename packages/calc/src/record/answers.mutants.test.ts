import { describe, expect, it } from 'vitest';
import type { DesignDocument, LowSpot } from '../document/document.ts';
import { changed, demoSite } from '../testing/sites.ts';
import { dayNumber } from './calendar.ts';
import type { FittedLoss } from './fitExistingLoss.ts';
import { assemble, longRecord } from './longRecord.ts';
import { LongRun, type CaseRun, type RecordCase, runToEnd, startCase, type WayRun, withLosses } from './longRun.ts';
import { poissonLimits } from './poissonLimits.ts';
import type { RainRecord } from './rainRecord.ts';

const site = demoSite('tern-hollow');
const [spot] = site.site.lowSpots as [LowSpot];
/** Two low spots: two sills at the second one around that of the first. */
const two = changed(site, (copy) => {
  copy.site.lowSpots.push({ ...copy.site.lowSpots[0]!, id: 'L2', name: 'Lawn' });
  const [sill] = copy.site.sills;
  copy.site.sills = [{ ...sill!, id: 'A', lowSpot: 'L2' }, { ...sill!, id: 'S1' }, { ...sill!, id: 'B', lowSpot: 'L2' }];
});
/** A yard with those of its parts that are named; what ran to others runs to the low spot. */
const bare = (document: DesignDocument, ...left: readonly string[]): DesignDocument => changed(document, (copy) => {
  copy.system.parts = copy.system.parts.filter(({ id }) => left.includes(id));
  for (const catchment of copy.site.catchments) if (catchment.drainsTo.kind === 'part') catchment.drainsTo = { kind: 'lowSpot', id: 'L1' };
  copy.construction.trenches = [];
  copy.construction.slabCuts = [];
});

/** Days from the last one of 2021 on. */
function recordOf(days: number, step: 3600 | 300, rain: Readonly<Record<number, number>> = {}): RainRecord {
  const depths = new Float64Array((days * 86_400) / step);
  for (const [reading, depth] of Object.entries(rain)) depths[Number(reading)] = depth;
  return { gauge: { id: 'X', name: 'X', latitude: null, longitude: null, distance: null }, step, startDay: dayNumber(2021, 12, 31), depths, accumulations: [], rejected: 0 };
}
const readings = (from: number, count: number, depth: number): Record<number, number> => Object.fromEntries(Array.from({ length: count }, (_, i) => [from + i, depth]));

describe('what the runs of a record say of each sill', () => {
  const year = (first: readonly number[], second: readonly number[], level = 30) => [
    { maxLevel: level, events: [first[0]!], minutesOver: [first[1]!] }, { maxLevel: level + 1, events: [second[0]!, second[2]!], minutesOver: [second[1]!, second[3]!] },
  ];
  const run = (recordCase: RecordCase, times: number): CaseRun => ({
    recordCase, years: [year([times, 10], [2 * times, 20, 5 * times, 50]), year([times, 7], [times, 3, times, 4])], massError: times * 1e-9, books: { inflow: 0, outflow: 0, solved: 100 * times, closed: 7 * times },
  });
  const runs: WayRun[] = [
    { way: 'uniform', surfaceError: 0, cases: [run('system', 0), run('bare', 50)] },
    { way: 'ormsbee', surfaceError: 2e-8, cases: [run('system', 1), run('bare', 5)] }, { way: 'alternatingBlock', surfaceError: 0, cases: [run('system', 2), run('bare', 3)] },
  ];
  const result = assemble(two, recordOf(2, 3600), runs, null);

  it('events and minutes over it in all years, each sill at its own place of its own low spot', () => {
    expect(result.ways[3]).toMatchObject({
      way: 'ormsbee', recordCase: 'bare',
      sills: [{ sill: 'A', count: 15, minutesOver: 23, perYear: [10, 5] }, { sill: 'S1', count: 10, minutesOver: 17, perYear: [5, 5] }, { sill: 'B', count: 30, minutesOver: 54, perYear: [25, 5] }],
    });
  });
  it('as a range of the two ways that are quoted, with the limits of both ends', () => {
    expect(result.sills.map(({ sill, withSystem }) => [sill, withSystem!.low, withSystem!.high])).toEqual([['A', 3, 6], ['S1', 2, 4], ['B', 6, 12]]);
    expect(result.sills[1]!.withoutSystem).toEqual({ low: 6, high: 10, lowerLimit: poissonLimits(6).lower, upperLimit: poissonLimits(10).upper, estimate: true });
    expect(assemble(two, recordOf(2, 3600), runs.slice(0, 1), null).sills[0]).toEqual({ sill: 'A', withSystem: null, withoutSystem: null });
    const quiet = assemble(two, recordOf(2, 3600), [{ ...runs[1]!, cases: [run('system', 0)] }], null);
    expect(quiet.sills[0]).toEqual({ sill: 'A', withSystem: { low: 0, high: 0, ...limits(0, 0) }, withoutSystem: null });
  });
  const limits = (low: number, high: number) => ({ lowerLimit: poissonLimits(low).lower, upperLimit: poissonLimits(high).upper });
  it('with a system of one part, but none of an empty one', () => {
    const one = changed(two, (copy) => { copy.system.parts.splice(1); });
    expect(assemble(one, recordOf(2, 3600), runs, null).sills[0]!.withSystem).not.toBeNull();
    expect(assemble(bare(two), recordOf(2, 3600), runs, null).sills.map(({ withSystem }) => withSystem)).toEqual([null, null, null]);
  });
  it('no closer than half of what is reported, either way, at the sill of the report', () => {
    const fitted = (perYear: number): FittedLoss => ({ lowSpot: 'L1', sill: 'S1', reportedPerYear: perYear, share: 0.5, ways: [], losses: [] });
    const record = { ...recordOf(730, 3600), startDay: dayNumber(2021, 1, 1) };
    const years = 730 / 365.25;
    const answers = assemble(two, record, runs, fitted(4 / years)).sills;
    // 4 reported, counted 6 to 10: 2 and 6 lie inside the limits of 6 below and of 10 above, so that 2 counts below and the limit above.
    expect(answers[1]!.withoutSystem).toEqual({ low: 6, high: 10, lowerLimit: expect.closeTo(2, 12), upperLimit: poissonLimits(10).upper, estimate: false });
    expect(answers[0]!.withoutSystem).toMatchObject({ estimate: true, ...limits(9, 15) });
    // 20 reported: 10 to 30.
    expect(assemble(two, record, runs, fitted(20 / years)).sills[1]!.withoutSystem).toMatchObject({ lowerLimit: poissonLimits(6).lower, upperLimit: expect.closeTo(30, 12) });
  });
  it('beside the worst error of any run or surface, and the steps of all', () => {
    expect(result.massError).toBeCloseTo(5e-8, 15);
    expect(assemble(two, recordOf(2, 3600), runs.slice(1), null).massError).toBe(2e-8);
    expect(result.steps).toEqual({ solved: 6100, closed: 427 });
  });
});

describe('losses that a fit has found', () => {
  const own = changed(two, (copy) => { for (const one of copy.site.lowSpots) one.existingLoss = 2e-4; });
  const losses = [{ lowSpot: 'L2', way: 'ormsbee', loss: 5e-4 }, { lowSpot: 'L1', way: 'ormsbee', loss: 1e-4 }, { lowSpot: 'L1', way: 'alternatingBlock', loss: 3e-4 }] as const;
  const of = (way: 'ormsbee' | 'alternatingBlock', recordCase: RecordCase) => withLosses(own, losses, way, recordCase).site.lowSpots.map(({ existingLoss }) => existingLoss);
  it('stand in for the own ones of their spot and way; beside a system the smaller of both', () => {
    expect([of('ormsbee', 'bare'), of('alternatingBlock', 'bare')]).toEqual([[1e-4, 5e-4], [3e-4, 2e-4]]);
    expect([of('ormsbee', 'system'), of('alternatingBlock', 'system')]).toEqual([[1e-4, 2e-4], [2e-4, 2e-4]]);
  });
});

describe('a record on its way', () => {
  const hourly = recordOf(2, 3600);
  it('goes year by year and way by way, and tells its share', () => {
    const run = new LongRun(site, hourly);
    const shares = [run.share];
    expect(() => run.result()).toThrow('record.unfinished');
    const more = Array.from({ length: 4 }, () => {
      const left = run.advance();
      shares.push(run.share);
      return left;
    });
    expect(shares).toEqual([0, 0.25, 0.5, 0.75, 1]);
    expect(more).toEqual([true, true, true, false]);
    expect([run.advance(), run.share]).toEqual([false, 1]);
    expect(run.result().map(({ way, cases }) => [way, ...cases.map(({ recordCase, years }) => `${recordCase} ${String(years.length)}`)])).toEqual([['ormsbee', 'system 2', 'bare 2'], ['alternatingBlock', 'system 2', 'bare 2']]);
    const none = new LongRun(site, hourly, { ways: [] });
    expect([none.share, none.advance(), none.result()]).toEqual([1, false, []]);
  });
  it('tells every year to who asks, and ends when it is told to', () => {
    const shares: number[] = [];
    runToEnd(new LongRun(site, hourly, { cases: ['bare'] }), (share) => { shares.push(share); }, () => false);
    expect(shares).toEqual([0.25, 0.5, 0.75, 1]);
    let asked = 0;
    expect(() => runToEnd(new LongRun(site, hourly), undefined, () => { asked += 1; return asked === 3; })).toThrow('record.stopped');
    expect(asked).toBe(3);
  });
  it('is refused without a day', () => {
    expect(() => new LongRun(site, recordOf(0, 3600))).toThrow('record.notWholeDays');
    const flat = changed(bare(site), (copy) => {
      copy.site.lowSpots = [];
      copy.site.sills = [];
      for (const catchment of copy.site.catchments) catchment.drainsTo = { kind: 'offSite' };
    });
    expect(() => new LongRun(flat, hourly)).toThrow('record.noLowSpot');
  });

  const storm = recordOf(2, 300, readings(60, 24, 6));
  const lossy = changed(site, (copy) => { copy.site.lowSpots[0]!.existingLoss = 1e-4; });
  const cases = (document: DesignDocument, fitted: FittedLoss | null = null) =>
    longRecord(document, storm, { fitted }).ways.map(({ recordCase, sills: [sill] }) => `${recordCase} ${sill!.count > 0 ? 'wet' : 'dry'}`);
  it('runs the site with its system and without, and the bare one without', () => {
    expect(cases(lossy)).toEqual(['system dry', 'bare wet']);
    expect(cases(bare(lossy))).toEqual(['bare wet']);
    expect(cases(bare(lossy, 'O1'))).toEqual(['system wet', 'bare wet']);
  });
  it('takes the losses of a fit', () => {
    const fitted: FittedLoss = { lowSpot: 'L1', sill: 'S1', reportedPerYear: 1, share: 0.5, ways: [], losses: [{ lowSpot: 'L1', way: 'recorded', loss: 0.05 }] };
    expect(cases(bare(lossy), fitted)).toEqual(['bare dry']);
  });
  it('watches each low spot at its own sills', () => {
    const { route } = startCase(bare(two), 'bare');
    expect(route.watches.map((watch) => watch.close(0).events)).toEqual([[0], [0, 0]]);
    expect(spot.id).toBe('L1');
  });
});
