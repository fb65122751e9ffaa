import { describe, expect, it } from 'vitest';
import { expectProblems } from '../testing/expectProblems.ts';
import { dateOf, dayNumber, realDay } from './calendar.ts';
import { parseHourly, type GaugeHint } from './parseHourly.ts';
import { parseSeries } from './parseSeries.ts';
import { recordQuality } from './quality.ts';
import { MISSING, type RainRecord } from './rainRecord.ts';
import { cellsOf, eachLine } from './recordText.ts';
import { coarseSpans, suspectedAccumulations } from './suspected.ts';

const hour = (h: number) => `HR${String(h).padStart(2, '0')}`;
const hours = (suffix: string) => Array.from({ length: 24 }, (_, h) => hour(h) + suffix);
const head = ['STATION', 'DATE', ...hours('Val')];
const row = (date: string, values: Readonly<Record<number, string>> = {}) => ['U1', date, ...Array.from({ length: 24 }, (_, h) => values[h] ?? '0')];
const file = (...rows: readonly (readonly string[])[]) => rows.map((cells) => cells.join(',')).join('\n');
const flaggedHead = ['STATION', 'DATE', ...Array.from({ length: 24 }, (_, h) => [`${hour(h)}Val`, `${hour(h)}MF`, `${hour(h)}QF`]).flat()];
const flagged = (date: string, values: Readonly<Record<number, readonly [string, string, string]>>) => ['U1', date, ...Array.from({ length: 24 }, (_, h) => values[h] ?? ['0', '', '']).flat()];

function record(depths: Float64Array, step: 3600 | 300 = 3600, startDay = dayNumber(2021, 1, 1)): RainRecord {
  return { gauge: { id: 'X', name: 'X', latitude: null, longitude: null, distance: null }, step, startDay, depths, accumulations: [], rejected: 0 };
}

describe('calendar', () => {
  it('agrees with the calendar of the language on every day of four centuries', () => {
    const wrong: string[] = [];
    for (let day = Date.UTC(1890, 0, 1) / 86_400_000; day < 120_000; day += 1) {
      const date = new Date(day * 86_400_000);
      const [year, month, dayOfMonth] = [date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate()];
      const found = dateOf(day);
      if (found.year !== year || found.month !== month || found.day !== dayOfMonth || dayNumber(year, month, dayOfMonth) !== day) wrong.push(date.toISOString());
    }
    expect(wrong).toEqual([]);
  });

  it('knows dates that no calendar has', () => {
    for (const [month, day] of [[0, 1], [13, 1], [14, 1], [1, 0], [1, 32], [2, 29], [4, 31], [12, 32]] as const) expect(realDay(2021, month, day)).toBeNull();
    expect([realDay(2021, 12, 31), realDay(2021, 1, 31), realDay(2021, 1, 1)]).toEqual([18_992, 18_658, 18_628]);
  });
});

describe('text of a record', () => {
  const lines = (text: string) => {
    const seen: [string, number][] = [];
    eachLine(text, (line, number) => { seen.push([line.trim(), number]); });
    return seen;
  };
  it('has lines with numbers, whatever ends them and stands before them', () => {
    expect(lines('a,1\r\n\r\nb\r\n')).toEqual([['a,1', 1], ['b', 3]]);
    expect(lines('\na\nb')).toEqual([['a', 2], ['b', 3]]);
    expect(lines('\ufeffa\nb\n')).toEqual([['a', 1], ['b', 2]]);
    expect(cellsOf('\ufeffx', 1)[0]!.text).toBe('x');
    const first: string[] = [];
    eachLine('\ufeffa,b\n', (line) => { first.push(line); });
    expect(first).toEqual(['a,b']);
    expect(() => { eachLine('x'.repeat(400_000_002), () => undefined); }).toThrow('record.tooLarge at 1:1');
  });

  it('has cells, quoted or not, with their columns', () => {
    expect(cellsOf('"a ""b"" c",2, d ,"",', 1)).toEqual([
      { text: 'a "b" c', column: 2 }, { text: '2', column: 13 }, { text: 'd', column: 15 }, { text: '', column: 20 }, { text: '', column: 22 },
    ]);
    expect(cellsOf(',1', 1)).toEqual([{ text: '', column: 1 }, { text: '1', column: 2 }]);
    expect(cellsOf('1,"x,y" \r', 1).map(({ text }) => text)).toEqual(['1', 'x,y']);
    expect(() => cellsOf('1,"x', 7)).toThrow('record.openQuote at 7:3');
  });
});

