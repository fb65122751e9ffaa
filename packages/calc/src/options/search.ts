import type { Band } from '../evaluate/band.ts';
import type { DesignDocument } from '../document/document.ts';
import type { Choice, CostIndex } from './choices.ts';
import { bestOf, type Frame, Frames, joined, type Rating } from './frame.ts';
import { Measure } from './measure.ts';
import { backupOf, dominates, isNoWorse, nextStep, weighed, type Best, type Candidate, type Rejected } from './point.ts';
import { OptionSpace, type Digits } from './space.ts';
import { Queue } from './queue.ts';

export interface OptionsRun {
  /** Combinations settled so far, of how many. */
  readonly onProgress?: (done: number, total: number) => void;
  /** Asked between combinations; the search then ends with what it has. */
  readonly shouldStop?: () => boolean;
  /** This share of the frames only: number `index` of `of`. */
  readonly slice?: { readonly index: number; readonly of: number };
}

/** What one slice found. Plain data: it travels between workers. */
export interface OptionsSlice {
  readonly candidates: readonly Candidate[];
  readonly rejected: readonly Rejected[];
  readonly complete: boolean;
  readonly count: number;
  /** Combinations measured in full, and sets that a bound was run for. */
  readonly measured: number;
  readonly bounded: number;
}

/** A set of combinations of one frame: some ratings, and for each diversion its digit or -1 for both. */
interface Box {
  readonly frame: Frame;
  readonly ratings: readonly Rating[];
  readonly diversions: Digits;
  readonly size: number;
  readonly best: Best;
  /** Nothing on the sizes of inlets, pipes and roof stops it; asked once the roofs are settled. */
  judged: boolean;
}


/**
 * Finds the combinations that no other makes pointless: by cost, lower end of the freeboard in the designed storm, storms kept out, and backup.
 * Sets of combinations are settled at once, cheapest first, when something no dearer than their cheapest member is worth no less than
 * a bound on all of them. Nothing is passed over on a guess, so the answer is that of measuring every combination:
 * - Within a frame, combinations differ in the rating of their pumps and in the roof water on the low spots only. A pump set whose flow is
 *   nowhere smaller at any head, with no more water anywhere, never stands higher: the runs keep order (see Network and Measure).
 *   So one run of draws with the best rating at every head and all open roofs diverted bounds the whole set.
 * - Frames are not compared by order at all, only by what was measured.
 * - The bound on the lower end of the band is the 21st lowest of some of its draws (see Measure.upperBound).
 */
class Search {
  readonly candidates: Candidate[] = [];
  readonly rejected: Rejected[] = [];
  measured = 0;
  bounded = 0;
  private readonly space: OptionSpace;
  private readonly measure: Measure;
  private readonly knownStops: ReadonlySet<string>;
  private readonly touched: ReadonlySet<string>;

  constructor(space: OptionSpace, measure: Measure) {
    this.space = space;
    this.measure = measure;
    this.touched = space.touched();
    this.knownStops = measure.stopsOf(space.document);
  }

  boxOf(frame: Frame): Box {
    return this.box(frame, frame.ratings, this.space.roles.map((role) => (role === 'diversion' ? -1 : 0)), null);
  }

  private box(frame: Frame, ratings: readonly Rating[], diversions: Digits, parent: Box | null): Box {
    const { space } = this;
    let cost = frame.cost + ratings.reduce((low, rating) => Math.min(low, rating.cost), Infinity) + space.base;
    let size = ratings.length;
    diversions.forEach((digit, choice) => {
      if (space.roles[choice] !== 'diversion') return;
      cost += digit >= 0 ? space.costAt(choice, digit) : Math.min(space.costAt(choice, 0), space.costAt(choice, 1));
      if (digit < 0) size *= 2;
    });
    const index = ratings.reduce((low, rating) => Math.min(low, space.indexOf(this.digits(frame, rating, diversions, 0))), Infinity);
    const best: Best = { index, cost, backup: backupOf(space, frame.digits) };
    return { frame, ratings, diversions, size, best, judged: parent?.judged ?? false };
  }

  /** Settles a box, or gives the smaller ones that it falls into. */
  settle(box: Box): Box[] {
    if (!box.judged && box.diversions.every((digit) => digit >= 0)) {
      box.judged = true;
      if (this.isStopped(box, true)) return [];
    }
    if (box.size === 1 && this.isStopped(box, false)) return [];
    if (this.isBounded(box)) return [];
    if (box.size > 1) return this.split(box);
    this.measureOne(box);
    return [];
  }

