import { asDesigned, Band, quantile } from '../evaluate/band.ts';
import { bandRanges, latinHypercube, type Draw } from '../evaluate/bandInputs.ts';
import { rainLimits } from '../evaluate/bandModel.ts';
import { EvaluationContext } from '../evaluate/context.ts';
import { halfBlockedDocument, lowest, passes } from '../evaluate/protectedStorm.ts';
import type { RoutingModel } from '../routing/model.ts';
import { stormRunoff, type StormRunoff } from '../routing/storm.ts';
import type { FrictionRange } from '../routing/variation.ts';
import { bestFriction, bestModel, SharedModels } from './models.ts';
import { Reads } from './reads.ts';
import type { Digits, OptionSpace } from './space.ts';

/** What the search weighs beside the cost. */
export interface Worth {
  /** Least freeboard over all sills in the designed storm, lower end of the band [m]. */
  readonly lower: number;
  /** Places in the rain table of the storms kept out, counted from the smallest: 0 for none. */
  readonly held: number;
}

/** Freeboards of each draw at each sill; where a draw was not run, no more than they are. */
export type Freeboards = readonly (readonly number[])[];

/** Runs of one design, or of the best of several: as drawn, and with its inlets half blocked. */
export interface Measured {
  readonly friction: FrictionRange;
  readonly drawn: Band;
  readonly counted: Band;
}

/** Most draws that a bound runs, on several designs and on one that would be run whole next. Source: ours. */
const boundDraws = 28;
const boundDrawsOfOne = 60;
/** Places of the draws that the lower end lies between: the 20th and the 21st of 200. */
const endPlace = Math.floor(bandRanges.lowShare * (bandRanges.samples - 1)) + 2;
/** Levels are solved this closely; a bound has to be below by more [m]. Source: a balance is met to 1e-10 m3, see Network. */
const solved = 1e-7;

/**
 * Measures combinations on the bands' own runs. They step by whole minutes and take no offsets, so that a design whose pumps are nowhere weaker
 * and that receives nowhere more never measures worse. (Backward Euler on one grid keeps order; see Network. Such a design also rests for longer
 * before and after the storm; see restlessWindow.)
 */
export class Measure {
  readonly periods: readonly number[];
  readonly models: SharedModels;
  private readonly space: OptionSpace;
  private readonly blockedModels: SharedModels;
  private readonly returnPeriod: number;
  private readonly storms = new Map<number, StormRunoff>();
  private readonly drawn = new Map<number, readonly Draw[]>();
  /** Draws from the worst on, by the last combination that was measured. */
  private order: readonly number[] | null = null;
  private rises: boolean | null = null;

  constructor(space: OptionSpace, reads: Reads = new Reads()) {
    const { rain } = space.document;
    this.space = space;
    this.models = new SharedModels(space, reads, false);
    this.blockedModels = new SharedModels(space, reads, true);
    this.periods = rain.table.returnPeriods;
    this.returnPeriod = rain.designReturnPeriod;
  }

  /** One combination. */
  one(digits: Digits): Measured {
    return this.best([digits]);
  }

  /** What none of some combinations is better than, when they differ in their ratings alone. */
  best(ratings: readonly Digits[]): Measured {
    const document = this.space.documentOf(ratings[0]!);
    const friction = bestFriction(ratings.map((digits) => this.models.friction(digits)));
    const over = (models: SharedModels): RoutingModel => bestModel(ratings.map((digits) => models.of(digits)));
    const drawn = this.band(new EvaluationContext(document, this.storms, over(this.models)), friction);
    const blocked = halfBlockedDocument(document);
    const counted = blocked === document ? drawn : this.band(new EvaluationContext(blocked, this.storms, over(this.blockedModels)), friction);
    return { friction, drawn, counted };
  }

  /**
   * Lower end of a design in the designed storm, its grates as they are in the document. Draws that stood higher than the lower end on a design
   * that is nowhere better stand higher here too and are not run.
   * @param weaker freeboards of every draw on such a design, as far as they were run
   */
  lower({ drawn }: Measured, weaker: Freeboards | null = null): { readonly lower: number; readonly known: Freeboards } {
    const { sills } = drawn.context;
    const known: (readonly number[])[] = [];
    const lowest = sills.map((): number[] => []);
    const order = weaker === null ? drawn.draws.map((_, index) => index) : sortedBy(weaker);
    for (const index of order) {
      const before = weaker?.[index];
      if (before?.every((value, sill) => value - solved > (lowest[sill]![endPlace - 1] ?? Infinity)) === true) {
        known[index] = before;
        continue;
      }
      const values = drawn.ofDraw(index, this.returnPeriod);
      known[index] = values;
      values.forEach((value, sill) => { insert(lowest[sill]!, value, endPlace); });
    }
    this.order = sortedBy(known);
    return { lower: lowest.reduce((least, values) => Math.min(least, quantile(values, bandRanges.lowShare, drawn.draws.length)), Infinity), known };
  }

