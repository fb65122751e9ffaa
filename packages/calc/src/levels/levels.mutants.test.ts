import { describe, expect, it } from 'vitest';
import { FOOT, INCH } from '../common/constants.ts';
import { expectProblems } from '../testing/expectProblems.ts';
import { allowableMisclosure } from './allowableMisclosure.ts';
import { dishAt } from './dish.ts';
import { gravityFall, MINIMUM_FALL, OUTLET_MARGIN } from './gravityFall.ts';
import type { LevelBook, LevelReading } from './levelBook.ts';
import { LONGEST_ROD } from './checkReadings.ts';
import { DEFAULT_LEVEL_LIMITS, reduceLevelBook } from './reduceLevelBook.ts';
import { areaAtLevel, levelAtVolume, stageCurve, volumeAtLevel } from './stageVolume.ts';

const none = { backsight: null, intermediate: null, foresight: null, direct: null };
const row = (id: string, point: string, sights: Partial<LevelReading>): LevelReading => ({ ...none, id, point, ...sights });
const book = (readings: readonly LevelReading[], more: Partial<LevelBook> = {}): LevelBook => ({ mode: 'heightOfInstrument', benchMark: { name: 'BM', level: 10 }, closingOn: null, readings, ...more });
const direct = (readings: readonly LevelReading[]): LevelBook => book(readings, { mode: 'direct' });
const codes = (made: LevelBook): string[] => reduceLevelBook(made).problems.map(({ code, readingId }) => `${code} ${readingId ?? ''}`.trim());

describe('readings that no rod gives', () => {
  it('in the usual book', () => {
    expect(LONGEST_ROD).toBe(25 * FOOT);
    expect(codes(book([row('a', 'BM', { backsight: 0 }), row('b', 'X', { foresight: LONGEST_ROD })]))).toEqual([]);
    expect(codes(book([row('a', 'BM', { backsight: 1 }), row('b', 'X', { foresight: LONGEST_ROD + 0.001 })]))).toEqual(['levels.rodTooLong b']);
    expect(codes(book([row('a', 'BM', { backsight: 1, direct: 1 })]))).toEqual(['levels.wrongMode a']);
  });
  it('in a book of direct readings', () => {
    expect(codes(direct([row('a', 'BM', { foresight: 1 })]))).toEqual(['levels.wrongMode a']);
    expect(codes(direct([row('a', 'BM', {})]))).toEqual(['levels.emptyReading a']);
    expect(codes(direct([row('a', 'BM', { direct: NaN })]))).toEqual(['levels.notFinite a']);
    expect(codes(direct([row('a', 'BM', { direct: 7.7 })]))).toEqual(['levels.rodTooLong a']);
    expect(codes(direct([row('a', 'BM', { direct: -7.7 })]))).toEqual(['levels.rodTooLong a']);
    expect(codes(direct([row('a', 'BM', { direct: LONGEST_ROD }), row('b', 'X', { direct: -LONGEST_ROD })]))).toEqual([]);
  });
});

