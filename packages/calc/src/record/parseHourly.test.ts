import { describe, expect, it } from 'vitest';
import { CalcProblem } from '../common/problem.ts';
import { fixtureRow, fixtureText, given } from '../testing/fixtures.ts';
import { dateOf, dayNumber, realDay, timeText } from './calendar.ts';
import { parseHourly } from './parseHourly.ts';
import { MISSING } from './rainRecord.ts';
import { recordQuality, yearStarts } from './quality.ts';

const hours = (suffix: string) => Array.from({ length: 24 }, (_, h) => `HR${String(h).padStart(2, '0')}${suffix}`);
const head = ['STATION', 'DATE', ...hours('Val')].join(',');
const row = (date: string, values: Readonly<Record<number, string>> = {}) => ['USC00000001', date, ...Array.from({ length: 24 }, (_, h) => values[h] ?? '0')].join(',');
const flaggedHead = ['STATION', 'NAME', 'LATITUDE', 'LONGITUDE', 'DATE', ...Array.from({ length: 24 }, (_, h) => [`HR${String(h).padStart(2, '0')}Val`, `HR${String(h).padStart(2, '0')}MF`, `HR${String(h).padStart(2, '0')}QF`]).flat()].join(',');
const flaggedRow = (date: string, values: Readonly<Record<number, readonly [string, string, string]>>) =>
  ['"USC00000001"', '"MILL CREEK, XX US"', '39.5', '-76.25', date, ...Array.from({ length: 24 }, (_, h) => values[h] ?? ['0', ' ', ' ']).flat()].join(',');

function problem(run: () => unknown): { readonly code: string; readonly line: unknown; readonly column: unknown } {
  try {
    run();
  } catch (error) {
    if (error instanceof CalcProblem) return { code: error.code, line: error.params['line'], column: error.params['column'] };
    throw error;
  }
  throw new Error('nothing was refused');
}

describe('calendar', () => {
  it('numbers days as civil calendars do', () => {
    expect([dayNumber(1970, 1, 1), dayNumber(2000, 3, 1), dayNumber(2006, 1, 1), dayNumber(1969, 12, 31)]).toEqual([0, 11017, 13149, -1]);
    expect(dayNumber(2101, 1, 1) - dayNumber(2100, 1, 1)).toBe(365);
    expect(dayNumber(2001, 1, 1) - dayNumber(2000, 1, 1)).toBe(366);
  });

  it('turns every day of four centuries back into its date', () => {
    for (let day = dayNumber(1850, 1, 1); day < dayNumber(2250, 1, 1); day += 1) {
      const { year, month, day: dayOfMonth } = dateOf(day);
      if (dayNumber(year, month, dayOfMonth) !== day) throw new Error(`${day}`);
    }
    expect(realDay(2023, 2, 29)).toBeNull();
    expect(realDay(2024, 2, 29)).toBe(dayNumber(2024, 2, 29));
    expect(timeText(dayNumber(2011, 8, 28) * 1440 + 485)).toBe('2011-08-28T08:05');
  });
});

describe('hourly station file', () => {
  const fixture = 'record/beltsville.json';
  const record = parseHourly(fixtureText('record/hourlyBeltsville.csv'), { name: 'Beltsville', latitude: 39.0302, longitude: -76.9315 });
  const quality = recordQuality(record);
  const hundredths = (depth: number) => depth / 0.254;
  const year = (number: number) => yearStarts(record).find((item) => item.year === number)!;
  const check = (id: string, name: string, value: number) => {
    const { expected, tolerance } = fixtureRow(fixture, id);
    expect(Math.abs(value - (expected[name] ?? NaN)), `${id} ${name} ${value}`).toBeLessThanOrEqual(tolerance);
  };
  const hourOf = (id: string) => {
    const at = fixtureRow(fixture, id);
    return (dayNumber(given(at, 'year'), given(at, 'month'), given(at, 'day')) - record.startDay) * 24 + given(at, 'hour');
  };

  it('gives the totals of the file', () => {
    for (const id of ['total.2019', 'total.2018']) check(id, 'hundredths', hundredths(quality.years.find((item) => item.year === given(fixtureRow(fixture, id), 'year'))!.depth));
    const { from, to } = year(2019);
    check('total.2019', 'hours', record.depths.slice(from, to).filter((depth) => depth !== MISSING).length);
  });

  it('gives the wettest hours, at their time', () => {
    for (const id of ['hour.2019', 'hour.2018']) {
      const { from, to } = year(given(fixtureRow(fixture, id), 'year'));
      const part = record.depths.slice(from, to);
      const wettest = part.reduce((most, depth) => Math.max(most, depth), 0);
      check(id, 'hundredths', hundredths(wettest));
      expect(from + part.indexOf(wettest)).toBe(hourOf(id));
    }
  });

  it('gives the wettest 24 hours, at their end', () => {
    for (const id of ['day.2019', 'day.2018', 'day.2011']) {
      const { from, to } = year(given(fixtureRow(fixture, id), 'year'));
      let best = { sum: 0, end: 0 };
      for (let end = from + 23; end < to; end += 1) {
        const sum = record.depths.slice(end - 23, end + 1).reduce((total, depth) => total + Math.max(0, depth), 0);
        if (sum > best.sum + 1e-9) best = { sum, end };
      }
      check(id, 'hundredths', hundredths(best.sum));
      if (fixtureRow(fixture, id).given['month'] !== undefined) expect(best.end).toBe(hourOf(id));
    }
  });

  it('finds the span of the gauge that knows only tenths, and nothing of it after', () => {
    const finer = fixtureRow(fixture, 'resolution');
    expect(quality.coarse).toHaveLength(1);
    const span = quality.coarse[0]!;
    const day = timeText(dayNumber(given(finer, 'year'), given(finer, 'month'), given(finer, 'day')) * 1440).slice(0, 10);
    expect(span.from).toBe('2006-01-02T10:00');
    expect(span.to.slice(0, 10) <= day).toBe(true);
    const after = record.depths.slice((dayNumber(2009, 11, 7) - record.startDay) * 24);
    expect(after.some((depth) => depth > 0 && Math.abs(hundredths(depth) % 10) > 1e-6 && Math.abs(hundredths(depth) % 10) < 10 - 1e-6)).toBe(true);
  });

  it('counts missing as missing: gaps, years, hours', () => {
    expect(quality.years.filter(({ complete }) => complete).map((item) => item.year)).toEqual([2006, 2007, 2010, 2011, 2016, 2017, 2018, 2019]);
    expect(quality.gaps.reduce((sum, gap) => sum + gap.hours, 0)).toBe(quality.missingHours);
    expect(quality.gaps).toContainEqual({ from: '2012-12-01T00:00', to: '2013-03-01T00:00', hours: 2160 });
    expect(record.depths.length - quality.missingHours).toBe(record.depths.filter((depth) => depth !== MISSING).length);
    expect(quality.observedYears).toBeCloseTo((record.depths.length - quality.missingHours) / 8766, 12);
  });
});

