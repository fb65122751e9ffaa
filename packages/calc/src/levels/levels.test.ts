import { describe, expect, it } from 'vitest';
import { CUBIC_FOOT, FOOT, GALLON, GALLON_PER_MINUTE, INCH, MINUTE } from '../common/constants.ts';
import { seededRandom } from '../math/random.ts';
import { fixtureRow, given } from '../testing/fixtures.ts';
import { allowableMisclosure } from './allowableMisclosure.ts';
import { gravityFall } from './gravityFall.ts';
import { hoseTest } from './hoseTest.ts';
import type { LevelBook, LevelReading } from './levelBook.ts';
import { reduceLevelBook } from './reduceLevelBook.ts';
import { areaAtLevel, levelAtVolume, stageCurve, volumeAtLevel } from './stageVolume.ts';

const FILE = 'levels/levelling.json';
const none = { backsight: null, intermediate: null, foresight: null, direct: null };

function row(id: string, point: string, sights: Partial<LevelReading>): LevelReading {
  return { ...none, id, point, ...sights };
}

function runOf(mark: number, closing: number | null): LevelBook {
  const r = fixtureRow(FILE, '1.2');
  const feet = (name: string): number => given(r, name) * FOOT;
  return {
    mode: 'heightOfInstrument', benchMark: { name: 'A', level: mark * FOOT }, closingOn: closing === null ? null : { name: 'B', level: closing * FOOT },
    readings: [
      row('r1', 'A', { backsight: feet('bs1') }),
      row('r2', 'T1', { foresight: feet('fs1'), backsight: feet('bs2') }),
      row('r3', 'T2', { foresight: feet('fs2'), backsight: feet('bs3') }),
      row('r4', 'T3', { foresight: feet('fs3'), backsight: feet('bs4') }),
      row('r5', 'B', { foresight: feet('fs4') }),
    ],
  };
}

