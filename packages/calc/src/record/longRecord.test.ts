import { describe, expect, it, vi } from 'vitest';
import { CalcProblem } from '../common/problem.ts';
import { changed, demoSite } from '../testing/sites.ts';
import { dayNumber } from './calendar.ts';
import { fitExistingLoss } from './fitExistingLoss.ts';
import { longRecord, type LongRecordResult } from './longRecord.ts';
import { LongRun, runToEnd } from './longRun.ts';
import { parseSeries } from './parseSeries.ts';
import { MISSING, type RainRecord } from './rainRecord.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 120_000 });

const site = demoSite('tern-hollow');
const soaking = changed(site, (copy) => { copy.site.lowSpots[0]!.existingLoss = 1e-4; });
const weak = changed(soaking, (copy) => {
  for (const part of copy.system.parts) if (part.kind === 'pump') part.curve = [{ flow: 0, head: 1.4 }, { flow: 0.0004, head: 0.6 }];
});

/** Dry five-minute days from 2021 on with some rain in them [mm in five minutes]. */
function series(days: number, rain: Readonly<Record<number, number>>): RainRecord {
  const depths = new Float64Array(days * 288);
  for (const [step, depth] of Object.entries(rain)) depths[Number(step)] = depth;
  return { gauge: { id: 'X', name: 'X', latitude: null, longitude: null, distance: null }, step: 300, startDay: dayNumber(2021, 1, 1), depths, accumulations: [], rejected: 0 };
}

const hourly: RainRecord = { ...series(0, {}), step: 3600, depths: new Float64Array(48) };

function burst(at: number, steps: number, depth: number): Record<number, number> {
  return Object.fromEntries(Array.from({ length: steps }, (_, i) => [at + i, depth]));
}

const counts = (result: LongRecordResult, recordCase: 'system' | 'bare') => result.ways.filter((way) => way.recordCase === recordCase).map((way) => way.sills[0]!.count);

describe('loss fitted to what the customer reports', () => {
  it('refuses what no loss can give, and sills that are not there', () => {
    const month = series(30, { ...burst(600, 20, 3), ...burst(4000, 20, 3) });
    expect(() => fitExistingLoss(site, month, 400)).toThrow('record.notReached');
    expect(() => fitExistingLoss(site, month, 0)).toThrow('value.notPositive');
    expect(() => fitExistingLoss(site, month, 2, { sill: 'S9' })).toThrow('record.noSill');
    expect(() => fitExistingLoss(site, month, 2, { shouldStop: () => true })).toThrow('record.stopped');
  });
});

describe('events', () => {
  const heavy = 6;
  const wet = (at: number) => burst(at, 24, heavy);

  it('are one while the water comes back within six hours, and two after', () => {
    const quick = changed(site, (copy) => { copy.site.lowSpots[0]!.existingLoss = 4e-4; });
    const count = (gap: number) => counts(longRecord(quick, series(10, { ...wet(288), ...wet(288 + gap) })), 'bare')[0];
    expect(longRecord(quick, series(10, wet(288))).ways.find(({ recordCase }) => recordCase === 'bare')!.sills[0]!.minutesOver).toBeLessThan(240);
    expect(count(60)).toBe(1);
    expect(count(288)).toBe(2);
  });

  it('are counted with a weak pump as well, in the year in which they begin', () => {
    const record = series(365 + 365, { ...wet(288 * 100), ...wet(288 * 500) });
    const system = longRecord(weak, record).ways.find(({ recordCase }) => recordCase === 'system')!;
    expect(system.sills[0]!.perYear).toEqual([1, 1]);
    expect(system.maxima[0]!.years.map(({ year }) => year)).toEqual([2021, 2022]);
  });

  it('leave the highest level of a year with too few readings out', () => {
    const record = series(365 + 365, wet(288 * 100));
    record.depths.fill(MISSING, 288 * 365, 288 * (365 + 20));
    const result = longRecord(weak, record);
    expect(result.quality.years.map(({ complete }) => complete)).toEqual([true, false]);
    expect(result.ways[0]!.maxima[0]!.years.map(({ year }) => year)).toEqual([2021]);
  });
});

describe('other networks', () => {
  const rain = series(40, { ...burst(288 * 3, 12, 4), ...burst(288 * 20, 30, 2.5) });

  it.each(['ridgeback', 'sallow-bend'] as const)('%s runs through, without losing water', (name) => {
    const result = longRecord(changed(demoSite(name), (copy) => { for (const spot of copy.site.lowSpots) spot.existingLoss = 2e-4; }), rain);
    expect(result.massError).toBeLessThan(1e-6);
    expect(result.sills).toHaveLength(demoSite(name).site.sills.length);
  });

  it('a second pump sends the record to the storm routing, with the same levels', () => {
    const standby = changed(weak, (copy) => {
      const pump = copy.system.parts.find((part) => part.kind === 'pump')!;
      if (pump.kind === 'pump') copy.system.parts.push({ ...pump, id: 'M9', name: 'Standby', role: 'standby', startLevel: 31 });
    });
    const level = (document: typeof weak) => longRecord(document, rain).ways.find(({ recordCase }) => recordCase === 'system')!;
    expect(level(standby).sills[0]!.count).toBe(level(weak).sills[0]!.count);
    const highest = (document: typeof weak) => Math.max(...runToEnd(new LongRun(document, rain, { cases: ['system'] }))[0]!.cases[0]!.years.map((parts) => parts[0]!.maxLevel));
    expect(Math.abs(highest(standby) - highest(weak))).toBeLessThan(1e-3);
  });
});

describe('what cannot be run', () => {
  const problem = (run: () => unknown) => {
    try {
      run();
    } catch (error) {
      if (error instanceof CalcProblem) return error.code;
      throw error;
    }
    throw new Error('nothing was refused');
  };

  it('is refused with a code', () => {
    expect(problem(() => new LongRun(site, { ...hourly, depths: hourly.depths.slice(0, 25) }))).toBe('record.notWholeDays');
    expect(problem(() => new LongRun(site, hourly, { ways: ['recorded'] }))).toBe('record.way');
    expect(problem(() => new LongRun(site, series(2, {}), { ways: ['uniform'] }))).toBe('record.way');
    expect(problem(() => longRecord(changed(site, (copy) => { copy.title = 5 as unknown as string; }), hourly))).toBe('document.wrongType');
    const series5 = parseSeries('time,depth (mm)\n2021-07-01T00:00,1\n');
    expect(longRecord(site, series5).ways.map(({ way }) => way)).toEqual(['recorded', 'recorded']);
  });
});
