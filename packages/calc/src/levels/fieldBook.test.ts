import { describe, expect, it } from 'vitest';
import { FOOT, INCH } from '../common/constants.ts';
import { fixtureRow, given } from '../testing/fixtures.ts';
import { explainMisclosure } from './explainMisclosure.ts';
import { gravityWithBand, levelUncertainty } from './gravityAnswer.ts';
import type { LevelBook, LevelReading } from './levelBook.ts';
import { FAR_LEVEL, readingQuestions } from './readingQuestions.ts';
import { readingSlips } from './readingSlips.ts';
import { reduceLevelBook } from './reduceLevelBook.ts';

const none = { backsight: null, intermediate: null, foresight: null, direct: null };
type Sight = keyof typeof none;
/** Rows in feet. */
const rows = (...list: readonly (readonly [point: string, sight: Sight, feet: number])[]): LevelReading[] =>
  list.map(([point, sight, feet], at) => ({ ...none, id: `r${String(at + 1)}`, point, [sight]: feet * FOOT }));
const bookOf = (readings: LevelReading[], mode: LevelBook['mode'] = 'heightOfInstrument'): LevelBook => ({ mode, benchMark: { name: 'Floor', level: 100 * FOOT }, readings, closingOn: null });
const feet = (meters: number): number => Number((meters / FOOT).toFixed(6));

/** The textbook run of fixtures/levels/levelling.json, row 1.2, ended on its known mark. Its own misclosure is 0.04 ft: a last foresight of 10.46 closes it. */
function textbook(lastForesight: number): LevelBook {
  const r = fixtureRow('levels/levelling.json', '1.2');
  const f = (name: string): number => given(r, name);
  return {
    ...bookOf(rows(
      ['A', 'backsight', f('bs1')], ['T1', 'foresight', f('fs1')], ['T1', 'backsight', f('bs2')], ['T2', 'foresight', f('fs2')], ['T2', 'backsight', f('bs3')],
      ['T3', 'foresight', f('fs3')], ['T3', 'backsight', f('bs4')], ['B', 'foresight', lastForesight],
    )),
    benchMark: { name: 'A', level: given(r, 'bm') * FOOT }, closingOn: { name: 'B', level: given(r, 'closing') * FOOT },
  };
}

describe('slips of a reading', () => {
  const slips = (value: number, unit: 'foot' | 'inch' | 'metre', scale: number): unknown[] => readingSlips(value * scale, unit).map(({ kind, value: meant }) => [kind, Number((meant / scale).toFixed(6))]);
  it('in hundredths of a foot', () => {
    expect(slips(4.11, 'foot', FOOT)).toEqual([
      ['wholeFoot', 3.11], ['wholeFoot', 5.11], ['tenthFoot', 4.01], ['tenthFoot', 4.21], ['digitsSwapped', 1.41], ['digitsSwapped', 40.11], ['inchesAsTenths', 4.916667],
    ]);
    expect(slips(4.6, 'foot', FOOT)).toEqual([
      ['wholeFoot', 3.6], ['wholeFoot', 5.6], ['tenthFoot', 4.5], ['tenthFoot', 4.7], ['digitsSwapped', 4.06], ['digitsSwapped', 6.4], ['digitsSwapped', 40.6], ['inchesAsTenths', 4.5],
    ]);
  });
  it('of inches on feet: 1 to 11, and no other figures', () => {
    const inches = (value: number): unknown => readingSlips(value * FOOT, 'foot').filter(({ kind }) => kind === 'inchesAsTenths').map(({ value: meant }) => Number((meant / FOOT).toFixed(6)));
    expect([4.01, 4.12, 4.0, 4.9].map(inches)).toEqual([[4.083333], [], [], [4.75]]);
  });
  it('in inches and in millimetres, none below zero', () => {
    expect(slips(4.5, 'inch', INCH)).toEqual([['wholeFoot', 16.5], ['wholeInch', 3.5], ['wholeInch', 5.5]]);
    expect(slips(0.052, 'metre', 1)).toEqual([['tenthMetre', 0.152], ['digitsSwapped', 0.025], ['digitsSwapped', 0.502]]);
  });
});

