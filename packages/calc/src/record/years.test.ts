import { describe, expect, it, vi } from 'vitest';
import { fixtureText } from '../testing/fixtures.ts';
import { changed, demoSite } from '../testing/sites.ts';
import { annualLevel } from './annualLevel.ts';
import { fitExistingLoss } from './fitExistingLoss.ts';
import { longRecord, type LongRecordResult } from './longRecord.ts';
import { LongRun, runToEnd } from './longRun.ts';
import { recordNoteCodes } from './notes.ts';
import { parseHourly } from './parseHourly.ts';
import { poissonLimits } from './poissonLimits.ts';
import { atDistance, MISSING } from './rainRecord.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 120_000 });

const site = demoSite('tern-hollow');
const beltsville = atDistance(parseHourly(fixtureText('record/hourlyBeltsville.csv'), { name: 'Beltsville' }), 8046);
const soaking = changed(site, (copy) => { copy.site.lowSpots[0]!.existingLoss = 1e-4; });

const counts = (result: LongRecordResult, recordCase: 'system' | 'bare') => result.ways.filter((way) => way.recordCase === recordCase).map((way) => way.sills[0]!.count);

describe('a station record through the yard', () => {
  const result = longRecord(soaking, beltsville);
  const sill = result.sills[0]!;

  it('counts less water at the door with the system than without', () => {
    expect(result.ways.map(({ way, recordCase }) => `${way} ${recordCase}`)).toEqual(['ormsbee system', 'ormsbee bare', 'alternatingBlock system', 'alternatingBlock bare']);
    expect(sill.withSystem!.high).toBe(0);
    expect(sill.withoutSystem!.low).toBeGreaterThan(20);
    expect(sill.withSystem!.upperLimit).toBeCloseTo(poissonLimits(0).upper, 12);
    expect([Math.min(...counts(result, 'bare')), Math.max(...counts(result, 'bare'))]).toEqual([sill.withoutSystem!.low, sill.withoutSystem!.high]);
    expect(sill.withoutSystem!.estimate).toBe(true);
  });

  it('gives highest levels of complete years only, and the nested way never below the other by more than a hair', () => {
    const complete = [2006, 2007, 2010, 2011, 2016, 2017, 2018, 2019];
    for (const { maxima } of result.ways) expect(maxima[0]!.years.map(({ year }) => year)).toEqual(complete);
    const [smooth, nested] = ['ormsbee', 'alternatingBlock'].map((way) => result.ways.find((item) => item.way === way && item.recordCase === 'system')!.maxima[0]!.years);
    nested!.forEach(({ level }, i) => { expect(level).toBeGreaterThanOrEqual(smooth![i]!.level - 1e-6); });
  });

  it('loses no water, and carries gauge, distance and gaps', () => {
    expect(result.massError).toBeLessThan(1e-9);
    expect(result.gauge).toMatchObject({ id: 'USC00180700', name: 'Beltsville', distance: 8046 });
    expect(result.quality.gaps).toHaveLength(29);
    const codes = result.notes.map(({ code }) => code);
    for (const code of ['record.gauge', 'record.gaugeDistance', 'record.gaps', 'record.coarse', 'record.yearsLeftOut', 'record.range', 'record.noReturnPeriod', 'record.withoutEstimateRange', 'record.withNever'] as const) {
      expect(codes).toContain(code);
    }
    expect(codes.every((code) => recordNoteCodes.includes(code))).toBe(true);
  });

  it('is the same every time, and the same in parts', () => {
    const again = longRecord(soaking, beltsville);
    expect(JSON.stringify(again)).toBe(JSON.stringify(result));
    const seen: number[] = [];
    longRecord(soaking, beltsville, { progress: (share) => { seen.push(share); } });
    expect(seen).toHaveLength(2 * 15);
    expect(seen.at(-1)).toBe(1);
    expect(seen.every((share, i) => i === 0 || share > seen[i - 1]!)).toBe(true);
  });

  it('stops when asked to', () => {
    let asked = 0;
    expect(() => longRecord(soaking, beltsville, { shouldStop: () => { asked += 1; return asked === 4; } })).toThrow('record.stopped');
    expect(asked).toBe(4);
    expect(() => new LongRun(soaking, beltsville).result()).toThrow('record.unfinished');
  });

  it('gives no level beyond the years of the record', () => {
    const { years } = result.ways[3]!.maxima[0]!;
    expect(annualLevel(years, 8)).toBeLessThanOrEqual(Math.max(...years.map(({ level }) => level)));
    expect(annualLevel(years, 2)).toBeLessThanOrEqual(annualLevel(years, 8));
    expect(() => annualLevel(years, 9)).toThrow('record.beyondRecord');
    expect(() => annualLevel([], 2)).toThrow('record.beyondRecord');
  });
});

describe('loss fitted to what the customer reports', () => {
  it('gives back the loss with which the reports were made, within its steps, and bounds at half either way', () => {
    const made = runToEnd(new LongRun(soaking, beltsville, { cases: ['bare'], ways: ['ormsbee'] }))[0]!.cases[0]!.years.reduce((sum, parts) => sum + parts[0]!.events[0]!, 0);
    const perYear = made / (beltsville.depths.filter((depth) => depth !== MISSING).length / 8766);
    const fitted = fitExistingLoss(site, beltsville, perYear - 1e-9);
    const way = fitted.ways.find((item) => item.way === 'ormsbee')!;
    expect(way.counted).toBe(made);
    expect(way.loss / 1e-4).toBeGreaterThan(0.97);
    expect(way.loss / 1e-4).toBeLessThan(1.1);
    expect(way.lossAtMore).toBeLessThan(way.loss);
    expect(way.lossAtFewer).toBeGreaterThan(way.loss);
    const result = longRecord(site, beltsville, { fitted });
    const without = result.sills[0]!.withoutSystem!;
    expect(without.estimate).toBe(false);
    expect(without.low).toBeLessThanOrEqual(made);
    expect(without.high).toBeGreaterThanOrEqual(made);
    expect(without.lowerLimit).toBeLessThanOrEqual(0.5 * made + 1e-6);
    expect(without.upperLimit).toBeGreaterThanOrEqual(1.5 * made - 1e-6);
    expect(result.notes.map(({ code }) => code)).toContain('record.fitted');
  });
});
