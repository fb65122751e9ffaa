import { describe, expect, it } from 'vitest';
import { CUBIC_FOOT, FOOT, GALLON, GALLON_PER_MINUTE, GRAVITY, INCH, MINUTE, POUND } from '../common/constants.ts';
import { fixtureRow, given } from '../testing/fixtures.ts';
import { collarFor, flotation } from './flotation.ts';
import { basinArea } from './volumePerHeight.ts';
import { aloneRunTime, cycleTime, shortestCycle, workingVolumeFor, worstStartsPerHour } from './wetWellCycle.ts';

describe('cycles of a wet well', () => {
  const FILE = 'basin/wetWell.json';
  it('row 15.1: V 18 gal, pump 20 gpm', () => {
    const row = fixtureRow(FILE, '15.1');
    const volume = given(row, 'v') * GALLON;
    const pump = given(row, 'q') * GALLON_PER_MINUTE;
    for (const [gpm, minutes] of Object.entries(row.expected)) expect(cycleTime(volume, pump, Number(gpm) * GALLON_PER_MINUTE) / MINUTE).toBeCloseTo(minutes, 9);
    expect(shortestCycle(volume, pump) / MINUTE).toBeCloseTo(3.6, 9);
    for (let i = 1; i < 40; i += 1) expect(cycleTime(volume, pump, (pump * i) / 40)).toBeGreaterThanOrEqual(shortestCycle(volume, pump) * (1 - 1e-12));
  });
  it('rows 15.3 and 15.4: volume from cycle and starts', () => {
    const cycle = fixtureRow(FILE, '15.3');
    expect(workingVolumeFor(given(cycle, 't') * MINUTE, given(cycle, 'q') * GALLON_PER_MINUTE) / GALLON).toBeCloseTo(cycle.expected['v'] ?? NaN, 9);
    const starts = fixtureRow(FILE, '15.4');
    const volume = (starts.expected['v'] ?? NaN) * GALLON;
    expect(worstStartsPerHour(volume, given(starts, 'q') * GALLON_PER_MINUTE)).toBeCloseTo(given(starts, 'starts'), 9);
  });
  it('without inflow it never starts, with too much it never stops', () => {
    expect([cycleTime(1, 0.1, 0), cycleTime(1, 0.1, 0.1), cycleTime(1, 0.1, 0.2)]).toEqual([Infinity, Infinity, Infinity]);
    expect(() => cycleTime(0, 0.1, 0.05)).toThrow('value.notPositive');
  });
});

describe('demo basin', () => {
  const FILE = 'basin/ternHollow.json';
  it('gallons an inch of four sizes', () => {
    const row = fixtureRow(FILE, 'perInch');
    for (const [inches, gallons] of Object.entries(row.expected)) expect(Math.abs((basinArea(Number(inches) * INCH) * INCH) / GALLON - gallons)).toBeLessThan(row.tolerance);
  });
  it('33.0 gal, about 14 starts an hour, about 64 s alone', () => {
    const row = fixtureRow(FILE, 'cycle');
    const volume = basinArea(given(row, 'diameter') * INCH) * given(row, 'stroke') * FOOT;
    const pump = given(row, 'gpm') * GALLON_PER_MINUTE;
    expect(Math.abs(volume / GALLON - (row.expected['gallons'] ?? NaN))).toBeLessThan(0.06);
    expect(Math.abs(worstStartsPerHour(volume, pump) - (row.expected['starts'] ?? NaN))).toBeLessThan(0.5);
    expect(Math.abs(aloneRunTime(volume, pump) - (row.expected['alone'] ?? NaN))).toBeLessThan(row.tolerance);
  });
  it('510 lb of uplift with water 28 in down, 919 lb at 12 in', () => {
    const row = fixtureRow(FILE, 'uplift');
    const basin = { diameter: given(row, 'diameter') * INCH, floorLevel: 0, rimLevel: given(row, 'height') * INCH, collarVolume: 0, emptyMass: 0 };
    for (const [down, pounds] of Object.entries(row.expected)) {
      expect(Math.abs(flotation(basin, basin.rimLevel - Number(down) * INCH).uplift / GRAVITY / POUND - pounds)).toBeLessThan(row.tolerance);
    }
    expect(flotation(basin, -1)).toEqual({ uplift: 0, resistance: 0, factor: null });
    expect(flotation(basin, 99).uplift).toBe(flotation(basin, basin.rimLevel).uplift);
  });
  it('the collar that is asked for holds with its factor', () => {
    const basin = { diameter: 30 * INCH, floorLevel: 0, rimLevel: 48 * INCH, emptyMass: 20 };
    const collarVolume = collarFor(basin, 20 * INCH, 1.2);
    expect(flotation({ ...basin, collarVolume }, 20 * INCH).factor).toBeCloseTo(1.2, 12);
    expect(collarVolume / CUBIC_FOOT).toBeGreaterThan(6);
    expect(collarVolume / CUBIC_FOOT).toBeLessThan(7);
    expect(collarFor({ ...basin, emptyMass: 5000 }, 20 * INCH, 1.2)).toBe(0);
  });
});