describe('what a station file can hold', () => {
  it('missing values, empty cells and absent days', () => {
    const { depths, startDay } = parseHourly([head, row('2020-02-28', { 3: '12', 4: '-9999', 5: '' }), row('2020-03-01')].join('\r\n'));
    expect(startDay).toBe(dayNumber(2020, 2, 28));
    expect(depths).toHaveLength(72);
    expect([depths[3], depths[4], depths[5], depths[6]]).toEqual([12 * 0.254, MISSING, MISSING, 0]);
    expect(depths.slice(24, 48).every((depth) => depth === MISSING)).toBe(true);
  });

  it('name and place, quality flags, and sums over several hours kept apart', () => {
    const record = parseHourly([flaggedHead, flaggedRow('2020-05-01', {
      2: ['50', ' ', ' '], 4: ['99999', 'a', ' '], 5: ['99999', ' ', ' '], 7: ['210', 'A', ' '], 9: ['30', ' ', 'X'],
    })].join('\n'));
    expect(record.gauge).toEqual({ id: 'USC00000001', name: 'MILL CREEK, XX US', latitude: 39.5, longitude: -76.25, distance: null });
    expect(record.accumulations).toEqual([{ from: 4, to: 7, depth: 210 * 0.254, kind: 'flagged' }]);
    expect(Array.from(record.depths.slice(2, 10))).toEqual([50 * 0.254, 0, MISSING, MISSING, MISSING, MISSING, 0, MISSING]);
    expect(record.rejected).toBe(1);
  });

  it('an inch right after missing hours is suspected and stays in', () => {
    const record = parseHourly([head, row('2020-05-01', { 6: '-9999', 7: '-9999', 8: '120', 12: '-9999', 13: '40' })].join('\n'));
    expect(record.accumulations).toEqual([{ from: 6, to: 8, depth: 120 * 0.254, kind: 'suspected' }]);
    expect(record.depths[8]).toBe(120 * 0.254);
  });
});

describe('a file that is not one', () => {
  const bad = (lines: readonly string[]) => problem(() => parseHourly(lines.join('\n')));

  it('is refused with line and column', () => {
    expect(bad(['time,depth (mm)', '2020-01-01T00:00,1'])).toEqual({ code: 'record.notHourly', line: 1, column: 1 });
    expect(bad([head.replace(',HR07Val', '')])).toEqual({ code: 'record.hourMissing', line: 1, column: 1 });
    expect(bad([head])).toEqual({ code: 'record.empty', line: 1, column: 1 });
    expect(bad([head, row('2020-13-01')])).toEqual({ code: 'record.badDate', line: 2, column: 13 });
    expect(bad([head, row('2020-01-01', { 1: '1x' })])).toEqual({ code: 'record.notANumber', line: 2, column: 26 });
    expect(bad([head, row('2020-01-01', { 0: '-5' })])).toEqual({ code: 'record.negative', line: 2, column: 24 });
    expect(bad([head, row('2020-01-01', { 0: '5000' })])).toEqual({ code: 'record.tooMuch', line: 2, column: 24 });
    expect(bad([head, row('2020-01-02'), row('2020-01-02')])).toEqual({ code: 'record.notRising', line: 3, column: 13 });
    expect(bad([head, row('2020-01-02'), row('2020-01-03').replace('01,2020', '02,2020')])).toEqual({ code: 'record.otherStation', line: 3, column: 1 });
    expect(bad([head, row('2020-01-02').replace(/,0$/, '')]).code).toBe('record.cellCount');
    expect(bad([head, '"USC00000001,2020-01-01'])).toEqual({ code: 'record.openQuote', line: 2, column: 1 });
    expect(bad([head, row('1819-01-02'), row('2020-01-02')]).code).toBe('record.tooLong');
  });
});
