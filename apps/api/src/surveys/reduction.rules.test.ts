import { describe, expect, test } from 'vitest';
import { foot, gallon } from '../seed/sites/readings.ts';
import { ternHollowSurvey } from '../seed/sites/ternHollow.survey.ts';
import { reduceSurvey } from './reduction.rules.ts';

describe('the survey of Tern Hollow (invented site; 0.90 and 1.00 ft, 1.07 and 1.17 ft with margin, 650 gal, 68 ft)', () => {
  const reduction = reduceSurvey(ternHollowSurvey);
  const level = (point: string) => (reduction.points.find((p) => p.point === point)?.adjusted ?? NaN) / foot;

  test('closes and gives every level back', () => {
    expect(reduction.problems).toEqual([]);
    expect(reduction.verdict).toBe('closes');
    expect(Math.abs(reduction.misclosure ?? NaN)).toBeLessThan(1e-9);
    expect(reduction.sumCheck?.agrees).toBe(true);
    for (const [point, feet] of [['Slider track', 99.93], ['Patio low spot', 99.62], ['Channel invert', 99.15], ['Street gutter flow line', 99.35], ['Easement swale flow line', 99.4]] as const) {
      expect(level(point)).toBeCloseTo(feet, 6);
    }
  });
  test('gravity is short of both outlets', () => {
    expect(reduction.gravity.map((g) => [g.outlet, round(g.shortfall / foot), round(g.shortfallWithMargin / foot), g.feasible])).toEqual([
      ['Street gutter flow line', 0.9, 1.07, false], ['Easement swale flow line', 1, 1.17, false],
    ]);
  });
  test('the answer has a band: what a run may miss, or what it missed; a run that misses by more than the fall cannot tell', () => {
    expect(reduction.gravity.map(({ uncertainty, verdict }) => [round(uncertainty / foot), verdict])).toEqual([[0.01, 'short'], [0.01, 'short']]);
    const readings = ternHollowSurvey.levelBook.readings.map((reading) => (reading.note === 'Closing shot' ? { ...reading, foresight: (reading.foresight ?? 0) - 2 * foot } : reading));
    const blunder = reduceSurvey({ ...ternHollowSurvey, levelBook: { ...ternHollowSurvey.levelBook, readings } });
    expect(blunder.gravity.map(({ uncertainty, verdict }) => [round(uncertainty / foot), verdict])).toEqual([[2, 'cannotTell'], [2, 'cannotTell']]);
  });
  test('the pond holds about 650 gal to the sill', () => {
    expect(Math.round((reduction.volumeToSill ?? NaN) / gallon / 10) * 10).toBe(650);
  });
  test('the old drain took 45 gal, some 68 ft of pipe', () => {
    const [drain] = reduction.drainTests;
    expect((drain?.volume ?? NaN) / gallon).toBeCloseTo(45, 6);
    expect((drain?.blindLength ?? NaN) / foot).toBeGreaterThan(67.5);
    expect((drain?.blindLength ?? NaN) / foot).toBeLessThan(69.5);
  });
});

describe('a survey that is not finished', () => {
  const book = ternHollowSurvey.levelBook;
  test('an open run says so and corrects nothing', () => {
    const open = reduceSurvey({ ...ternHollowSurvey, levelBook: { ...book, readings: book.readings.slice(0, -1) } });
    expect(open).toMatchObject({ verdict: 'notClosed', misclosure: null });
  });
  test('a run that misses by an inch is open', () => {
    const readings = book.readings.map((reading) => (reading.note === 'Closing shot' ? { ...reading, foresight: (reading.foresight ?? 0) - foot / 12 } : reading));
    const missed = reduceSurvey({ ...ternHollowSurvey, levelBook: { ...book, readings } });
    expect(missed.verdict).toBe('open');
    expect((missed.misclosure ?? NaN) / foot).toBeCloseTo(1 / 12, 6);
  });
  test('a named point that nobody shot is a problem by name', () => {
    const points = [...ternHollowSurvey.points, { point: 'Fence post', role: 'other' as const, station: null, distance: null, tailwater: null }];
    expect(reduceSurvey({ ...ternHollowSurvey, points }).problems).toEqual([{ code: 'surveys.pointNotShot', readingId: null, params: { point: 'Fence post' } }]);
  });
  test('a pond that shrinks with its height is a problem and no volume', () => {
    const stageArea = [{ level: 30, area: 10 }, { level: 30.1, area: 5 }];
    const reduction = reduceSurvey({ ...ternHollowSurvey, stageArea });
    expect(reduction.volumeToSill).toBeNull();
    expect(reduction.problems.map(({ code }) => code)).toEqual(['stage.areaShrinks']);
  });
  test('an impossible reading is told at its line and gives no levels', () => {
    const readings = book.readings.map((reading, index) => (index === 1 ? { ...reading, intermediate: -1 } : reading));
    const reduction = reduceSurvey({ ...ternHollowSurvey, levelBook: { ...book, readings } });
    expect(reduction.points).toEqual([]);
    expect(reduction.problems).toMatchObject([{ readingId: readings[1]?.id }]);
  });
});

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
