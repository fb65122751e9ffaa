import { candidateOutlets, gravityWithBand, levelsByPoint, levelUncertainty, reduceLevelBook, type GravityWithBand, type LevelBook, type LevelReading, type ReducedLevels, type SurveyedPoint } from '@yardfall/calc';
import type { pointRoles } from '@yardfall/contracts';

export type PointRole = (typeof pointRoles)[number];
export type ShotKind = 'backsight' | 'intermediate' | 'foresight' | 'direct';

/** One look through the instrument, as it was kept. A struck one stays in the book and counts for nothing. */
export interface Shot {
  readonly id: string;
  /** The entry of the survey that holds it. */
  readonly entry: string;
  readonly kind: ShotKind;
  readonly point: string;
  readonly role: PointRole;
  /** Rod reading, or height above the bench mark [m]. */
  readonly value: number;
  readonly struck: boolean;
  /** Of an outlet: pipe to it, and water to allow for above it [m]. */
  readonly distance: number | null;
  readonly tailwater: number | null;
  readonly photoIds: readonly string[];
  /** Where it stands on the plan [m]. */
  readonly pin: { readonly x: number; readonly y: number } | null;
  /** It is in the office; before that it is on this phone. */
  readonly inOffice: boolean;
}

export interface BookHead {
  readonly mode: LevelBook['mode'];
  readonly benchMark: { readonly name: string; readonly level: number };
  /** Length of the rod [m]. */
  readonly rod: number;
}

export interface FieldBook extends BookHead {
  /** In the order in which they were shot. */
  readonly shots: readonly Shot[];
}

export interface BookStanding {
  readonly reduced: ReducedLevels;
  readonly levels: ReadonlyMap<string, number>;
  /** Level of a shot [m]: the misclosure is spread over it only where the loop closes well enough. */
  readonly levelOf: (id: string) => number | null;
  /** Best outlet first. */
  readonly gravity: readonly GravityWithBand[];
  readonly instrument: number | null;
  readonly closed: boolean;
}

const nothing = { backsight: null, intermediate: null, foresight: null, direct: null };

export function readingOf({ id, point, kind, value }: Pick<Shot, 'id' | 'point' | 'kind' | 'value'>): LevelReading {
  return { ...nothing, id, point, [kind]: value };
}

export function standingShots({ shots }: Pick<FieldBook, 'shots'>): Shot[] {
  return shots.filter(({ struck }) => !struck);
}

/** The book as the calc package takes it. */
export function levelBookOf(book: FieldBook): LevelBook {
  return { mode: book.mode, benchMark: book.benchMark, closingOn: null, readings: standingShots(book).map(readingOf) };
}

/** What each point is that stands in the book. */
export function pointsOf(book: FieldBook): (SurveyedPoint & { readonly role: PointRole })[] {
  const points = new Map(standingShots(book).map(({ point, role, distance, tailwater }) => [point, { point, role, distance, tailwater }]));
  return [...points.values()];
}

/** What the book comes to at this moment. */
export function standingOf(book: FieldBook): BookStanding {
  const reduced = reduceLevelBook(levelBookOf(book));
  const levels = levelsByPoint(reduced);
  const doubt = levelUncertainty(reduced);
  const gravity = candidateOutlets(pointsOf(book), levels).map((outlet) => gravityWithBand(outlet, doubt));
  const spread = reduced.verdict === 'pass' || reduced.verdict === 'warn';
  const levelOf = (id: string): number | null => {
    const point = reduced.points.findLast(({ readingId }) => readingId === id);
    return point === undefined ? null : spread ? point.adjustedLevel : point.level;
  };
  return { reduced, levels, levelOf, gravity: gravity.toSorted((a, b) => b.margin - a.margin), instrument: instrumentOf(book, reduced), closed: reduced.misclosure !== null && isAtEnd(book) };
}

/** The closing shot is the last one: whatever is shot after it opens the book again. */
function isAtEnd(book: FieldBook): boolean {
  const last = standingShots(book).at(-1);
  return last !== undefined && last.point === book.benchMark.name && (last.kind === 'foresight' || last.kind === 'direct');
}

/** Height of the instrument where it stands now [m]; null between two set-ups, and for a rod that is read directly. */
function instrumentOf(book: FieldBook, { points }: ReducedLevels): number | null {
  const shots = standingShots(book);
  const last = shots.findLast(({ kind }) => kind === 'backsight' || kind === 'foresight');
  if (last?.kind !== 'backsight') return null;
  const level = last.point === book.benchMark.name ? book.benchMark.level : points.findLast(({ point }) => point === last.point)?.level;
  return level === undefined ? null : level + last.value;
}
