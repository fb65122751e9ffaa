import type { LevelBook, LevelLimits, LevelReading, ReducedLevels } from './levelBook.ts';
import { LONGEST_ROD } from './checkReadings.ts';
import { readingSlips, type RodUnit, type SlipKind } from './readingSlips.ts';
import { DEFAULT_LEVEL_LIMITS, reduceLevelBook } from './reduceLevelBook.ts';

export interface SlipSuspect {
  readonly readingId: string;
  readonly point: string;
  readonly sight: 'backsight' | 'foresight';
  readonly kind: SlipKind;
  /** As written down, and what would close the loop [m]. */
  readonly value: number;
  readonly meant: number;
}

export interface MisclosureReasons {
  /** Readings that close the loop when one slip of each is undone, in the order of the book. */
  readonly suspects: readonly SlipSuspect[];
  /** The suspect, when one reading alone would explain it. */
  readonly single: SlipSuspect | null;
}

const nothing: MisclosureReasons = { suspects: [], single: null };

/** A point that was shot from two set-ups must have one level, or the slip lies between its shots. */
function repeatsAgree({ points }: ReducedLevels, within: number): boolean {
  const first = new Map<string, number>();
  return points.every(({ point, level }) => {
    const known = first.get(point);
    if (known === undefined) first.set(point, level);
    return known === undefined || Math.abs(level - known) <= within;
  });
}

function suspectOf(book: LevelBook, reading: LevelReading, sight: SlipSuspect['sight'], unit: RodUnit, limits: LevelLimits, rod: number): SlipSuspect | null {
  const value = reading[sight];
  if (value === null) return null;
  let best: { readonly suspect: SlipSuspect; readonly left: number } | null = null;
  for (const { kind, value: meant } of readingSlips(value, unit)) {
    if (meant > rod) continue;
    const readings = book.readings.map((other) => (other.id === reading.id ? { ...other, [sight]: meant } : other));
    const reduced = reduceLevelBook({ ...book, readings }, limits);
    if (reduced.misclosure === null || reduced.verdict !== 'pass' || !repeatsAgree(reduced, reduced.allowable.warn)) continue;
    const left = Math.abs(reduced.misclosure);
    if (best === null || left < best.left) best = { suspect: { readingId: reading.id, point: reading.point, sight, kind, value, meant }, left };
  }
  return best === null ? null : best.suspect;
}

/**
 * Which single reading would explain that a loop does not close, if one would.
 *
 * @param book   a closed run by height of instrument [m]; a run that is read directly explains nothing
 * @param unit   marks of the rod
 * @param limits of misclosure [m]
 * @param rod    length of the rod [m]
 * @returns the readings of which one slip, undone, closes the loop within the limit and leaves points that were shot twice at one level
 * Limits: one slip only; intermediate sights are not part of a loop and are never named
 * Source: common practice, no source: look first for the slip that has the size of the misclosure
 * Checked against: fixtures/levels/levelling.json, row 1.2 with a slip put in; hand-made loops
 */
export function explainMisclosure(book: LevelBook, unit: RodUnit, limits: LevelLimits = DEFAULT_LEVEL_LIMITS, rod: number = LONGEST_ROD): MisclosureReasons {
  const now = reduceLevelBook(book, limits);
  if (book.mode === 'direct' || now.misclosure === null || now.verdict === 'pass') return nothing;
  const suspects = book.readings.flatMap((reading) => (['foresight', 'backsight'] as const).flatMap((sight) => suspectOf(book, reading, sight, unit, limits, rod) ?? []));
  const [only, ...others] = suspects;
  return { suspects, single: only !== undefined && others.length === 0 ? only : null };
}