  /** Lower end of a design in one storm with its inlets half blocked. */
  countedLower({ counted }: Measured, returnPeriod: number): number {
    return lowest(counted, returnPeriod, asDesigned);
  }

  /**
   * Storms of the table kept out, every smaller one with them.
   * @param lower its lower end in the designed storm
   * @param least that many are kept out for sure
   */
  held({ drawn, counted }: Measured, lower: number, least = 0): number {
    const { periods } = this;
    const designed = drawn === counted ? periods.indexOf(this.returnPeriod) : -1;
    const passesAt = (place: number): boolean => (place === designed ? lower >= 0 : passes(counted, periods[place]!, asDesigned));
    let low = least;
    if (!this.rainRises()) {
      while (low < periods.length && passesAt(low)) low += 1;
      return low;
    }
    // A greater storm is nowhere weaker: the first that comes in is found by halves, the designed one first since it is known.
    let high = periods.length;
    let place = designed >= low ? designed : high - 1;
    while (low < high) {
      if (passesAt(place)) low = place + 1;
      else high = place;
      place = low === designed + 1 ? high - 1 : Math.floor((low + high) / 2);
    }
    return low;
  }

  /** What a combination is worth, nothing known before. */
  worth(measured: Measured): Worth {
    const { lower } = this.lower(measured);
    return { lower, held: this.held(measured, lower) };
  }

  /** Whether the lower end of a design in the designed storm surely lies below a freeboard. */
  isBelowInDesignStorm({ drawn }: Measured, freeboard: number, single: boolean): boolean {
    return this.isBelow(drawn, this.returnPeriod, freeboard, single ? boundDrawsOfOne : boundDraws);
  }

  /** Whether a design surely keeps out no more storms than this many: the next one comes in. */
  holdsNoMore({ counted }: Measured, held: number): boolean {
    return held >= this.periods.length || this.isBelow(counted, this.periods[held]!, 0);
  }

  /**
   * Whether the lower end of a design in a storm surely lies below a freeboard. The 21st lowest of some draws is no lower than the
   * 21st lowest of all, and the lower end lies between the 20th and the 21st. The draws that were worst for the last design measured are tried,
   * until 21 of them lie below, or so many above that it cannot be told this way.
   */
  private isBelow(band: Band, returnPeriod: number, freeboard: number, most = boundDraws): boolean {
    const below = band.context.sills.map(() => 0);
    for (let i = 0; i < most; i += 1) {
      let under = 0;
      band.ofDraw(this.order?.[i] ?? i, returnPeriod).forEach((value, sill) => {
        if (value < freeboard - solved) below[sill] = below[sill]! + 1;
        under = Math.max(under, below[sill]!);
      });
      if (under >= endPlace) return true;
      if (i + 1 - under > most - endPlace) return false;
    }
    return false;
  }

  private band(context: EvaluationContext, friction: FrictionRange): Band {
    const draws = (inputs: number): readonly Draw[] => {
      const made = this.drawn.get(inputs) ?? latinHypercube(bandRanges.samples, inputs, context.document.seed);
      this.drawn.set(inputs, made);
      return made;
    };
    return new Band(context, { draws, offset: false, friction });
  }

  /** Whether every storm of the table brings at every step at least as much as the one before, at its middle and at both ends of its rain. */
  private rainRises(): boolean {
    const { document } = this.space;
    this.rises ??= this.periods.every((period, place) => {
      if (place === 0) return true;
      const [small, great] = [this.periods[place - 1]!, period].map((years) => {
        const storm = this.storms.get(years) ?? stormRunoff(document, years);
        this.storms.set(years, storm);
        return { storm, limits: rainLimits(document, storm), most: rainLimits(document, storm).upper.reduce((a, b) => (b > a ? b : a), 0) };
      }) as [Storm, Storm];
      return small.storm.steps === great.storm.steps && small.most <= great.most && small.storm.runoff.every((runoff, surface) =>
        runoff.every((flow, i) => ends.every((factor) => flow * factor(small, i) <= great.storm.runoff[surface]![i]! * factor(great, i))));
    });
    return this.rises;
  }
}

/** Draws from the worst on. */
function sortedBy(known: Freeboards): number[] {
  const worst = known.map((values) => values.reduce((least, value) => Math.min(least, value), Infinity));
  return worst.map((_, index) => index).sort((a, b) => worst[a]! - worst[b]! || a - b);
}

/** Puts a value in its place among the lowest. */
function insert(lowest: number[], value: number, most: number): void {
  if (lowest.length === most && value >= lowest[most - 1]!) return;
  let place = lowest.length;
  while (place > 0 && lowest[place - 1]! > value) place -= 1;
  lowest.splice(place, 0, value);
  if (lowest.length > most) lowest.pop();
}

interface Storm {
  readonly storm: StormRunoff;
  readonly limits: ReturnType<typeof rainLimits>;
  readonly most: number;
}

const ends: readonly ((storm: Storm, step: number) => number)[] = [() => 1, ({ limits }, i) => limits.lower[i]!, ({ limits }, i) => limits.upper[i]!];