describe('reduction, corner by corner', () => {
  it('an intermediate sight does not move a point that is known, a turning point does', () => {
    const made = reduceLevelBook(book([
      row('a', 'BM', { backsight: 1 }), row('b', 'X', { intermediate: 2 }), row('c', 'X', { intermediate: 2.5 }), row('d', 'T', { foresight: 1 }),
      row('e', 'X', { backsight: 1 }), row('f', 'Y', { foresight: 0 }),
    ]));
    // X is known at 9 from its first sight: instrument at 10, Y at 10.
    expect(made.points.at(-1)?.level).toBe(10);
    expect(made.points.map(({ turningPoint }) => turningPoint)).toEqual([false, false, false, true, true]);
    const moved = reduceLevelBook(book([row('a', 'BM', { backsight: 1 }), row('b', 'BM', { foresight: 1.5 }), row('c', 'BM', { backsight: 1 }), row('d', 'Z', { foresight: 1 })]));
    expect(moved.points.at(-1)?.level).toBe(9.5);
  });

  it('sums of a page that ends on a foresight, on an intermediate, and after a new set-up', () => {
    const start = [row('a', 'BM', { backsight: 1 }), row('b', 'X', { intermediate: 2 })];
    expect(reduceLevelBook(book(start)).sums).toEqual({ backsights: 1, foresights: 2, difference: -1, levelDifference: -1, agrees: true });
    expect(reduceLevelBook(book([...start, row('c', 'T', { foresight: 1.5 })])).sums).toEqual({ backsights: 1, foresights: 1.5, difference: -0.5, levelDifference: -0.5, agrees: true });
    const open = reduceLevelBook(book([...start, row('c', 'T', { foresight: 1.5, backsight: 0.5 })])).sums;
    expect(open).toEqual({ backsights: 1, foresights: 1.5, difference: -0.5, levelDifference: -0.5, agrees: true });
    const second = reduceLevelBook(book([...start, row('c', 'T', { foresight: 1.5, backsight: 0.5 }), row('d', 'Y', { intermediate: 0.25 })])).sums;
    expect(second).toEqual({ backsights: 1.5, foresights: 1.75, difference: -0.25, levelDifference: -0.25, agrees: true });
    // A new backsight before the set-up was closed: its last intermediate belongs to the set-up that is gone.
    const again = reduceLevelBook(book([...start, row('c', 'BM', { backsight: 1 })])).sums;
    expect(again).toEqual({ backsights: 0, foresights: 0, difference: 0, levelDifference: 0, agrees: true });
  });

  it('closes on the named mark, which is only known at the end', () => {
    const readings = [row('a', 'BM', { backsight: 1 }), row('b', 'T', { foresight: 1 }), row('c', 'T', { backsight: 1 }), row('d', 'E', { foresight: 2.5 })];
    const closed = reduceLevelBook(book(readings, { closingOn: { name: 'E', level: 8.495 } }));
    expect([Number(closed.misclosure?.toFixed(9)), closed.verdict]).toEqual([0.005, 'warn']);
    const short = reduceLevelBook(book(readings, { closingOn: { name: 'E', level: 8.505 } }));
    expect([Number(short.misclosure?.toFixed(9)), short.verdict]).toEqual([-0.005, 'warn']);
    expect(reduceLevelBook(book(readings, { closingOn: { name: 'E', level: 8.6 } })).verdict).toBe('fail');
    expect(codes(book([row('a', 'E', { backsight: 1 })], { closingOn: { name: 'E', level: 9 } }))).toEqual(['levels.backsightOnUnknownPoint a']);
    // A sight of the bench mark from the way is no closing.
    expect(reduceLevelBook(book([row('a', 'BM', { backsight: 1 }), row('b', 'BM', { intermediate: 1 })])).verdict).toBe('notClosed');
    // The closing mark may be the bench mark itself.
    const round = reduceLevelBook(book([row('a', 'BM', { backsight: 1 }), row('b', 'BM', { foresight: 1.002 })], { closingOn: { name: 'BM', level: 10 } }));
    expect([Number(round.misclosure?.toFixed(9)), round.verdict]).toEqual([-0.002, 'pass']);
  });

  it('direct readings stand on the mark, close on a later row, and are not adjusted', () => {
    const made = reduceLevelBook(direct([row('a', 'BM', { direct: 0 }), row('b', 'X', { direct: -0.5 }), row('c', 'BM', { direct: 0.002 })]));
    expect(made.points.map(({ level, adjustedLevel, setUp, turningPoint }) => [level, adjustedLevel, setUp, turningPoint])).toEqual([[10, 10, 1, false], [9.5, 9.5, 1, false], [10.002, 10.002, 1, false]]);
    expect([Number(made.misclosure?.toFixed(9)), made.sums, made.setUps]).toEqual([0.002, null, 1]);
    expect(reduceLevelBook(direct([row('a', 'BM', { direct: 0 })])).verdict).toBe('notClosed');
    expect(reduceLevelBook(direct([row('a', 'BM', { direct: 0 }), row('b', 'BM', { direct: 0 })])).misclosure).toBe(0);
  });

  it('limits of a run, and of the root of the set-ups', () => {
    expect(DEFAULT_LEVEL_LIMITS).toEqual({ pass: 0.01 * FOOT, warn: 0.02 * FOOT, per: 'run' });
    const four = [row('a', 'BM', { backsight: 1 })];
    for (const point of ['T', 'U', 'V']) four.push(row(point, point, { foresight: 1, backsight: 1 }));
    four.push(row('z', 'BM', { foresight: 1 }));
    const limits = { pass: 0.002, warn: 0.004, per: 'rootOfSetUps' } as const;
    expect(reduceLevelBook(book(four), limits).allowable).toEqual({ pass: 0.004, warn: 0.008 });
    const broken = reduceLevelBook(book([]), limits);
    expect([broken.allowable, broken.setUps, broken.sums, broken.misclosure, broken.points]).toEqual([{ pass: 0.002, warn: 0.004 }, 0, null, null, []]);
    const halfBroken = reduceLevelBook(book([row('a', 'BM', { backsight: 1 }), row('b', 'T', { foresight: 1 }), row('c', 'Q', { backsight: 1 })]));
    expect([halfBroken.problems.length, halfBroken.sums, halfBroken.points]).toEqual([1, null, []]);
  });
});

