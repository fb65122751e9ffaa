import { describe, expect, it } from 'vitest';
import { FOOT } from '../common/constants.ts';
import { explainMisclosure } from './explainMisclosure.ts';
import { gravityWithBand } from './gravityAnswer.ts';
import { hoseCalibration } from './hoseCalibration.ts';
import type { LevelBook, LevelReading } from './levelBook.ts';
import { parsePointList } from './pointList.ts';
import { readingQuestions } from './readingQuestions.ts';
import { readingSlips } from './readingSlips.ts';

const none = { backsight: null, intermediate: null, foresight: null, direct: null };
type Given = readonly [point: string, sight: keyof typeof none, reading: number];
const rows = (unit: number, list: readonly Given[]): LevelReading[] => list.map(([point, sight, reading], at) => ({ ...none, id: `r${String(at + 1)}`, point, [sight]: reading * unit }));
const bookOf = (unit: number, ...list: readonly Given[]): LevelBook => ({ mode: 'heightOfInstrument', benchMark: { name: 'Floor', level: 100 * unit }, readings: rows(unit, list), closingOn: null });
const named = (book: LevelBook, ...more: readonly [limits?: { pass: number; warn: number; per: 'run' }, rod?: number]): unknown[] =>
  explainMisclosure(book, book.benchMark.level === 100 ? 'metre' : 'foot', ...more).suspects.map(({ readingId, kind }) => `${readingId} ${kind}`);

describe('which reading explains a loop', () => {
  const spot = (...shots: readonly number[]): Given[] => shots.map((reading) => ['Low spot', 'intermediate', reading]);
  /** One set-up that misses by a whole foot, with shots of one spot in it. */
  const missing = (...shots: readonly number[]): LevelBook => bookOf(FOOT, ['Floor', 'backsight', 4.52], ...spot(...shots), ['Floor', 'foresight', 3.52]);

  it('none, when a spot has two levels: each shot counts against the first, above and below', () => {
    expect(named(missing(4.9, 4.91))).toEqual(['r1 wholeFoot', 'r4 wholeFoot']);
    // The limit of 0.02 ft is not passed from shot to shot, but from the first to the third.
    expect(named(missing(4.93, 4.915, 4.9))).toEqual([]);
    expect(named(missing(4.9, 5.9))).toEqual([]);
  });
  it('a spot that differs by just the limit has one level', () => {
    const limits = { pass: 0.001, warn: 0.25, per: 'run' } as const;
    expect(named(bookOf(1, ['Floor', 'backsight', 1.5], ...spot(1.75, 1.5), ['Floor', 'foresight', 1.4]), { ...limits, warn: 0.0625 })).toEqual([]);
    expect(named(bookOf(1, ['Floor', 'backsight', 1.5], ...spot(1.75, 1.5), ['Floor', 'foresight', 1.4]), limits)).toEqual(['r1 tenthMetre', 'r4 tenthMetre']);
  });
  it('a slip that just reaches the end of the rod is one', () => {
    expect(named(bookOf(1, ['Floor', 'backsight', 3.1], ['Floor', 'foresight', 3]), undefined, 3.1)).toEqual(['r1 tenthMetre', 'r2 tenthMetre']);
  });
  it('of two slips of one reading the one that closes better, whichever comes first', () => {
    // 4.12 may be 4.22, one tenth off, or 4.21, digits swapped; both close within 0.01 ft.
    const book = (backsight: number): LevelBook => bookOf(FOOT, ['Floor', 'backsight', backsight], ['Floor', 'foresight', 4.12]);
    expect(named(book(4.212))).toContain('r2 digitsSwapped');
    expect(named(book(4.218))).toContain('r2 tenthFoot');
    // 6.6 may be 6.5 in two ways, one tenth off or 6 ft 6 in keyed as tenths: the slip of the eye is named.
    expect(named(bookOf(FOOT, ['Floor', 'backsight', 6.5], ['Floor', 'foresight', 6.6]))).toEqual(['r1 tenthFoot', 'r2 tenthFoot']);
  });
  it('a loop that closes needs no explanation, and one with an impossible reading gets none', () => {
    // 4.10 for 4 ft 1 in would close as well: 4.0833 instead of 4.10, against 4.092.
    expect(named(bookOf(FOOT, ['Floor', 'backsight', 4.092], ['Floor', 'foresight', 4.1]))).toEqual([]);
    expect(named(bookOf(FOOT, ['Floor', 'backsight', 4.09], ['Floor', 'foresight', -4.1]))).toEqual([]);
  });
});

