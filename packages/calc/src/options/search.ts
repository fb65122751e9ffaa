import type { DesignDocument } from '../document/document.ts';
import type { Choice, CostIndex } from './choices.ts';
import { joined, leastCost, productOf } from './frame.ts';
import { Measure, type Freeboards, type Measured } from './measure.ts';
import { bestFriction, isNowhereStronger } from './models.ts';
import { Orders } from './orders.ts';
import { backupOf, dominates, isNoWorse, nextStep, weighed, type Best, type Candidate } from './point.ts';
import { Queue } from './queue.ts';
import { Reads } from './reads.ts';
import { OptionSpace, type Digits } from './space.ts';
import { Stops } from './stops.ts';

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
  readonly complete: boolean;
  readonly count: number;
  /** Combinations that nothing stops, combinations measured in full, and sets that a bound was run for. */
  readonly allowed: number;
  readonly measured: number;
  readonly bounded: number;
}

/** A combination that may be built. */
interface Member {
  readonly digits: Digits;
  readonly index: number;
  readonly cost: number;
  /** Flow of the pumps at their on levels [m3/s]; it only puts them in order. */
  readonly flow: number;
}

/** Combinations of one frame that differ in pumps, lines and roof water only; a frame that was not looked into has no members yet. */
interface Box {
  readonly frame: Digits;
  /** From the weakest pumps to the strongest. */
  readonly members: readonly Member[] | null;
  readonly size: number;
  readonly best: Best;
  /** Runs of the best of its members, as far as they were made. */
  run: Measured | null;
}

/** A candidate with what it was measured on. */
interface Done extends Candidate {
  readonly digits: Digits;
  readonly known: Freeboards;
}

/**
 * Finds the combinations that no other makes pointless: by cost, lower end of the freeboard in the designed storm, storms kept out, and backup.
 * What a check on sizes stops is left out first. Then sets of combinations are settled at once, cheapest first, when something no dearer than
 * their cheapest member is worth no less than a bound on all of them. Nothing is passed over on a guess, so the answer is that of measuring every combination:
 * - Within a frame, combinations differ in the rating of their pumps and in the roof water on the low spots only. A pump set whose flow is
 *   nowhere smaller at any level, with no more water anywhere, never stands higher: the runs keep order (see Network and Measure).
 *   So some draws of the best rating at every level with all open roofs diverted bound the whole set. Where a frame does not keep order
 *   (see Orders) its sets are those in which it does.
 * - Frames are not compared by order at all, only by what was measured.
 */
class Search {
  readonly candidates: Done[] = [];
  allowed = 0;
  measured = 0;
  bounded = 0;
  private readonly space: OptionSpace;
  private readonly measure: Measure;
  private readonly stops: Stops;
  private readonly orders: Orders;
  private readonly open: readonly boolean[];

  constructor(space: OptionSpace) {
    const reads = new Reads();
    this.space = space;
    this.measure = new Measure(space, reads);
    this.stops = new Stops(space, reads, this.measure.models);
    this.orders = new Orders(space, reads);
    this.open = space.roles.map((role) => role === 'rating' || role === 'diversion');
  }

  boxOf(frame: Digits): Box {
    const { space } = this;
    const size = space.choices.reduce((count, { alternatives }, choice) => (this.open[choice] === true ? count * alternatives.length : count), 1);
    return { frame, members: null, size, best: { index: space.indexOf(frame), cost: leastCost(space, frame), backup: backupOf(space, frame) }, run: null };
  }

  /** Settles a box, or gives the smaller ones that it falls into. */
  settle(box: Box): Box[] {
    if (box.members === null) return this.membersOf(box.frame);
    if (this.isBounded(box, box.members)) return [];
    if (box.members.length > 1) return this.split(box, box.members);
    this.measureOne(box, box.members[0]!);
    return [];
  }

  private membersOf(frame: Digits): Box[] {
    const { space } = this;
    const stopped = this.stops.among(frame, this.open);
    if (stopped === null) return [];
    const groups = new Map<string, Member[]>();
    for (const rating of productOf(space, ['rating'], frame)) {
      let flow: number | null = null;
      for (const digits of productOf(space, ['diversion'], rating)) {
        if (stopped(digits)) continue;
        this.allowed += 1;
        flow ??= this.measure.models.flowAtOnLevels(rating);
        const key = this.orders.groupOf(digits);
        const group = groups.get(key) ?? [];
        groups.set(key, group);
        group.push({ digits, index: space.indexOf(digits), cost: space.cost(digits), flow });
      }
    }
    return [...groups.values()].map((members) => this.box(frame, members.sort((a, b) => a.flow - b.flow || b.cost - a.cost)));
  }

  private box(frame: Digits, members: readonly Member[], run: Measured | null = null): Box {
    const least = (of: 'cost' | 'index'): number => members.reduce((low, member) => Math.min(low, member[of]), Infinity);
    return { frame, members, size: members.length, best: { index: least('index'), cost: least('cost'), backup: backupOf(this.space, frame) }, run };
  }

