import { describe, expect, it } from 'vitest';
import { CalcProblem } from '../common/problem.ts';
import type { RainTable } from '../document/document.ts';
import { alternatingBlock, arrangeBlocks } from './alternatingBlock.ts';
import { depthAt } from './depthAt.ts';
import { parseAtlas14 } from './parseAtlas14.ts';
import { scsFraction } from './scsDistribution.ts';
import { scsHyetograph } from './scsHyetograph.ts';
import { userSeries } from './userSeries.ts';

interface Parts {
  readonly unit: string;
  readonly header: string;
  readonly rows: readonly string[];
  readonly between: readonly string[];
  readonly after: readonly string[];
  readonly name: string;
}

/** A point file as the server writes it, with what is asked for put in its place. */
function file(change: Partial<Parts> = {}): string {
  const parts: Parts = { unit: '(inches)', header: 'by duration for ARI (years):, 1,2,10', rows: ['5-min:, 0.2,0.3,0.5', '10-min:, 0.3,0.4,0.7', '60-min:, 0.6,0.8,1.4'], between: [], after: [], name: 'Mill Creek', ...change };
  return [`Point precipitation frequency estimates ${parts.unit}`, 'NOAA Atlas 14 Volume 2 Version 3', `Location name (ESRI Maps): ${parts.name}`, 'PRECIPITATION FREQUENCY ESTIMATES', ...parts.between, parts.header, ...parts.rows, '', ...parts.after].join('\n');
}

function problemOf(text: string | Uint8Array): { code: string; line: unknown; column: unknown; params: Readonly<Record<string, unknown>> } {
  try {
    parseAtlas14(text);
  } catch (error) {
    if (error instanceof CalcProblem) return { code: error.code.replace('rain.atlas.', ''), line: error.params['line'], column: error.params['column'], params: error.params };
    throw error;
  }
  throw new Error('nothing was refused');
}

const limit = (kind: 'UPPER' | 'LOWER', factor: number, rows = ['5-min:, 0.2,0.3,0.5', '10-min:, 0.3,0.4,0.7', '60-min:, 0.6,0.8,1.4'], header = 'by duration for ARI (years):, 1,2,10'): string[] =>
  [`PRECIPITATION FREQUENCY ESTIMATES AT ${kind} BOUND OF 90% CONFIDENCE INTERVAL`, header, ...rows.map((row) => row.replaceAll(/(?<=[ ,])[\d.]+/g, (value) => String(Number((Number(value) * factor).toFixed(6))))), ''];

describe('headers of a point file', () => {
  it('periods rise, are above nothing, and there are some', () => {
    expect(problemOf(file({ header: 'by duration for ARI (years):, 1,2,2' }))).toMatchObject({ code: 'periodsNotRising', line: 5, column: 35 });
    expect(problemOf(file({ header: 'by duration for ARI (years):, 2,1,10' })).code).toBe('periodsNotRising');
    expect(problemOf(file({ header: 'by duration for ARI (years):, 0,1,10' })).code).toBe('badPeriod');
    expect(problemOf(file({ header: 'by duration for ARI (years):', rows: [] })).code).toBe('noPeriods');
    expect(parseAtlas14(file({ header: 'by duration for ARI (years):, 1', rows: ['5-min:, 0.2', '10-min:, 0.3'] })).table.returnPeriods).toEqual([1]);
  });
  it('a limit is named up to three lines above its table', () => {
    const blank = limit('UPPER', 1.2);
    const kinds = (lines: readonly string[]): boolean => parseAtlas14(file({ after: lines })).table.upper !== null;
    expect(kinds(blank)).toBe(true);
    expect(kinds([blank[0] ?? '', 'x', ...blank.slice(1)])).toBe(true);
    expect(kinds([blank[0] ?? '', 'x', 'y', ...blank.slice(1)])).toBe(true);
    expect(problemOf(file({ after: [blank[0] ?? '', 'x', 'y', 'z', ...blank.slice(1)] })).code).toBe('sectionTwice');
  });
  it('a table may stand at the very start of a file', () => {
    const text = ['by duration for ARI (years):, 1,2', '5-min:, 0.2,0.3', '10-min:, 0.3,0.4', '', 'Point precipitation frequency estimates (inches)'].join('\n');
    expect(parseAtlas14(text).table.durations).toEqual([300, 600]);
  });
  it('a table may end with the file', () => {
    expect(parseAtlas14(file().trimEnd()).table.durations).toEqual([300, 600, 3600]);
  });
});

