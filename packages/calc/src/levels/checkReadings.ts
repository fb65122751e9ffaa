import type { LevelBook, LevelProblem, LevelReading } from './levelBook.ts';

/** Longest telescopic rod in ordinary use, 25 ft [m]. Source: common practice, no published limit. */
export const LONGEST_ROD = 7.62;

type Sight = 'backsight' | 'intermediate' | 'foresight';
const SIGHTS: readonly Sight[] = ['backsight', 'intermediate', 'foresight'];

function sightProblems(reading: LevelReading): LevelProblem[] {
  const found: LevelProblem[] = [];
  const add = (code: LevelProblem['code'], params: LevelProblem['params']): void => {
    found.push({ code, readingId: reading.id, params });
  };
  for (const sight of SIGHTS) {
    const value = reading[sight];
    if (value === null) continue;
    if (!Number.isFinite(value)) add('levels.notFinite', { sight });
    else if (value < 0) add(sight === 'foresight' ? 'levels.foresightAboveInstrument' : 'levels.negativeRod', { sight, value });
    else if (value > LONGEST_ROD) add('levels.rodTooLong', { sight, value, longest: LONGEST_ROD });
  }
  if (reading.direct !== null) add('levels.wrongMode', { sight: 'direct' });
  if (SIGHTS.every((sight) => reading[sight] === null)) add('levels.emptyReading', { point: reading.point });
  if (reading.intermediate !== null && (reading.backsight !== null || reading.foresight !== null)) {
    add('levels.twoSights', { point: reading.point });
  }
  return found;
}

function directProblems(reading: LevelReading): LevelProblem[] {
  const sight = SIGHTS.find((name) => reading[name] !== null);
  if (sight !== undefined) return [{ code: 'levels.wrongMode', readingId: reading.id, params: { sight } }];
  if (reading.direct === null) return [{ code: 'levels.emptyReading', readingId: reading.id, params: { point: reading.point } }];
  if (!Number.isFinite(reading.direct)) return [{ code: 'levels.notFinite', readingId: reading.id, params: { sight: 'direct' } }];
  if (Math.abs(reading.direct) > LONGEST_ROD) {
    return [{ code: 'levels.rodTooLong', readingId: reading.id, params: { sight: 'direct', value: reading.direct, longest: LONGEST_ROD } }];
  }
  return [];
}

/** What no rod can read, row by row, before any level is worked out. */
export function checkReadings(book: LevelBook): LevelProblem[] {
  if (book.readings.length === 0) return [{ code: 'levels.noReadings', readingId: null, params: {} }];
  const seen = new Set<string>();
  const found: LevelProblem[] = [];
  for (const reading of book.readings) {
    if (seen.has(reading.id)) found.push({ code: 'levels.repeatedId', readingId: reading.id, params: {} });
    seen.add(reading.id);
    found.push(...(book.mode === 'direct' ? directProblems(reading) : sightProblems(reading)));
  }
  return found;
}