describe('level book', () => {
  it('row 1.1: one set-up', () => {
    const r = fixtureRow(FILE, '1.1');
    const { points } = reduceLevelBook({
      mode: 'heightOfInstrument', benchMark: { name: 'BM', level: given(r, 'bm') * FOOT }, closingOn: null,
      readings: [row('a', 'BM', { backsight: given(r, 'bs') * FOOT }), row('b', 'X', { foresight: given(r, 'fs') * FOOT })],
    });
    expect((points[1]?.heightOfInstrument ?? 0) / FOOT).toBeCloseTo(r.expected['hi'] ?? NaN, 9);
    expect((points[1]?.level ?? 0) / FOOT).toBeCloseTo(r.expected['level'] ?? NaN, 9);
    expect(points[1]?.readingId).toBe('b');
  });

  it('rows 1.2 and 1.3: four set-ups, sums, misclosure and adjustment', () => {
    const r = fixtureRow(FILE, '1.2');
    const result = reduceLevelBook(runOf(given(r, 'bm'), given(r, 'closing')));
    expect(result.problems).toEqual([]);
    for (let k = 1; k <= 4; k += 1) {
      expect((result.points[k]?.level ?? 0) / FOOT).toBeCloseTo(r.expected[`l${k}`] ?? NaN, 9);
      expect((result.points[k]?.heightOfInstrument ?? 0) / FOOT).toBeCloseTo(r.expected[`hi${k}`] ?? NaN, 9);
      expect((result.points[k]?.adjustedLevel ?? 0) / FOOT).toBeCloseTo(fixtureRow(FILE, '1.3').expected[`a${k}`] ?? NaN, 9);
    }
    expect((result.sums?.backsights ?? 0) / FOOT).toBeCloseTo(r.expected['sumBs'] ?? NaN, 9);
    expect((result.sums?.foresights ?? 0) / FOOT).toBeCloseTo(r.expected['sumFs'] ?? NaN, 9);
    expect((result.sums?.difference ?? 0) / FOOT).toBeCloseTo(r.expected['difference'] ?? NaN, 9);
    expect(result.sums?.agrees).toBe(true);
    expect((result.misclosure ?? 0) / FOOT).toBeCloseTo(r.expected['misclosure'] ?? NaN, 9);
    expect([result.verdict, result.setUps]).toEqual(['fail', 4]);
    expect(result.points[0]?.adjustedLevel).toBe(result.points[0]?.level);
  });

  it('row 1.4: five set-ups, back on the first mark', () => {
    const r = fixtureRow(FILE, '1.4');
    const readings = [row('s0', 'BM', { backsight: 1 })];
    for (let k = 1; k < 5; k += 1) readings.push(row(`s${k}`, `T${k}`, { foresight: 1, backsight: 1 }));
    readings.push(row('s5', 'BM', { foresight: 1 - given(r, 'misclosure') * FOOT }));
    const result = reduceLevelBook({ mode: 'heightOfInstrument', benchMark: { name: 'BM', level: 10 }, closingOn: null, readings });
    expect(((result.points[4]?.adjustedLevel ?? 0) - (result.points[4]?.level ?? 0)) / FOOT).toBeCloseTo(r.expected['fourth'] ?? NaN, 9);
    expect(((result.points[1]?.adjustedLevel ?? 0) - 10) / FOOT).toBeCloseTo(r.expected['perSetUp'] ?? NaN, 9);
  });

  it('row 1.5 and limits that grow with the set-ups', () => {
    const r = fixtureRow(FILE, '1.5');
    const length = given(r, 'miles') * 1609.344;
    expect(allowableMisclosure(length, 0.05 * FOOT) / FOOT).toBeCloseTo(r.expected['thirdOrder'] ?? NaN, 9);
    expect(allowableMisclosure(length, 0.1 * FOOT) / FOOT).toBeCloseTo(r.expected['rough'] ?? NaN, 9);
    const result = reduceLevelBook(runOf(100, 94.91), { pass: 0.02 * FOOT, warn: 0.03 * FOOT, per: 'rootOfSetUps' });
    expect(result.allowable.pass / FOOT).toBeCloseTo(0.04, 12);
    expect(result.verdict).toBe('pass');
  });

  it('judges at 0.01 and 0.02 ft', () => {
    const verdict = (closing: number): string => reduceLevelBook(runOf(100, closing)).verdict;
    expect([verdict(94.95), verdict(94.94), verdict(94.935), verdict(94.93), verdict(94.929), verdict(94.96)]).toEqual(['pass', 'pass', 'warn', 'warn', 'fail', 'pass']);
    expect(reduceLevelBook(runOf(100, null)).verdict).toBe('notClosed');
  });

  it('intermediate sights stay out of the sums unless they end the page', () => {
    const book = runOf(100, 94.91);
    const withSight = { ...book, readings: [...book.readings.slice(0, 1), row('i1', 'door', { intermediate: 1 }), ...book.readings.slice(1)] };
    const result = reduceLevelBook(withSight);
    expect(result.sums).toEqual(reduceLevelBook(book).sums);
    expect((result.points[1]?.level ?? 0)).toBeCloseTo(103.1 * FOOT - 1, 9);
    const ends = reduceLevelBook({ ...book, readings: [row('a', 'A', { backsight: 1.5 }), row('b', 'x', { intermediate: 0.4 }), row('c', 'y', { intermediate: 1.1 })] });
    expect(ends.sums?.agrees).toBe(true);
    expect(ends.sums?.difference).toBeCloseTo(0.4, 12);
  });

  it('a second set-up back on the bench mark still checks', () => {
    const readings = [row('a', 'BM', { backsight: 1 }), row('b', 'X', { foresight: 1.4 }), row('c', 'BM', { backsight: 1.2 }), row('d', 'Y', { foresight: 0.9 })];
    const result = reduceLevelBook({ mode: 'heightOfInstrument', benchMark: { name: 'BM', level: 10 }, closingOn: null, readings });
    expect(result.points.map((p) => [p.point, Number(p.level.toFixed(9)), p.setUp])).toEqual([['BM', 10, 0], ['X', 9.6, 1], ['Y', 10.3, 2]]);
    expect([result.sums?.agrees, result.verdict]).toEqual([true, 'notClosed']);
  });

  it('gives back the ground of 200 random loops, with the error that was put in', () => {
    const random = seededRandom(31);
    for (let n = 0; n < 200; n += 1) {
      const ground = Array.from({ length: 2 + Math.floor(random() * 8) }, () => 30 + random());
      const blunder = (random() - 0.5) * 0.02;
      const readings: LevelReading[] = [];
      let instrument = 0;
      ground.forEach((level, i) => {
        const foresight = i === 0 ? {} : { foresight: instrument - level };
        instrument = level + 0.1 + random() + 1.2;
        readings.push(row(`r${i}`, i === 0 ? 'BM' : `T${i}`, { ...foresight, backsight: instrument - level }));
      });
      readings.push(row('end', 'BM', { foresight: instrument - (ground[0] ?? NaN) - blunder }));
      const result = reduceLevelBook({ mode: 'heightOfInstrument', benchMark: { name: 'BM', level: ground[0] ?? NaN }, closingOn: null, readings });
      expect(result.misclosure).toBeCloseTo(blunder, 10);
      expect(result.sums?.agrees).toBe(true);
      ground.forEach((level, i) => expect(result.points[i]?.level).toBeCloseTo(level, 10));
      expect(result.points.at(-1)?.adjustedLevel).toBeCloseTo(ground[0] ?? NaN, 10);
    }
  });

  it('direct mode reads heights above the mark', () => {
    const result = reduceLevelBook({
      mode: 'direct', benchMark: { name: 'floor', level: 30 }, closingOn: null,
      readings: [row('a', 'sill', { direct: -0.02 }), row('b', 'low', { direct: -0.11 }), row('c', 'floor', { direct: 0.002 })],
    });
    expect(result.points.map((p) => p.level)).toEqual([29.98, 29.89, 30.002]);
    expect(result.points.map((p) => p.adjustedLevel)).toEqual([29.98, 29.89, 30.002]);
    expect(result.misclosure).toBeCloseTo(0.002, 12);
    expect([result.verdict, result.sums]).toEqual(['pass', null]);
  });

  const impossible: readonly [string, readonly LevelReading[], string][] = [
    ['nothing', [], 'levels.noReadings'],
    ['a foresight first', [row('a', 'X', { foresight: 1 })], 'levels.noBacksightFirst'],
    ['a backsight on a point without a level', [row('a', 'X', { backsight: 1 })], 'levels.backsightOnUnknownPoint'],
    ['a sight after the foresight took the set-up down', [row('a', 'BM', { backsight: 1 }), row('b', 'T', { foresight: 1 }), row('c', 'X', { intermediate: 1 })], 'levels.noSetUp'],
    ['a foresight above the instrument', [row('a', 'BM', { backsight: 1 }), row('b', 'T', { foresight: -0.2 })], 'levels.foresightAboveInstrument'],
    ['a negative backsight', [row('a', 'BM', { backsight: -1 })], 'levels.negativeRod'],
    ['a rod that nobody carries', [row('a', 'BM', { backsight: 9 })], 'levels.rodTooLong'],
    ['an empty row', [row('a', 'BM', { backsight: 1 }), row('b', 'X', {})], 'levels.emptyReading'],
    ['two sights that exclude each other', [row('a', 'BM', { backsight: 1, intermediate: 1 })], 'levels.twoSights'],
    ['a number that is none', [row('a', 'BM', { backsight: NaN })], 'levels.notFinite'],
    ['the other kind of rod', [row('a', 'BM', { direct: 1 })], 'levels.wrongMode'],
    ['one id twice', [row('a', 'BM', { backsight: 1 }), row('a', 'X', { intermediate: 1 })], 'levels.repeatedId'],
  ];
  for (const [name, readings, code] of impossible) {
    it(`refuses ${name}`, () => {
      const result = reduceLevelBook({ mode: 'heightOfInstrument', benchMark: { name: 'BM', level: 10 }, closingOn: null, readings });
      expect(result.problems.map((p) => p.code)).toContain(code);
      expect([result.points, result.misclosure, result.verdict]).toEqual([[], null, 'notClosed']);
    });
  }
});