describe('rows of a point file', () => {
  it('two durations are enough, equal ones are not two', () => {
    expect(parseAtlas14(file({ rows: ['5-min:, 0.2,0.3,0.5', '10-min:, 0.3,0.4,0.7'] })).table.depths).toHaveLength(2);
    expect(problemOf(file({ rows: ['5-min:, 0.2,0.3,0.5'] }))).toMatchObject({ code: 'tooFewDurations', line: 5 });
    expect(problemOf(file({ rows: ['5-min:, 0.2,0.3,0.5', '5-min:, 0.3,0.4,0.7'] }))).toMatchObject({ code: 'durationsNotRising', line: 7 });
    expect(problemOf(file({ rows: ['5-min:, 0.2,0.3,0.5', '10-wk:, 0.3,0.4,0.7'] })).code).toBe('unknownDuration');
    expect(problemOf(file({ rows: ['0-min:, 0.2,0.3,0.5', '10-min:, 0.3,0.4,0.7'] })).code).toBe('durationsNotRising');
  });
  it('says in which cell a row is short, long or falls', () => {
    expect(problemOf(file({ rows: ['5-min:, 0.2,0.3', '10-min:, 0.3,0.4,0.7'] }))).toMatchObject({ code: 'cellCount', line: 6, column: 13, params: { found: 2, expected: 3 } });
    expect(problemOf(file({ rows: ['5-min:, 0.2,0.3,0.5,0.9', '10-min:, 0.3,0.4,0.7'] }))).toMatchObject({ code: 'cellCount', line: 6, column: 17, params: { found: 4 } });
    expect(problemOf(file({ rows: ['5-min:', '10-min:, 0.3,0.4,0.7'] }))).toMatchObject({ code: 'cellCount', line: 6, column: 1, params: { found: 0 } });
    expect(problemOf(file({ rows: ['5-min:, 0.2,0.1,0.5', '10-min:, 0.3,0.4,0.7'] }))).toMatchObject({ code: 'notRising', line: 6, column: 13 });
    expect(parseAtlas14(file({ rows: ['5-min:, 0.2,0.2,0.2', '10-min:, 0.3,0.4,0.7'] })).table.depths[0]).toEqual([5.08, 5.08, 5.08]);
  });
  it('a longer rain is not shallower in any column, from the second row on; a little rain is rain', () => {
    expect(problemOf(file({ rows: ['5-min:, 0.2,0.3,0.5', '10-min:, 0.3,0.3,0.4'] }))).toMatchObject({ code: 'longerIsShallower', line: 7, column: 18 });
    expect(problemOf(file({ rows: ['5-min:, 0.2,0.3,0.5', '10-min:, 0.25,0.29,0.6'] }))).toMatchObject({ code: 'longerIsShallower', line: 7, column: 15 });
    expect(parseAtlas14(file({ rows: ['5-min:, 0.02,0.03,0.05', '10-min:, 0.03,0.04,0.07'] })).table.depths[0]?.[0]).toBeCloseTo(0.508, 9);
    expect(parseAtlas14(file({ rows: ['5-min:, 0.2,0.3,0.5', '10-min:, 0.2,0.3,0.5'] })).table.depths).toHaveLength(2);
  });
});

describe('text of a point file', () => {
  it('reads UTF-8 as such and anything else as ISO-8859-1', () => {
    const named = file({ name: 'Cañada' });
    expect(parseAtlas14(new TextEncoder().encode(named)).place.name).toBe('Cañada');
    expect(parseAtlas14(Uint8Array.from(Buffer.from(named, 'latin1'))).place.name).toBe('Cañada');
  });
  it('takes quotes off, doubled ones stand for one', () => {
    expect(parseAtlas14(file({ between: ['"Station Name: ""Old"" Mill"'] })).place.station).toBe('"Old" Mill');
    expect(problemOf(file({ rows: ['"5-min:"," 0.2","x","0.5"', '10-min:, 0.3,0.4,0.7'] }))).toMatchObject({ code: 'notANumber', line: 6, column: 18 });
    expect(problemOf(file({ rows: ['5-min:, 0.2, ,0.5', '10-min:, 0.3,0.4,0.7'] }))).toMatchObject({ code: 'notANumber', line: 6, column: 13 });
  });
  it('a megabyte is the end', () => {
    expect(problemOf(new Uint8Array(1_000_001).fill(200)).params['bytes']).toBe(1_000_001);
    expect(problemOf(new Uint8Array(1_000_001).fill(200)).code).toBe('tooLarge');
  });
});

