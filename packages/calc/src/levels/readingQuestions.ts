import { FOOT } from '../common/constants.ts';
import { LONGEST_ROD } from './checkReadings.ts';
import type { LevelBook, LevelLimits, LevelReading } from './levelBook.ts';
import { DEFAULT_LEVEL_LIMITS, reduceLevelBook } from './reduceLevelBook.ts';

export type ReadingQuestionCode = 'levels.ask.negative' | 'levels.ask.tooLong' | 'levels.ask.directTooFar' | 'levels.ask.jumpAbove' | 'levels.ask.jumpBelow' | 'levels.ask.shotTwice' | 'levels.ask.staysOpen';

/** What a reading would mean, asked before it goes into the book. */
export interface ReadingQuestion {
  readonly code: ReadingQuestionCode;
  /** No rod reads so: it cannot be kept as it is. */
  readonly impossible: boolean;
  readonly params: Readonly<Record<string, number | string>>;
}

/** A yard lies within a few feet; farther than this from every other level is asked back [m]. Source: common practice, no source. */
export const FAR_LEVEL = 3 * FOOT;

/** Limits typed to the hundredth must not be passed on the last bit of a sum. */
const ROUNDING = 1e-9;

const sights = ['backsight', 'intermediate', 'foresight'] as const;

function impossibleOf(reading: LevelReading, rod: number): ReadingQuestion[] {
  const found: ReadingQuestion[] = [];
  for (const sight of sights) {
    const value = reading[sight];
    if (value === null) continue;
    if (value < 0) found.push({ code: 'levels.ask.negative', impossible: true, params: { point: reading.point, value, above: -value } });
    else if (value > rod) found.push({ code: 'levels.ask.tooLong', impossible: true, params: { point: reading.point, value, rod, asInches: value / 12 } });
  }
  if (reading.direct !== null && Math.abs(reading.direct) > rod) {
    found.push({ code: 'levels.ask.directTooFar', impossible: true, params: { point: reading.point, value: reading.direct, rod, asInches: reading.direct / 12 } });
  }
  return found;
}

/** How far a level lies from the nearest of the others, with its sign; null when there are no others. */
function fromNearest(level: number, others: readonly number[]): number | null {
  let best: number | null = null;
  for (const other of others) if (best === null || Math.abs(level - other) < Math.abs(best)) best = level - other;
  return best;
}

/**
 * What is odd about the next reading of a book, and what it would mean. A reading that is asked about may still be right.
 *
 * @param book    the rows so far [m]
 * @param reading the row that is about to be added, every length in metres
 * @param rod     length of the rod [m]
 * @param limits  of misclosure [m]
 * @returns questions, the impossible ones alone when there are any
 * Limits: asks about the level of the point only when the book so far gives one
 * Source: common practice, no source; NAVEDTRA 14071 for the reduction
 * Checked against: hand-made books, each limit on both sides
 */
export function readingQuestions(book: LevelBook, reading: LevelReading, rod: number = LONGEST_ROD, limits: LevelLimits = DEFAULT_LEVEL_LIMITS): ReadingQuestion[] {
  const impossible = impossibleOf(reading, rod);
  if (impossible.length > 0) return impossible;
  const before = book.readings.length === 0 ? [] : reduceLevelBook(book, limits).points;
  const after = reduceLevelBook({ ...book, readings: [...book.readings, reading] }, limits);
  const shot = after.points.findLast((point) => point.readingId === reading.id);
  if (shot === undefined || before.length === 0) return [];
  const closing = shot.point === (book.closingOn ?? book.benchMark).name;
  if (closing) {
    const open = after.misclosure !== null && after.verdict === 'fail';
    return open ? [{ code: 'levels.ask.staysOpen', impossible: false, params: { point: shot.point, misclosure: after.misclosure ?? 0, allowable: after.allowable.pass } }] : [];
  }
  const found: ReadingQuestion[] = [];
  const known = before.findLast(({ point }) => point === shot.point);
  if (known !== undefined && Math.abs(shot.level - known.level) > after.allowable.warn + ROUNDING) {
    found.push({ code: 'levels.ask.shotTwice', impossible: false, params: { point: shot.point, before: known.level, now: shot.level, apart: Math.abs(shot.level - known.level) } });
  }
  const far = fromNearest(shot.level, before.map(({ level }) => level));
  if (known === undefined && far !== null && Math.abs(far) > FAR_LEVEL + ROUNDING) {
    found.push({ code: far > 0 ? 'levels.ask.jumpAbove' : 'levels.ask.jumpBelow', impossible: false, params: { point: shot.point, level: shot.level, apart: Math.abs(far) } });
  }
  return found;
}