describe('falls and stores, corner by corner', () => {
  const outlet = { id: 'o', name: 'o', kind: 'curb', level: 1, distance: 10, tailwater: 0, collectorInvert: 1 } as const;
  it('refuse what cannot be measured', () => {
    expectProblems([
      [() => allowableMisclosure(-1, 1), 'value.negative at length'],
      [() => gravityFall({ ...outlet, level: NaN }), 'value.notFinite at level'],
      [() => gravityFall({ ...outlet, distance: -1 }), 'value.negative at distance'],
      [() => stageCurve([{ level: 0, area: -1 }, { level: 1, area: 1 }]), 'value.negative at stageArea/0/area'],
    ]);
    expect([MINIMUM_FALL, OUTLET_MARGIN]).toEqual([0.005, 2 * INCH]);
  });
  it('gravity that just does, does', () => {
    expect(gravityFall({ ...outlet, level: 0.5, distance: 16 }, 1 / 64, 0.25)).toEqual({ outlet: 'o', neededLevel: 0.75, shortfall: -0.25, shortfallWithMargin: 0, feasible: true });
  });
  it('stores at their very bottom, at a given pair and without a change of area', () => {
    const curve = stageCurve([{ level: 1, area: 4 }, { level: 2, area: 9 }, { level: 3, area: 9 }]);
    expect([areaAtLevel(curve, 1), areaAtLevel(curve, 0.9), areaAtLevel(curve, 2), areaAtLevel(curve, 2.5), areaAtLevel(curve, 4)]).toEqual([4, 0, 9, 9, 9]);
    expect([volumeAtLevel(curve, 1), volumeAtLevel(curve, 2), levelAtVolume(curve, 0), levelAtVolume(curve, -1)]).toEqual([0, 19 / 3, 1, 1]);
    expect(levelAtVolume(curve, 19 / 3)).toBe(2);
    expect(levelAtVolume(curve, 19 / 3 + 4.5)).toBeCloseTo(2.5, 12);
    // A tiny change of area over a high store still bends, and the level comes back.
    const tall = stageCurve([{ level: 0, area: 1 }, { level: 100, area: 1.0001 }]);
    expect(levelAtVolume(tall, volumeAtLevel(tall, 60))).toBeCloseTo(60, 9);
    const low = stageCurve([{ level: 0, area: 1 }, { level: 0.001, area: 1.01 }]);
    expect(levelAtVolume(low, volumeAtLevel(low, 0.0006))).toBeCloseTo(0.0006, 12);
  });
  it('a dish is empty at its bottom, whose area is nothing unless its walls are upright', () => {
    expect(dishAt({ topArea: 8, depth: 2, shape: 0 }, 0)).toEqual({ area: 8, volume: 0 });
    expect(dishAt({ topArea: 8, depth: 2, shape: 1 }, 0)).toEqual({ area: 0, volume: 0 });
    expect(dishAt({ topArea: 8, depth: 2, shape: 1 }, 1)).toEqual({ area: 4, volume: 2 });
  });
});
