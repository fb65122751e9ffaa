import { describe, expect, it } from 'vitest';
import { candidateOutlets, levelsByPoint, lowestOfRole, type SurveyedPoint } from './candidateOutlets.ts';

const shot = (point: string, role: string, distance: number | null = null, tailwater: number | null = null): SurveyedPoint => ({ point, role, distance, tailwater });
const points = [
  shot('Sill', 'sill', 12), shot('North drain', 'collectorInvert'), shot('South drain', 'collectorInvert'), shot('Curb', 'outlet', 40), shot('Swale', 'outlet', 60, 0.2),
  shot('No length', 'outlet'), shot('No way', 'outlet', 0), shot('Never shot', 'outlet', 10), shot('Short way', 'outlet', 0.5),
];
const levels = new Map([['Sill', 29], ['North drain', 30.4], ['South drain', 30.1], ['Curb', 30], ['Swale', 29.5], ['No length', 29], ['No way', 29], ['Short way', 30.05]]);

describe('outlets of a survey', () => {
  it('are those that were shot and have a length, against the lower of two inverts; the number is that of the point in the list', () => {
    expect(candidateOutlets(points, levels)).toEqual([
      { id: 'K4', name: 'Curb', kind: 'daylight', level: 30, distance: 40, tailwater: 0, collectorInvert: 30.1 },
      { id: 'K5', name: 'Swale', kind: 'daylight', level: 29.5, distance: 60, tailwater: 0.2, collectorInvert: 30.1 },
      { id: 'K9', name: 'Short way', kind: 'daylight', level: 30.05, distance: 0.5, tailwater: 0, collectorInvert: 30.1 },
    ]);
  });
  it('are none before the collector is shot', () => {
    expect(candidateOutlets(points, new Map([['Curb', 30], ['Swale', 29.5]]))).toEqual([]);
    expect([lowestOfRole(points, 'collectorInvert', new Map([['Sill', 29]])), lowestOfRole(points, 'sill', levels), lowestOfRole([], 'sill', levels)]).toEqual([null, 29, null]);
  });
  it('stand at the adjusted level of the last shot', () => {
    const reduced = (point: string, level: number, adjustedLevel: number) => ({ point, level, adjustedLevel, heightOfInstrument: null, setUp: 1, readingId: point, turningPoint: false });
    expect([...levelsByPoint({ points: [reduced('Curb', 30, 30.01), reduced('Sill', 29, 29.02), reduced('Curb', 30.2, 30.21)] })]).toEqual([['Curb', 30.21], ['Sill', 29.02]]);
  });
});