  /** Whether a check on the sizes stops its first member, and with it the whole box when no pump or line has a part in the check. */
  private isStopped(box: Box, beforePump: boolean): boolean {
    const digits = this.digits(box.frame, box.ratings[0]!, box.diversions, 0);
    const check = this.measure.stop(this.space.documentOf(digits), beforePump, this.knownStops, this.touched);
    if (check === null) return false;
    this.rejected.push({ index: this.space.indexOf(digits), cost: this.space.cost(digits), check });
    return true;
  }

  /** Runs the bounds that would settle the box beside the highest of the candidates that are no dearer. */
  private isBounded(box: Box): boolean {
    let rival: Candidate | null = null;
    for (const candidate of this.candidates) {
      if (candidate.lower > (rival?.lower ?? -Infinity) && isNoWorse(candidate, box.best)) rival = candidate;
    }
    if (rival === null) return false;
    const band = this.bestBand(box);
    this.bounded += 1;
    // A member that weighs as much must not stand earlier: a rival that is dearer by nothing has to be lower in the order.
    const strictly = rival.cost < box.best.cost || rival.index < box.best.index;
    const limit = strictly ? nextStep(rival.lower) : nextStep(rival.lower) - weighed;
    return this.measure.isBelowInDesignStorm(band, limit) && this.measure.holdsNoMore(band, rival.held);
  }

  private bestBand({ frame, ratings, diversions }: Box): Band {
    const strongest = ratings[ratings.length - 1]!;
    const document = this.space.documentOf(this.digits(frame, strongest, diversions, 1));
    return this.measure.band(this.measure.context(document), bestOf(ratings));
  }

  private digits(frame: Frame, rating: Rating, diversions: Digits, open: number): number[] {
    const digits = joined(this.space, frame.digits, rating.digits, 'rating');
    return joined(this.space, digits, diversions.map((digit) => (digit < 0 ? open : digit)), 'diversion');
  }

  /** Roofs first, since they weigh most; then the weaker and the stronger half of the ratings. */
  private split(box: Box): Box[] {
    const { frame, ratings, diversions } = box;
    const open = diversions.findIndex((digit) => digit < 0);
    if (open >= 0) return [0, 1].map((digit) => this.box(frame, ratings, diversions.map((old, choice) => (choice === open ? digit : old)), box));
    const middle = Math.floor(ratings.length / 2);
    return [ratings.slice(0, middle), ratings.slice(middle)].map((half) => this.box(frame, half, diversions, box));
  }

  private measureOne(box: Box): void {
    const { space, measure } = this;
    const digits = this.digits(box.frame, box.ratings[0]!, box.diversions, 0);
    const band = measure.band(measure.context(space.documentOf(digits)));
    const known = { index: space.indexOf(digits), cost: space.cost(digits), backup: box.best.backup };
    // Storms kept out are counted only where they can matter.
    const atMost: Candidate = { ...known, lower: measure.lower(band), held: measure.periods.length };
    if (this.candidates.some((candidate) => dominates(candidate, atMost))) return;
    const candidate: Candidate = { ...known, ...measure.worth(band) };
    this.measured += 1;
    this.candidates.push(candidate);
  }
}

/** Searches one share of all combinations. */
export function optionsSlice(document: DesignDocument, choices: readonly Choice[], cost: CostIndex, run: OptionsRun = {}): OptionsSlice {
  const space = new OptionSpace(document, choices, cost);
  const measure = new Measure(document);
  const search = new Search(space, measure);
  const queue = new Queue<Box>((a, b) => a.best.cost - b.best.cost || a.best.index - b.best.index);
  const { index, of } = run.slice ?? { index: 0, of: 1 };
  for (const frame of new Frames(space, measure).slice(index, of)) queue.push(search.boxOf(frame));
  const total = queue.items.reduce((sum, { size }) => sum + size, 0);
  let done = 0;
  let complete = true;
  for (let box = queue.pop(); box !== undefined; box = queue.pop()) {
    if (run.shouldStop?.() === true) {
      complete = false;
      break;
    }
    const smaller = search.settle(box);
    for (const item of smaller) queue.push(item);
    if (smaller.length === 0) done += box.size;
    run.onProgress?.(done, total);
  }
  return { candidates: search.candidates, rejected: search.rejected, complete, count: total, measured: search.measured, bounded: search.bounded };
}