describe('limits of a point file', () => {
  it('may equal the mean, and may not cross it', () => {
    const both = parseAtlas14(file({ after: [...limit('UPPER', 1), ...limit('LOWER', 1)] })).table;
    expect([both.upper, both.lower]).toEqual([both.depths, both.depths]);
    expect(problemOf(file({ after: limit('UPPER', 0.999) }))).toMatchObject({ code: 'limitsCross', line: 12, params: { kind: 'upper' } });
    expect(problemOf(file({ after: limit('LOWER', 1.001) }))).toMatchObject({ code: 'limitsCross', line: 12, params: { kind: 'lower' } });
  });
  it('have the durations and periods of the mean', () => {
    const shape = (rows: string[], header?: string): unknown => problemOf(file({ after: limit('UPPER', 1.2, rows, header) })).code;
    const whole = ['5-min:, 0.2,0.3,0.5', '10-min:, 0.3,0.4,0.7', '60-min:, 0.6,0.8,1.4'];
    expect(shape(whole.slice(0, 2))).toBe('limitsShape');
    expect(shape([...whole, '2-hr:, 0.7,0.9,1.5'])).toBe('limitsShape');
    expect(shape(whole.map((row) => row.replace('10-min', '15-min')))).toBe('limitsShape');
    expect(shape(whole, 'by duration for ARI (years):, 1,2,25')).toBe('limitsShape');
    expect(shape(whole.map((row) => `${row},1.9`), 'by duration for ARI (years):, 1,2,10,25')).toBe('limitsShape');
    expect(problemOf(file({ after: limit('UPPER', 1.2, whole.slice(0, 2)) })).line).toBe(12);
  });
});

describe('intensities of a point file', () => {
  const rows = ['5-min:, 60,80,120', '10-min:, 40,50,80', '24-hr:, 3,4,7', '2-day:, 0,1,2'];
  const metric = { unit: '(millimeters/hour)', rows };
  it('end before they round to nothing, limits with them, and warn of coarse ones that are kept', () => {
    const own = parseAtlas14(file({ ...metric, after: limit('UPPER', 2, rows) }));
    expect(own.table.durations).toEqual([300, 600, 86400]);
    expect(own.table.upper).toHaveLength(3);
    expect(own.warnings).toEqual([{ code: 'rain.atlas.durationsDropped', params: { from: 172800, kept: 3, of: 4 } }, { code: 'rain.atlas.coarseIntensity', params: { from: 86400 } }]);
    expect(parseAtlas14(file({ ...metric, rows: [rows[0] ?? '', rows[1] ?? '', rows[3] ?? ''] })).warnings.map(({ code }) => code)).toEqual(['rain.atlas.durationsDropped']);
    expect(parseAtlas14(file({ ...metric, rows: ['5-min:, 4,8,12', '10-min:, 3,5,8'] })).warnings).toEqual([{ code: 'rain.atlas.coarseIntensity', params: { from: 300 } }]);
    expect(parseAtlas14(file({ ...metric, rows: ['5-min:, 6,8,12', '10-min:, 5,6,8'] })).warnings).toEqual([]);
  });
  it('inches an hour and depths are printed finely enough', () => {
    expect(parseAtlas14(file({ unit: '(inches/hour)', rows: ['5-min:, 2,3,4', '10-min:, 1.5,2,3'] })).warnings).toEqual([]);
    expect(parseAtlas14(file({ unit: '(millimeters)', rows: ['5-min:, 2,3,4', '10-min:, 3,4,5'] })).warnings).toEqual([]);
  });
  it('with fewer than two durations left are refused', () => {
    expect(problemOf(file({ ...metric, rows: ['5-min:, 6,8,12', '24-hr:, 0,0,1'] }))).toMatchObject({ code: 'tooFewDurations', line: 6, params: { found: 1 } });
    expect(parseAtlas14(file({ ...metric, rows: ['5-min:, 6,8,12', '10-min:, 5,6,8', '2-day:, 0,0,1'] })).table.durations).toHaveLength(2);
  });
});