describe('stage and volume', () => {
  const r = fixtureRow('levels/ternHollow.json', 'stage');
  const pairs = [0, 1, 2, 3, 4].map((i) => ({ level: given(r, `l${i}`) * FOOT, area: given(r, `a${i}`) * FOOT * FOOT }));
  const curve = stageCurve(pairs);

  it('the demo site holds 650 gal to the sill', () => {
    const gallons = volumeAtLevel(curve, 99.93 * FOOT) / GALLON;
    expect(Math.abs(gallons - (r.expected['gallonsToSill'] ?? NaN))).toBeLessThan(r.tolerance);
  });

  it('is the frustum of a cone', () => {
    const cone = stageCurve([{ level: 0, area: 0 }, { level: 3, area: 9 }]);
    expect(volumeAtLevel(cone, 3)).toBeCloseTo(9, 12);
    expect(volumeAtLevel(cone, 1.5)).toBeCloseTo(9 / 8, 12);
    expect(areaAtLevel(cone, 1.5)).toBeCloseTo(2.25, 12);
    expect(levelAtVolume(cone, 9 / 8)).toBeCloseTo(1.5, 12);
  });

  it('goes there and back, and its slope is the area', () => {
    const random = seededRandom(11);
    for (let i = 0; i < 500; i += 1) {
      const level = (99.6 + random() * 0.6) * FOOT;
      const volume = volumeAtLevel(curve, level);
      expect(levelAtVolume(curve, volume)).toBeCloseTo(Math.max(level, 99.62 * FOOT), 9);
      if (level > 99.63 * FOOT) expect((volumeAtLevel(curve, level + 1e-6) - volume) / 1e-6 / areaAtLevel(curve, level)).toBeCloseTo(1, 3);
    }
  });

  it('has straight walls above the last level and nothing below the first', () => {
    expect(volumeAtLevel(curve, 100.98 * FOOT) - volumeAtLevel(curve, 99.98 * FOOT)).toBeCloseTo(900 * CUBIC_FOOT, 9);
    expect([volumeAtLevel(curve, 0), areaAtLevel(curve, 0), levelAtVolume(curve, -1)]).toEqual([0, 0, 99.62 * FOOT]);
    const box = stageCurve([{ level: 1, area: 5 }, { level: 2, area: 5 }]);
    expect(levelAtVolume(box, 2.5)).toBeCloseTo(1.5, 12);
  });

  it('refuses pairs that are no dish', () => {
    expect(() => stageCurve([{ level: 1, area: 5 }])).toThrow('stage.tooFewPairs');
    expect(() => stageCurve([{ level: 1, area: 5 }, { level: 1, area: 6 }])).toThrow('stage.notRising');
    expect(() => stageCurve([{ level: 1, area: 5 }, { level: 2, area: 4 }])).toThrow('stage.areaShrinks');
    expect(() => stageCurve([{ level: 1, area: 0 }, { level: 2, area: 0 }])).toThrow('stage.noArea');
    expect(() => stageCurve([{ level: NaN, area: 0 }, { level: 2, area: 1 }])).toThrow('value.notFinite');
  });
});