  /** Runs the bounds that would settle the box beside the highest of the candidates that are no dearer. */
  private isBounded(box: Box, members: readonly Member[]): boolean {
    let rival: Candidate | null = null;
    for (const candidate of this.candidates) {
      if (candidate.lower > (rival?.lower ?? -Infinity) && isNoWorse(candidate, box.best)) rival = candidate;
    }
    if (rival === null) return false;
    box.run ??= this.bestOf(members);
    this.bounded += 1;
    // A member that weighs as much must not stand earlier: a rival that is dearer by nothing has to be lower in the order.
    const strictly = rival.cost < box.best.cost || rival.index < box.best.index;
    const limit = strictly ? nextStep(rival.lower) : nextStep(rival.lower) - weighed;
    return this.measure.isBelowInDesignStorm(box.run, limit, members.length === 1) && this.measure.holdsNoMore(box.run, rival.held);
  }

  /** Digits of the ratings of some members, all with the roofs diverted that any of them diverts. */
  private ratingsOf(members: readonly Member[]): Digits[] {
    const { space } = this;
    const strongest = members[members.length - 1]!;
    const diverted = strongest.digits.map((digit, choice) =>
      (space.roles[choice] === 'diversion' ? members.reduce((most, { digits }) => Math.max(most, digits[choice]!), digit) : digit));
    const ratings = new Map(members.map(({ digits }) => {
      const rated = joined(space, digits, diverted, 'diversion');
      return [rated.join(' '), rated];
    }));
    return [...ratings.values()];
  }

  private bestOf(members: readonly Member[]): Measured {
    return this.measure.best(this.ratingsOf(members));
  }

  /** Roofs first, since they weigh most; then the weaker and the stronger half of the ratings. The half with the best of all goes on with its runs. */
  private split({ frame, run }: Box, members: readonly Member[]): Box[] {
    const [first] = members;
    const differs = this.space.roles.findIndex((role, choice) => role === 'diversion' && members.some(({ digits }) => digits[choice] !== first!.digits[choice]));
    if (differs >= 0) return [0, 1].map((digit) => this.box(frame, members.filter(({ digits }) => digits[differs] === digit)));
    const middle = Math.floor(members.length / 2);
    const strong = members.slice(middle);
    const same = run !== null && isNowhereStronger(run.friction, bestFriction(this.ratingsOf(strong).map((digits) => this.measure.models.friction(digits))));
    return [this.box(frame, members.slice(0, middle)), this.box(frame, strong, same ? run : null)];
  }

  private measureOne(box: Box, { digits, index, cost }: Member): void {
    const { measure } = this;
    const weaker = this.candidates.filter((other) => this.isNowhereBetter(other.digits, digits)).sort((a, b) => b.lower - a.lower);
    const run = box.run ?? measure.one(digits);
    const { lower, known } = measure.lower(run, weaker[0]?.known);
    const candidate = { index, cost, backup: box.best.backup, lower };
    // Storms kept out are counted only where they can matter.
    const atMost: Candidate = { ...candidate, held: measure.periods.length };
    if (this.candidates.some((other) => dominates(other, atMost))) return;
    this.measured += 1;
    const least = weaker.reduce((most, { held }) => Math.max(most, held), 0);
    this.candidates.push({ ...candidate, digits, known, held: measure.held(run, lower, least) });
  }

  /** Whether a combination is of the same group as another, diverts no roof that it does not, and pumps no more at any level. */
  private isNowhereBetter(one: Digits, other: Digits): boolean {
    const { measure: { models }, orders, space } = this;
    return space.roles.every((role, choice) => role === 'rating' || (role === 'diversion' ? one[choice]! <= other[choice]! : one[choice] === other[choice]))
      && orders.groupOf(one) === orders.groupOf(other) && isNowhereStronger(models.friction(one), models.friction(other));
  }
}

/** Searches one share of all combinations. */
export function optionsSlice(document: DesignDocument, choices: readonly Choice[], cost: CostIndex, run: OptionsRun = {}): OptionsSlice {
  const space = new OptionSpace(document, choices, cost);
  const search = new Search(space);
  const queue = new Queue<Box>((a, b) => a.best.cost - b.best.cost || a.best.index - b.best.index);
  const { index, of } = run.slice ?? { index: 0, of: 1 };
  let number = 0;
  for (const frame of productOf(space, ['frame', 'backup'])) {
    if (number % of === index) queue.push(search.boxOf(frame));
    number += 1;
  }
  const total = queue.items.reduce((sum, { size }) => sum + size, 0);
  let left = total;
  let complete = true;
  for (let box = queue.pop(); box !== undefined; box = queue.pop()) {
    if (run.shouldStop?.() === true) {
      complete = false;
      break;
    }
    const smaller = search.settle(box);
    left -= box.size;
    for (const item of smaller) {
      queue.push(item);
      left += item.size;
    }
    run.onProgress?.(total - left, total);
  }
  const candidates = search.candidates.map(({ index: place, cost: price, lower, held, backup }) => ({ index: place, cost: price, lower, held, backup }));
  return { candidates, complete, count: total, allowed: search.allowed, measured: search.measured, bounded: search.bounded };
}