describe('hourly station file, cell by cell', () => {
  const hint: GaugeHint = { name: 'Hint', latitude: 1, longitude: 2, distance: 3 };
  it('finds its columns by their names, wherever they stand', () => {
    const mixed = ['DATE', 'ELEVATION', ...hours('Val'), 'STATION'];
    const read = parseHourly(file(mixed, ['2020-01-01', '120', '7', ...Array<string>(23).fill('0'), 'U1']));
    expect(read.gauge).toEqual({ id: 'U1', name: 'U1', latitude: null, longitude: null, distance: null });
    expect(read.depths[0]).toBe(7 * 0.254);
    const first = parseHourly(file([...hours('Val'), 'STATION', 'DATE'], ['7', ...Array<string>(23).fill('0'), 'U1', '2020-01-01']), hint);
    expect([first.depths[0], first.gauge]).toEqual([7 * 0.254, { id: 'U1', name: 'Hint', latitude: 1, longitude: 2, distance: 3 }]);
    const placed = ['STATION', 'DATE', 'NAME', 'LATITUDE', 'LONGITUDE', ...hours('Val')];
    const zeros = Array<string>(24).fill('0');
    expect(parseHourly(file(placed, ['U1', '2020-01-01', 'Mill', '39.5', '-76', ...zeros]), hint).gauge).toEqual({ id: 'U1', name: 'Mill', latitude: 39.5, longitude: -76, distance: 3 });
    for (const unknown of ['', 'north']) expect(parseHourly(file(placed, ['U1', '2020-01-01', '', unknown, unknown, ...zeros]), hint).gauge).toEqual({ id: 'U1', name: 'Hint', latitude: 1, longitude: 2, distance: 3 });
  });

  it('is refused with what it lacks', () => {
    expectProblems([
      [() => parseHourly(file(head.slice(1), row('2020-01-01'))), 'record.notHourly at 1:1'],
      [() => parseHourly(file(head.filter((name) => name !== 'DATE'))), 'record.notHourly at 1:1'],
      [() => parseHourly(file(['STATION', 'DATE', 'x'])), 'record.notHourly at 1:1'],
      [() => parseHourly(file(head.filter((name) => name !== 'HR00Val'))), 'record.hourMissing at 1:1'],
      [() => parseHourly(file(['HR00Val', 'STATION', 'DATE'])), 'record.hourMissing at 1:1'],
      [() => parseHourly(file(head, row('yesterday'))), 'record.badDate at 2:4'],
      [() => parseHourly(file(head, row('2020-01-01', { 0: '0x10' }))), 'record.notANumber at 2:15'],
      [() => parseHourly(file(head, row('2020-01-01', { 0: '1575' }))), 'record.tooMuch at 2:15'],
      [() => parseHourly(file(head, row('1800-01-01'), row('2000-06-02'))), 'record.tooLong at 3:4'],
    ]);
    expect(parseHourly(file(head, row('2020-01-01', { 0: '1574', 1: '99999' }))).depths.slice(0, 2)).toEqual(Float64Array.from([1574 * 0.254, MISSING]));
    // 1800-01-01 and 200 times 366 days, which is 2000-06-01.
    expect(parseHourly(file(head, row('1800-01-01'), row('2000-06-01'))).depths).toHaveLength((200 * 366 + 1) * 24);
  });

  it('sums over several hours from the first hour of all, on a later day, of one hour, of nothing', () => {
    const sums = (rows: readonly (readonly string[])[]) => {
      const { accumulations, depths } = parseHourly(file(flaggedHead, ...rows));
      return [accumulations.map(({ from, to }) => [from, to]), Array.from(depths).flatMap((depth, i) => (depth === MISSING ? [i] : []))];
    };
    expect(sums([flagged('2020-05-01', { 0: ['99999', 'a', ''], 1: ['50', '', ''], 2: ['90', 'A', ''] })])).toEqual([[[0, 2]], [0, 1, 2]]);
    expect(sums([flagged('2020-05-01', {}), flagged('2020-05-02', { 4: ['99999', 'a', ''], 6: ['90', 'A', ''] })])).toEqual([[[28, 30]], [28, 29, 30]]);
    expect(sums([flagged('2020-05-01', { 3: ['90', 'A', ''], 5: ['99999', 'a', ''], 6: ['-9999', 'A', ''] })])).toEqual([[[3, 3]], [3, 5, 6]]);
  });
});

describe('five-minute series, row by row', () => {
  it('refuses with line and column', () => {
    const one = (text: string) => () => parseSeries(`time,depth (mm)\n${text}`);
    expectProblems([
      [() => parseSeries('time,x\n'), 'record.notSeries at 1:1'],
      [() => parseSeries('x,depth (mm)\n'), 'record.notSeries at 1:1'],
      [() => parseSeries('date of rain (mm),x\n'), 'record.notSeries at 1:1'],
      [one('yesterday,1'), 'record.badTime at 2:1'],
      [one('2021-02-03T00:59,1'), 'record.offGrid at 2:1'],
      [one('2021-02-03T00:60,1'), 'record.badTime at 2:1'],
      [one('2021-02-03T00:00,80.5'), 'record.tooMuch at 2:18'],
      [one('2021-02-03T00:00,"1x"'), 'record.notANumber at 2:19'],
      // 110 times 366 days after 1900-01-01 is 2010-03-25.
      [one('1900-01-01T00:00,1\n2010-03-25T00:05,1'), 'record.tooLong at 3:1'],
    ]);
  });

  it('takes what is at the limits', () => {
    const read = parseSeries('time,depth (mm)\n2021-02-03T00:00,80\n2021-02-03T00:05,0\n2021-02-04T00:55,1');
    expect([read.depths[0], read.depths[1], read.depths[288 + 11], read.depths.length]).toEqual([80, 0, 1, 576]);
    expect([read.rejected, read.accumulations]).toEqual([0, []]);
  });
});