describe('fall and hose', () => {
  it('the demo site is short of gravity by 0.90 and 1.00 ft, with margin 1.07 and 1.17', () => {
    const r = fixtureRow('levels/ternHollow.json', 'fall');
    for (const name of ['gutter', 'swale']) {
      const answer = gravityFall({
        id: name, name, kind: 'curb', level: given(r, name) * FOOT, distance: given(r, `${name}Distance`) * FOOT, tailwater: 0, collectorInvert: given(r, 'invert') * FOOT,
      }, given(r, 'fall'), given(r, 'marginInches') * INCH);
      expect(Math.abs(answer.shortfall / FOOT - (r.expected[name] ?? NaN))).toBeLessThan(r.tolerance);
      expect(Math.abs(answer.shortfallWithMargin / FOOT - (r.expected[`${name}Margin`] ?? NaN))).toBeLessThan(r.tolerance);
      expect(answer.feasible).toBe(false);
    }
  });

  it('tailwater counts against the outlet, and enough fall is feasible', () => {
    const outlet = { id: 'o', name: 'o', kind: 'ditch', level: 10, distance: 20, tailwater: 0, collectorInvert: 10.2 } as const;
    expect(gravityFall(outlet).feasible).toBe(true);
    expect(gravityFall({ ...outlet, tailwater: 0.06 }).feasible).toBe(false);
    expect(gravityFall({ ...outlet, tailwater: 0.06 }).shortfall - gravityFall(outlet).shortfall).toBeCloseTo(0.06, 12);
  });

  it('45 gal of hose water is about 68 ft of blind 4 in pipe', () => {
    const r = fixtureRow('levels/ternHollow.json', 'hose');
    const { volume, blindLength } = hoseTest(given(r, 'gpm') * GALLON_PER_MINUTE, given(r, 'minutes') * MINUTE, given(r, 'diameterInches') * INCH);
    expect(volume / GALLON).toBeCloseTo(r.expected['gallons'] ?? NaN, 9);
    expect(Math.abs(blindLength / FOOT - (r.expected['feet'] ?? NaN))).toBeLessThan(r.tolerance);
    expect(() => hoseTest(1, 0, 0.1)).toThrow('value.notPositive');
  });
});