describe('depth from a table at its edges', () => {
  const table = (change: Partial<RainTable>): RainTable => ({ ...parseAtlas14(file()).table, ...change });
  it('a row of one duration or one period is read as it is', () => {
    const one = table({ durations: [3600], returnPeriods: [10], depths: [[40]] });
    expect(depthAt(one, 3600, 10)).toBe(40);
    expect(() => depthAt(one, 3601, 10)).toThrow('rain.outsideTable at duration');
    expect(() => depthAt(one, 3600, 9)).toThrow('rain.outsideTable at returnPeriod');
    expect(() => depthAt(table({ durations: [] }), 3600, 10)).toThrow('rain.outsideTable at duration');
  });
  it('has its own points to the last bit, at both ends too', () => {
    const own = table({});
    own.durations.forEach((duration, r) => own.returnPeriods.forEach((period, c) => expect(depthAt(own, duration, period)).toBe(own.depths[r]?.[c])));
  });
  it('no logarithm of nothing', () => {
    const zero = table({ durations: [300, 600], returnPeriods: [1, 2], depths: [[0, 1], [0.5, 2]] });
    expect(() => depthAt(zero, 400, 1)).toThrow('rain.zeroDepth at depths');
    expect(() => depthAt(zero, 300, 1.5)).toThrow('rain.zeroDepth');
    expect(depthAt(zero, 300, 1)).toBe(0);
    expect(() => depthAt(table({ durations: [300, 600], returnPeriods: [1], depths: [[1], [0]] }), 400, 1)).toThrow('rain.zeroDepth');
    expect(depthAt(table({ durations: [300, 1200], returnPeriods: [1], depths: [[0.25], [0.81]] }), 600, 1)).toBeCloseTo(0.45, 12);
  });
});

describe('blocks at their edges', () => {
  it('increments are put in order first, and never fall below nothing', () => {
    const depths = [0, 1, 4, 6];
    expect(arrangeBlocks((t) => depths[t / 60] ?? NaN, 180, 60)).toEqual([1, 3, 2]);
    expect(arrangeBlocks((t) => [0, 3, 2, 4][t / 60] ?? NaN, 180, 60)).toEqual([0, 3, 1]);
    expect(arrangeBlocks((t) => t, 60, 60)).toEqual([60]);
    expect(arrangeBlocks((t) => Math.sqrt(t / 60), 240, 60).map((d) => Number(d.toFixed(3)))).toEqual([0.268, 0.318, 1, 0.414]);
  });
  it('there are at most 20 000 whole ones', () => {
    expect(arrangeBlocks((t) => t, 20000, 1)).toHaveLength(20000);
    expect(() => arrangeBlocks((t) => t, 20001, 1)).toThrow('storm.unevenBlocks');
    expect(() => arrangeBlocks((t) => t, 86400, 86000)).toThrow('storm.unevenBlocks');
    expect(() => alternatingBlock(parseAtlas14(file()).table, 10, 3600, 300, -0.1)).toThrow('value.negative at allowance');
  });
  it('of the NRCS day and of a gauge', () => {
    expect(scsHyetograph('II', 10, 86400 / 20000).depths).toHaveLength(20000);
    expect(() => scsHyetograph('II', 10, 86400 / 20000.5)).toThrow('storm.unevenBlocks');
    expect(scsHyetograph('II', 10, 300, 0).tooCoarse).toBe(true);
    expect(scsFraction('II', 11.75 * 3600)).toBe(0.357);
    const long = [{ time: 0, depth: 0 }, { time: 200000, depth: 4 }];
    expect(userSeries(long, 1)).toHaveLength(200000);
    expect(() => userSeries(long, 0.9999)).toThrow('storm.unevenBlocks');
    expect(() => userSeries([{ time: 5, depth: 0 }, { time: 4, depth: 1 }], 1)).toThrow('storm.notForward at readings/1/time');
    // A last reading a hair beyond a whole block belongs to that block.
    expect(userSeries([{ time: 0, depth: 0 }, { time: 600.0000001, depth: 4 }], 300)).toEqual([expect.closeTo(2, 6), expect.closeTo(2, 6)]);
  });
});