describe('a loop that does not close', () => {
  it('the textbook run with a foresight whose digits were swapped: one reading explains it', () => {
    expect(feet(reduceLevelBook(textbook(10.46)).misclosure ?? NaN)).toBe(0);
    const slipped = textbook(10.64);
    expect(feet(reduceLevelBook(slipped).misclosure ?? NaN)).toBe(-0.18);
    const { single, suspects } = explainMisclosure(slipped, 'foot');
    expect(suspects).toHaveLength(1);
    expect(single).toMatchObject({ readingId: 'r8', point: 'B', sight: 'foresight', kind: 'digitsSwapped' });
    expect([feet(single?.value ?? NaN), feet(single?.meant ?? NaN)]).toEqual([10.64, 10.46]);
  });

  const loop = (...gate: readonly (readonly [point: string, sight: Sight, feet: number])[]): LevelBook => bookOf(rows(
    ['Floor', 'backsight', 4.52], ['Low spot', 'intermediate', 4.9], ...gate, ['Gutter', 'intermediate', 4.78], ['Floor', 'foresight', 4.13],
  ));
  it('a whole foot can be in any of four readings, and none of them is named alone', () => {
    const open = loop(['Gate', 'foresight', 3.7], ['Gate', 'backsight', 4.31]);
    expect(feet(reduceLevelBook(open).misclosure ?? NaN)).toBe(1);
    const { single, suspects } = explainMisclosure(open, 'foot');
    expect(single).toBeNull();
    expect(suspects.map(({ readingId, sight, meant }) => [readingId, sight, feet(meant)])).toEqual([['r1', 'backsight', 3.52], ['r3', 'foresight', 4.7], ['r4', 'backsight', 3.31], ['r6', 'foresight', 5.13]]);
  });
  it('a point that was shot from both set-ups tells which', () => {
    // The low spot again from the second set-up, whose instrument is sound: only a reading before it can be wrong.
    const open = bookOf(rows(
      ['Floor', 'backsight', 4.52], ['Low spot', 'intermediate', 4.9], ['Gate', 'foresight', 3.7], ['Gate', 'backsight', 4.31], ['Low spot', 'intermediate', 4.51], ['Floor', 'foresight', 4.13],
    ));
    expect(explainMisclosure(open, 'foot').suspects.map(({ readingId }) => readingId)).toEqual(['r3', 'r4']);
  });
  it('names nothing for a loop that closes, is not closed, is read directly, or misses by no slip', () => {
    const closed = loop(['Gate', 'foresight', 4.7], ['Gate', 'backsight', 4.31]);
    expect(reduceLevelBook(closed).verdict).toBe('pass');
    const open = { ...closed, readings: closed.readings.slice(0, -1) };
    const odd = loop(['Gate', 'foresight', 4.57], ['Gate', 'backsight', 4.31]);
    expect(feet(reduceLevelBook(odd).misclosure ?? NaN)).toBe(0.13);
    const direct = bookOf(rows(['Floor', 'direct', 0], ['Sill', 'direct', -0.07], ['Floor', 'direct', 1]), 'direct');
    expect([closed, open, odd, direct].map((book) => explainMisclosure(book, 'foot'))).toEqual(Array.from({ length: 4 }, () => ({ suspects: [], single: null })));
  });
  it('a slip beyond the end of the rod is no slip', () => {
    const open = loop(['Gate', 'foresight', 3.7], ['Gate', 'backsight', 4.31]);
    expect(explainMisclosure(open, 'foot', undefined, 5 * FOOT).suspects.map(({ readingId }) => readingId)).toEqual(['r1', 'r3', 'r4']);
  });
});