describe('the next reading, at its limits', () => {
  const start = bookOf(FOOT, ['Floor', 'backsight', 4.52]);
  const ask = (book: LevelBook, ...reading: Given): unknown[] => readingQuestions(book, { ...rows(FOOT, [reading])[0]!, id: 'new' }).map(({ code, params }) => `${code} ${(Number(params['apart'] ?? 0) / FOOT).toFixed(2)}`);
  it('a rod that stands on the mark reads nothing, and its end may be read', () => {
    expect(ask(start, 'Rim', 'intermediate', 1.52)).toEqual([]);
    expect(ask(bookOf(FOOT, ['Floor', 'backsight', 2]), 'Rim', 'intermediate', 0)).toEqual([]);
    expect(ask({ ...bookOf(FOOT, ['Floor', 'direct', 0], ['Ditch', 'direct', -24]), mode: 'direct' }, 'Rim', 'direct', -25)).toEqual([]);
  });
  it('the bench mark alone is enough to ask about a level', () => {
    expect(ask(start, 'Ditch', 'intermediate', 7.91)).toEqual(['levels.ask.jumpBelow 3.39']);
  });
  it('far is far from the nearest level, on either side; halfway the first of the book counts', () => {
    const two = bookOf(FOOT, ['Floor', 'backsight', 11], ['Wall', 'intermediate', 0.5]);
    // Floor at 100, wall at 110.5: 104.5 lies 4.5 ft above the floor and 6 ft below the wall.
    expect(ask(two, 'Step', 'intermediate', 6.5)).toEqual(['levels.ask.jumpAbove 4.50']);
    const halfway = readingQuestions(bookOf(1, ['Floor', 'backsight', 4], ['Wall', 'intermediate', 2]), { ...none, id: 'new', point: 'Step', intermediate: 3 });
    expect(halfway.map(({ code }) => code)).toEqual(['levels.ask.jumpAbove']);
  });
  it('a known point that has moved is asked about once', () => {
    expect(ask(bookOf(FOOT, ['Floor', 'backsight', 4.52], ['Sill', 'intermediate', 4.59]), 'Sill', 'intermediate', 9.59)).toEqual(['levels.ask.shotTwice 5.00']);
  });
});

describe('slips, to the mark', () => {
  const swapped = (value: number, unit: 'foot' | 'metre'): number[] => readingSlips(value, unit).filter(({ kind }) => kind === 'digitsSwapped').map(({ value: meant }) => meant);
  it('digits are those of the nearest mark', () => {
    expect(swapped(4.1146 * FOOT, 'foot').map((meant) => Number((meant / FOOT).toFixed(4)))).toEqual([1.41, 40.11]);
    expect(swapped(1.352, 'metre')).toEqual([1.325, 1.532, 3.152]);
  });
  it('a reading of one foot may have been none; below zero there is no reading', () => {
    expect(readingSlips(FOOT, 'inch')[0]).toEqual({ kind: 'wholeFoot', value: 0 });
    expect(() => readingSlips(-0.001, 'foot')).toThrow('value.negative at value');
  });
});

it('a band that touches a limit has not crossed it', () => {
  // 64 m at 1/64 take 1 m: an outlet 1.5 m below has half a meter over, one 0.5 m below lacks as much.
  const verdict = (level: number, doubt: number) => gravityWithBand({ id: 'K1', name: 'Curb', kind: 'curb', level, distance: 64, tailwater: 0, collectorInvert: 10 }, doubt, 1 / 64, 0.25).verdict;
  expect([verdict(9.5, 0.5), verdict(8.5, 0.5), verdict(8.5, 0.25), verdict(8.5, 0.125)]).toEqual(['cannotTell', 'tight', 'works', 'works']);
  expect(verdict(8.5, 0.3125)).toBe('tight');
});

it('fills of a hose may differ by one twentieth of their mean and no more; a flow without end is none', () => {
  const good = (...flows: readonly number[]) => hoseCalibration(1, flows.map((flow) => 1 / flow))?.good;
  expect([good(39, 40, 41), good(78, 80, 82), good(38.95, 40, 41.05)]).toEqual([true, true, false]);
  expect(() => hoseCalibration(1e300, [1e-300])).toThrow('value.notFinite at flow');
});

describe('a list of points, at its limits', () => {
  const list = (...lines: readonly string[]) => parsePointList(lines.join('\n'), undefined, 'metre');
  it('two quotes inside quotes are one', () => {
    expect(list('1,10,20,5,"4"" PIPE, ""OLD"""', '2,10,20,5,"" x').points.map(({ description }) => description)).toEqual(['4" PIPE, "OLD"', 'x']);
  });
  it('points without a name may be many', () => {
    expect(list(',10,20,5,a', ',11,20,5,b').points).toHaveLength(2);
  });
  it('is as wide as 2000 m, and no wider on any side', () => {
    expect(list('1,0,0,5,a', '2,0,2000,5,b').points[1]?.x).toBe(2000);
    for (const far of ['0,2000.5', '0,-2000.5', '2000.5,0', '-2000.5,0']) expect(() => list('1,0,0,5,a', `2,${far},5,b`)).toThrow('levels.list.tooWide');
  });
  it('has a thousand points under a heading, and names the line that is too many', () => {
    const many = (count: number): string[] => ['point,N,E,Z,note', ...Array.from({ length: count }, (_, i) => `${String(i)},${String(i)},1,1,`)];
    expect(list(...many(1000)).points).toHaveLength(1000);
    expect(() => list(...many(1001))).toThrow('levels.list.tooMany at lines/1002/1');
    // Without a heading the thousand and first line is a point too many.
    expect(list(...many(1000).slice(1)).points).toHaveLength(1000);
    expect(() => list(...many(1001).slice(1))).toThrow('levels.list.tooMany at lines/1001/1');
  });
  it('a heading has no number at all; without points it is an empty list', () => {
    expect(() => list('point,N,E,Z,note')).toThrow('levels.list.empty');
    expect(() => list('1,x,20,5,a', '2,11,20,5,b')).toThrow('levels.list.notANumber at lines/1/2');
  });
});
