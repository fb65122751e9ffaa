import { describe, expect, test } from 'vitest';
import { emptyReading, emptySurvey, pointNamed, shotPoints, tidied, withPoint } from './content.ts';

const book = () => {
  const survey = emptySurvey('Floor');
  const shot = { ...emptyReading(), point: 'Sill', intermediate: 1.42 };
  return { ...survey, levelBook: { ...survey.levelBook, readings: [{ ...emptyReading(), point: 'Floor', backsight: 1.4 }, shot, emptyReading()] } };
};

describe('the content of a survey', () => {
  test('starts on the finished floor at 100.00 ft (common practice, no source)', () => expect(emptySurvey('Floor').levelBook.benchMark.level).toBeCloseTo(30.48, 12));
  test('names the points in the order of the book', () => expect(shotPoints(book())).toEqual(['Floor', 'Sill']));
  test('leaves empty rows out, and roles of points that were never shot', () => {
    const named = withPoint(withPoint(book(), { ...pointNamed(book(), 'Sill'), role: 'sill' }), { ...pointNamed(book(), 'Ditch'), role: 'outlet' });
    expect(tidied(named).levelBook.readings).toHaveLength(2);
    expect(tidied(named).points.map((point) => point.role)).toEqual(['sill']);
  });
  test('a point that is named anew keeps one row', () => {
    const once = withPoint(book(), { ...pointNamed(book(), 'Sill'), role: 'sill' });
    expect(withPoint(once, { ...pointNamed(once, 'Sill'), role: 'rim' }).points).toEqual([{ point: 'Sill', role: 'rim', station: null, distance: null, tailwater: null }]);
  });
});