describe('what a reading would mean', () => {
  const start = bookOf(rows(['Floor', 'backsight', 4.52], ['Sill', 'intermediate', 4.59], ['Low spot', 'intermediate', 4.9]));
  const ask = (reading: readonly [string, Sight, number], book = start, rod?: number): unknown[] => {
    const [row] = rows(reading);
    if (row === undefined) throw new Error('a row was given');
    return readingQuestions(book, { ...row, id: 'new' }, rod).map(({ code, impossible, params }) => [code, impossible, ...Object.values(params).map((value) => (typeof value === 'number' ? feet(value) : value))]);
  };
  it('a negative rod would stand above the instrument; a rod ends', () => {
    expect(ask(['Rim', 'intermediate', -0.5])).toEqual([['levels.ask.negative', true, 'Rim', -0.5, 0.5]]);
    expect(ask(['Gate', 'foresight', -0.01])).toEqual([['levels.ask.negative', true, 'Gate', -0.01, 0.01]]);
    expect(ask(['Rim', 'intermediate', 54], start, 13 * FOOT)).toEqual([['levels.ask.tooLong', true, 'Rim', 54, 13, 4.5]]);
    expect(ask(['Rim', 'intermediate', 4], start, 4 * FOOT)).toEqual([]);
    expect(ask(['Rim', 'direct', -14], bookOf(rows(['Floor', 'direct', 0]), 'direct'), 13 * FOOT)).toEqual([['levels.ask.directTooFar', true, 'Rim', -14, 13, -1.166667]]);
  });
  it('more than three feet from every other level is asked back, with the side', () => {
    // The lowest so far is the low spot at 99.62: 96.62 is three feet below it.
    expect(feet(FAR_LEVEL)).toBe(3);
    expect(ask(['Ditch', 'intermediate', 7.9])).toEqual([]);
    expect(ask(['Ditch', 'intermediate', 7.91])).toEqual([['levels.ask.jumpBelow', false, 'Ditch', 96.61, 3.01]]);
    expect(ask(['Roof edge', 'intermediate', 1.5])).toEqual([['levels.ask.jumpAbove', false, 'Roof edge', 103.02, 3.02]]);
  });
  it('a point shot twice must have one level, within what is passed with a caution', () => {
    expect(ask(['Sill', 'intermediate', 4.61])).toEqual([]);
    expect(ask(['Sill', 'intermediate', 4.62])).toEqual([['levels.ask.shotTwice', false, 'Sill', 99.93, 99.9, 0.03]]);
  });
  it('a closing shot that leaves the loop open is asked back before the instrument is packed', () => {
    expect(ask(['Floor', 'foresight', 4.54])).toEqual([]);
    expect(ask(['Floor', 'foresight', 3.52])).toEqual([['levels.ask.staysOpen', false, 'Floor', 1, 0.01]]);
    expect(ask(['Floor', 'direct', 0.03], bookOf(rows(['Floor', 'direct', 0], ['Sill', 'direct', -0.07]), 'direct'))).toEqual([['levels.ask.staysOpen', false, 'Floor', 0.03, 0.01]]);
  });
  it('asks nothing of the first reading, of a new set-up, or of a shot without an instrument', () => {
    expect(ask(['Floor', 'backsight', 4.52], bookOf([]))).toEqual([]);
    const turned = bookOf([...start.readings, ...rows(['Gate', 'foresight', 4.7]).map((row) => ({ ...row, id: 'turn' }))]);
    expect(ask(['Gate', 'backsight', 9], turned)).toEqual([]);
    expect(ask(['Ditch', 'intermediate', 9], turned)).toEqual([]);
  });
});

describe('can gravity work', () => {
  const row = fixtureRow('levels/ternHollow.json', 'fall');
  const outlet = (level: number, distance: number, tailwater = 0) => ({ id: 'K1', name: 'Gutter', kind: 'daylight' as const, level: level * FOOT, distance: distance * FOOT, tailwater: tailwater * FOOT, collectorInvert: given(row, 'invert') * FOOT });
  const answer = (level: number, distance: number, doubt: number, tailwater = 0) => gravityWithBand(outlet(level, distance, tailwater), doubt * FOOT);

  it('the demo site is short to both outlets', () => {
    for (const [name, level, distance] of [['gutter', 'gutter', 'gutterDistance'], ['swale', 'swale', 'swaleDistance']] as const) {
      const result = answer(given(row, level), given(row, distance), 0.01);
      expect(Math.abs(-result.margin / FOOT - (row.expected[name] ?? NaN))).toBeLessThan(row.tolerance);
      expect(result.verdict).toBe('short');
    }
  });
  it('available, needed, margin and slope, by hand', () => {
    // 99.15 - 98.00 = 1.15 ft there; 100 ft at 0.5 % and 0.25 ft of water take 0.75 ft; 0.40 ft is over; (1.15 - 0.25)/100 = 0.9 %.
    const result = answer(98, 100, 0.01, 0.25);
    expect([result.fallAvailable, result.fallNeeded, result.margin, result.uncertainty].map(feet)).toEqual([1.15, 0.75, 0.4, 0.01]);
    expect(result.slope).toBeCloseTo(0.009, 12);
    expect(result.verdict).toBe('works');
  });
  it('the band decides: short, cannot tell, tight, works', () => {
    // 100 ft at 0.5 % take 0.50 ft, so an outlet at 98.65 leaves nothing; 2 in are 0.1667 ft.
    const verdicts = [98.67, 98.66, 98.655, 98.645, 98.64, 98.63, 98.48, 98.47].map((level) => answer(level, 100, 0.0099).verdict);
    expect(verdicts).toEqual(['short', 'short', 'cannotTell', 'cannotTell', 'tight', 'tight', 'tight', 'works']);
  });
  it('doubt is the allowance, or the miss when that is more, or the caution limit while the loop is open', () => {
    const allowable = { pass: 0.01, warn: 0.02 };
    expect([0, -0.005, 0.015, -0.3, null].map((misclosure) => levelUncertainty({ misclosure, allowable }))).toEqual([0.01, 0.01, 0.015, 0.3, 0.02]);
  });
  it('a loop that is open by a foot can tell nothing within a foot', () => {
    expect(answer(98, 100, 1).verdict).toBe('cannotTell');
  });
  it('refuses what is no distance or no doubt', () => {
    expect(() => answer(98, 0, 0.01)).toThrow('value.notPositive');
    expect(() => answer(98, 100, -0.01)).toThrow('value.negative');
  });
});
