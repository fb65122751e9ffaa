import { describe, expect, it } from 'vitest';
import { CalcProblem } from '../common/problem.ts';
import { dayNumber } from './calendar.ts';
import { parseSeries } from './parseSeries.ts';
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
