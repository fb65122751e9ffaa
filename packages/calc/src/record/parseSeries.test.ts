import { describe, expect, it } from 'vitest';
import { CalcProblem } from '../common/problem.ts';
import { dayNumber } from './calendar.ts';
import { expectProblems } from '../testing/expectProblems.ts';
import { parseSeries, seriesMinutes } from './parseSeries.ts';
import { MISSING } from './rainRecord.ts';
import { recordQuality } from './quality.ts';

function problem(text: string): readonly [string, unknown, unknown] {
  try {
    parseSeries(text);
  } catch (error) {
    if (error instanceof CalcProblem) return [error.code, error.params['line'], error.params['column']];
    throw error;
  }
  throw new Error('nothing was refused');
}

describe('five-minute series', () => {
  it('reads times and depths; what is not there is missing', () => {
    const record = parseSeries('time,depth (mm)\n2021-06-30T23:50,0.4\n2021-06-30T23:55,\n2021-07-01 00:05:00,1.25\n', { name: 'Roof gauge', distance: 12 });
    expect([record.step, record.startDay, record.depths.length]).toEqual([300, dayNumber(2021, 6, 30), 576]);
    expect(Array.from(record.depths.slice(285, 290))).toEqual([MISSING, 0.4, MISSING, MISSING, 1.25]);
    expect(record.gauge).toEqual({ id: '', name: 'Roof gauge', latitude: null, longitude: null, distance: 12 });
    const quality = recordQuality(record);
    expect(quality.missingHours).toBeCloseTo(574 / 12, 12);
    expect(quality.years).toEqual([{ year: 2021, valid: 2 / (365 * 288), complete: false, depth: 1.65 }]);
  });

  it('reads inches, columns in any order, and byte order marks', () => {
    const record = parseSeries('\ufeff"rain in","time","note"\r\n"0.10","2021-07-01T00:00","x"\r\n');
    expect(record.depths[0]).toBeCloseTo(2.54, 12);
  });

  it('refuses with line and column', () => {
    expect(problem('a,b\n1,2')).toEqual(['record.notSeries', 1, 1]);
    expect(problem('time,depth\n')).toEqual(['record.noUnit', 1, 6]);
    expect(problem('time,depth (mm)\n')).toEqual(['record.empty', 1, 1]);
    expect(problem('time,depth (mm)\n2021-02-30T00:00,1')).toEqual(['record.badTime', 2, 1]);
    expect(problem('time,depth (mm)\n2021-02-03T24:00,1')).toEqual(['record.badTime', 2, 1]);
    expect(problem('time,depth (mm)\n2021-02-03T00:03,1')).toEqual(['record.offGrid', 2, 1]);
    expect(problem('time,depth (mm)\n2021-02-03T00:05,1\n\n2021-02-03T00:05,1')).toEqual(['record.notRising', 4, 1]);
    expect(problem('time,depth (mm)\n2021-02-03T00:05,-1')).toEqual(['record.negative', 2, 18]);
    expect(problem('time,depth (mm)\n2021-02-03T00:05,dry')).toEqual(['record.notANumber', 2, 18]);
    expect(problem('time,depth (in)\n2021-02-03T00:05,4')).toEqual(['record.tooMuch', 2, 18]);
    expect(problem('time,depth (mm)\n2021-02-03T00:05')).toEqual(['record.cellCount', 2, 1]);
    expect(problem('time,depth (mm)\n1821-02-03T00:05,1\n2021-02-03T00:05,1')).toEqual(['record.tooLong', 3, 1]);
  });
});

describe('rows longer than five minutes', () => {
  const quarters = 'time,rain in\n2006-01-31 14:00,0.30\n2006-01-31 14:15,\n2006-01-31 14:45,0.06\n';

  it('are told by the minutes at which they begin', () => {
    expect(seriesMinutes(quarters)).toBe(15);
    expect(seriesMinutes('time,depth mm\n2006-01-31 14:00,1\n2006-01-31 16:00,2\n')).toBe(60);
    expect(seriesMinutes(`${quarters}2006-01-31 15:05,0\n`)).toBe(5);
  });

  it('a quarter of an hour lies evenly over its three steps; what is missing stays missing', () => {
    const record = parseSeries(quarters, {}, 15);
    expect([record.step, record.depths.length]).toEqual([300, 288]);
    const at = (14 * 60) / 5;
    for (const i of [0, 1, 2]) expect(record.depths[at + i]).toBeCloseTo(2.54, 12);
    expect(record.depths.slice(at + 3, at + 9).every((depth) => depth === MISSING)).toBe(true);
    const fallen = record.depths.reduce((sum, depth) => (depth < 0 ? sum : sum + depth), 0);
    expect(fallen).toBeCloseTo(0.36 * 25.4, 12);
  });

  it('an hour stays an hour, with the limit of an hour', () => {
    const record = parseSeries('time,depth (mm)\n2006-01-31T23:00,12.5\n2006-02-01T01:00,300\n', {}, 60);
    expect([record.step, record.depths.length, record.depths[23], record.depths[24], record.depths[25]]).toEqual([3600, 48, 12.5, -1, 300]);
    expectProblems([
      [() => parseSeries('time,depth (mm)\n2006-01-31T23:00,401\n', {}, 60), 'record.tooMuch at 2:18'],
      [() => parseSeries('time,depth (mm)\n2006-01-31T23:05,1\n', {}, 15), 'record.offGrid at 2:1'],
    ]);
  });
});