describe('what a record lacks', () => {
  it('gaps at its start and its end, and spans of its whole', () => {
    const depths = new Float64Array(48);
    for (const i of [0, 1, 30, 46, 47]) depths[i] = MISSING;
    const quality = recordQuality(record(depths));
    expect(quality.gaps).toEqual([
      { from: '2021-01-01T00:00', to: '2021-01-01T02:00', hours: 2 }, { from: '2021-01-02T06:00', to: '2021-01-02T07:00', hours: 1 }, { from: '2021-01-02T22:00', to: '2021-01-03T00:00', hours: 2 },
    ]);
    expect([quality.from, quality.to, quality.missingHours]).toEqual(['2021-01-01T00:00', '2021-01-03T00:00', 5]);
    expect(recordQuality(record(new Float64Array(288), 300)).observedYears).toBeCloseTo(24 / 8766, 14);
  });

  it('a year is complete from 95 of 100 readings on', () => {
    const of = (missing: number) => {
      const depths = new Float64Array(366 * 24);
      depths.fill(MISSING, 0, missing);
      return recordQuality(record(depths));
    };
    // 5 % of the 8760 hours of 2021 are 438; one day of 2022 is never complete.
    expect([of(438), of(439)].map(({ completeYears, years }) => [completeYears, years.map(({ complete }) => complete)])).toEqual([[1, [true, false]], [0, [false, false]]]);
  });
});

describe('a series, at its limits', () => {
  it('spans 110 years of 366 days and no more; no quarter of an hour has more than 240 mm', () => {
    // 40,260 days after the first of 1900.
    const text = (last: string) => `time,depth (mm)\n1900-01-01T00:00,1\n${last},2\n`;
    expect(parseSeries(text('2010-03-25T00:00'), {}, 60).depths).toHaveLength(40_261 * 24);
    expectProblems([
      [() => parseSeries(text('2010-03-25T01:00'), {}, 60), 'record.tooLong at 3:1'], [() => parseSeries('time,depth (mm)\n2021-01-01T00:15,240.5\n', {}, 15), 'record.tooMuch at 2:18'],
    ]);
    expect(parseSeries('time,depth (mm)\n2021-01-01T00:00,240\n', {}, 15).depths[0]).toBe(80);
  });
});

describe('readings that may be sums, and a coarse gauge', () => {
  const suspected = (depths: readonly number[], known: { from: number; to: number }[] = []) =>
    suspectedAccumulations(Float64Array.from(depths), known.map((item) => ({ ...item, depth: 1, kind: 'flagged' as const }))).map(({ from, to, depth }) => [from, to, depth]);
  it('an inch right after missing hours', () => {
    expect(suspected([MISSING, MISSING, 25.4])).toEqual([[0, 2, 25.4]]);
    expect(suspected([0, MISSING, 30, MISSING, 26])).toEqual([[1, 2, 30], [3, 4, 26]]);
    expect(suspected([MISSING, 25.39, 30])).toEqual([]);
    expect(suspected([40, MISSING, 0, 30])).toEqual([]);
    expect([suspected([MISSING, MISSING, 30], [{ from: 1, to: 2 }]), suspected([MISSING, MISSING, 30, 1], [{ from: 3, to: 3 }])]).toEqual([[], [[0, 2, 30]]]);
    expect([suspected([0, MISSING, MISSING, 30], [{ from: 0, to: 1 }]), suspected([0, MISSING, 30], [{ from: 2, to: 4 }])]).toEqual([[], []]);
  });

  const spans = (depths: readonly number[]) => coarseSpans(Float64Array.from(depths)).map(({ from, to }) => [from, to]);
  const tenths = (count: number) => Array.from({ length: count }, (_, i) => 2.54 * (1 + (i % 4)));
  it('thirty rainy readings in a row of whole tenths of an inch', () => {
    expect([spans(tenths(30)), spans(tenths(29))]).toEqual([[[0, 29]], []]);
    expect(spans([0, ...tenths(20), 0, MISSING, ...tenths(10), 0])).toEqual([[1, 32]]);
    expect(spans([0.254, ...tenths(30), 1.524, ...tenths(31), 1, ...tenths(29)])).toEqual([[1, 30], [32, 62]]);
    expect(spans([...tenths(15), 0.5, ...tenths(20)])).toEqual([]);
    expect(spans([...tenths(15), 1.524, ...tenths(15)])).toEqual([]);
    expect(spans([...tenths(30), 0.254, 0.508, 2.54])).toEqual([[0, 29]]);
  });
});
