import { FOOT } from '../common/constants.ts';
import { checkReadings } from './checkReadings.ts';
import type { LevelBook, LevelLimits, LevelProblem, LevelReading, LevelSums, ReducedLevels, ReducedPoint } from './levelBook.ts';

/** Check L1: a run closes within 0.01 ft, and is doubtful up to 0.02 ft. Source: ours; freeboards are one to three inches. */
export const DEFAULT_LEVEL_LIMITS: LevelLimits = { pass: 0.01 * FOOT, warn: 0.02 * FOOT, per: 'run' };

/** Limits typed to the hundredth must not fail on the last bit of a sum. */
const ROUNDING = 1e-9;

interface Run {
  readonly points: ReducedPoint[];
  readonly problems: LevelProblem[];
  readonly known: Map<string, number>;
  setUp: number;
  instrument: number | null;
  backsights: number;
  foresights: number;
  /** Backsight of a set-up that no foresight has closed yet. */
  openBacksight: number;
  startLevel: number;
  /** Rise from the start to the end of every set-up that is closed. */
  rise: number;
  lastIntermediate: { sight: number; level: number } | null;
}

function addPoint(run: Run, reading: LevelReading, level: number, turningPoint: boolean): void {
  run.points.push({
    point: reading.point, level, adjustedLevel: level, heightOfInstrument: run.instrument,
    setUp: run.setUp, readingId: reading.id, turningPoint,
  });
  if (turningPoint || !run.known.has(reading.point)) run.known.set(reading.point, level);
}

function takeForesight(run: Run, reading: LevelReading, foresight: number, instrument: number): void {
  const level = instrument - foresight;
  addPoint(run, reading, level, true);
  run.backsights += run.openBacksight;
  run.foresights += foresight;
  run.openBacksight = 0;
  run.rise += level - run.startLevel;
  run.lastIntermediate = null;
  run.instrument = null;
}

function takeBacksight(run: Run, reading: LevelReading, backsight: number): void {
  const level = run.known.get(reading.point);
  if (level === undefined) {
    run.problems.push({ code: 'levels.backsightOnUnknownPoint', readingId: reading.id, params: { point: reading.point } });
    return;
  }
  run.instrument = level + backsight;
  run.openBacksight = backsight;
  run.startLevel = level;
  run.lastIntermediate = null;
  if (run.setUp === 0) addPoint(run, reading, level, false);
  run.setUp += 1;
}

function takeRow(run: Run, reading: LevelReading): void {
  if (reading.foresight !== null || reading.intermediate !== null) {
    if (run.instrument === null) {
      const code = run.setUp === 0 ? 'levels.noBacksightFirst' : 'levels.noSetUp';
      run.problems.push({ code, readingId: reading.id, params: { point: reading.point } });
      return;
    }
    if (reading.foresight !== null) takeForesight(run, reading, reading.foresight, run.instrument);
    else if (reading.intermediate !== null) {
      const level = run.instrument - reading.intermediate;
      addPoint(run, reading, level, false);
      run.lastIntermediate = { sight: reading.intermediate, level };
    }
  }
  if (reading.backsight !== null) takeBacksight(run, reading, reading.backsight);
}

/** A page that ends on an intermediate sight takes that sight as its last foresight. */
function sumCheck(run: Run): LevelSums {
  const open = run.lastIntermediate;
  const backsights = run.backsights + (open === null ? 0 : run.openBacksight);
  const foresights = run.foresights + (open?.sight ?? 0);
  const difference = backsights - foresights;
  const levelDifference = run.rise + (open === null ? 0 : open.level - run.startLevel);
  return { backsights, foresights, difference, levelDifference, agrees: Math.abs(difference - levelDifference) < ROUNDING };
}

function misclosureOf(book: LevelBook, points: readonly ReducedPoint[]): number | null {
  const target = book.closingOn ?? book.benchMark;
  // The first row of a direct run sets the rod on the mark; only a later one checks it.
  const closing = points.findLast((p, i) => p.point === target.name && (book.mode === 'direct' ? i > 0 : p.turningPoint));
  return closing === undefined ? null : closing.level - target.level;
}

function judge(misclosure: number | null, allowable: { pass: number; warn: number }): ReducedLevels['verdict'] {
  if (misclosure === null) return 'notClosed';
  const size = Math.abs(misclosure);
  if (size <= allowable.pass + ROUNDING) return 'pass';
  return size <= allowable.warn + ROUNDING ? 'warn' : 'fail';
}

function reduceRun(book: LevelBook): Run {
  const run: Run = {
    points: [], problems: [], known: new Map([[book.benchMark.name, book.benchMark.level]]), setUp: 0, instrument: null,
    backsights: 0, foresights: 0, openBacksight: 0, startLevel: book.benchMark.level, rise: 0, lastIntermediate: null,
  };
  if (book.closingOn !== null && book.closingOn.name !== book.benchMark.name) run.known.delete(book.closingOn.name);
  for (const reading of book.readings) {
    if (book.mode === 'direct') {
      run.setUp = 1;
      addPoint(run, reading, book.benchMark.level + (reading.direct ?? 0), false);
    } else takeRow(run, reading);
  }
  return run;
}

/**
 * Levels of the points of a field book, with its sum check, misclosure and adjustment.
 *
 *   HI = level + BS;  level = HI - sight;  sum BS - sum FS = last level - first level
 *   correction at set-up k = -misclosure * k / set-ups
 *
 * @param book   readings [m]; in direct mode each reads the height above the bench mark
 * @param limits of misclosure [m]
 * @returns points with the id of the reading each comes from; `points` is empty when a reading is impossible
 * Limits: equal weight of set-ups; points of set-up k take the correction of that set-up
 * Source: NAVEDTRA 14071, "Level computations"; FM 5-233 appendix B (error of closure and sign of the correction)
 * Checked against: fixtures/levels/levelling.json, rows 1.1 to 1.4, the printed hundredth
 */
export function reduceLevelBook(book: LevelBook, limits: LevelLimits = DEFAULT_LEVEL_LIMITS): ReducedLevels {
  const impossible = checkReadings(book);
  const run: Run | null = impossible.length === 0 ? reduceRun(book) : null;
  const problems = run === null ? impossible : run.problems;
  const points = run === null || problems.length > 0 ? [] : run.points;
  const setUps = run?.setUp ?? 0;
  const scale = limits.per === 'run' ? 1 : Math.sqrt(Math.max(setUps, 1));
  const allowable = { pass: limits.pass * scale, warn: limits.warn * scale };
  const misclosure = misclosureOf(book, points);
  const spread = misclosure === null || setUps === 0 || book.mode === 'direct' ? 0 : misclosure / setUps;
  return {
    points: points.map((p) => ({ ...p, adjustedLevel: p.level - spread * p.setUp })),
    setUps,
    sums: run === null || problems.length > 0 || book.mode === 'direct' ? null : sumCheck(run),
    misclosure, allowable, verdict: judge(misclosure, allowable), problems,
  };
}
