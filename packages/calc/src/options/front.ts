import type { DesignDocument } from '../document/document.ts';
import { limitsInForce, type Limits } from '../findings/overrides.ts';
import type { Choice, CostIndex } from './choices.ts';
import { Measure } from './measure.ts';
import { frontOf, type Candidate } from './point.ts';
import { Reads } from './reads.ts';
import { optionsSlice, type OptionsRun, type OptionsSlice } from './search.ts';
import { OptionSpace, type Digits } from './space.ts';
import { Stops } from './stops.ts';

/**
 * Why the next cheaper combination of the front is not enough; for its cheapest point, why the dearest of those below it may not be built.
 * floods: it lets a storm in that this one keeps out. short: its freeboard misses the limit. less: it keeps out the same and spares less.
 * backup: it has the lesser backup. stops: a check on its sizes forbids it.
 */
export interface WhyNotCheaper {
  readonly code: 'floods' | 'short' | 'less' | 'backup' | 'stops';
  readonly check: string | null;
  readonly returnPeriod: number | null;
  /** Height that is missing [m]. */
  readonly shortBy: number | null;
  readonly cheaper: Picks;
}

/** Alternative of each choice, by their ids. */
export type Picks = Readonly<Record<string, string>>;

export interface OptionPoint {
  readonly picks: Picks;
  readonly cost: number;
  /** Least freeboard in the designed storm, lower end of the band [m]. */
  readonly lower: number;
  /** Largest storm of the table that is kept out, every smaller one with it [years]; null for none. */
  readonly protectedStorm: number | null;
  readonly wholeTable: boolean;
  /** Whether the freeboard passes check L5 without a stop. */
  readonly passes: boolean;
  readonly whyNotCheaper: WhyNotCheaper | null;
}

export interface OptionsFront {
  readonly points: readonly OptionPoint[];
  readonly combinations: number;
  readonly complete: boolean;
}

class Explainer {
  private readonly space: OptionSpace;
  private readonly measure: Measure;
  private readonly stops: Stops;
  private readonly limit: Limits['L5'];

  constructor(space: OptionSpace) {
    const reads = new Reads();
    this.space = space;
    this.measure = new Measure(space, reads);
    this.stops = new Stops(space, reads, this.measure.models);
    this.limit = limitsInForce(space.document.limits).L5;
  }

  point(one: Candidate, why: WhyNotCheaper | null): OptionPoint {
    const { periods } = this.measure;
    return {
      picks: this.picks(this.space.digitsOf(one.index)), cost: one.cost, lower: one.lower, protectedStorm: periods[one.held - 1] ?? null,
      wholeTable: one.held === periods.length, passes: one.lower >= this.limit.fail, whyNotCheaper: why,
    };
  }

  /** Why the dearest combination below the cheapest of the front is not on it: everything below that is stopped. */
  stopped(one: Candidate): WhyNotCheaper | null {
    const digits = this.space.dearestBelow(one.cost);
    const check = digits === null ? null : this.stops.of(digits);
    return digits === null || check === null ? null : { cheaper: this.picks(digits), code: 'stops', check, returnPeriod: null, shortBy: null };
  }

  why(one: Candidate, cheaper: Candidate): WhyNotCheaper {
    const { rain } = this.space.document;
    const base = { cheaper: this.picks(this.space.digitsOf(cheaper.index)), check: null, returnPeriod: null, shortBy: null } as const;
    if (cheaper.held < one.held) {
      const returnPeriod = this.measure.periods[cheaper.held]!;
      const check = returnPeriod === rain.checkReturnPeriod && returnPeriod !== rain.designReturnPeriod ? 'L6' : 'L5';
      const measured = this.measure.one(this.space.digitsOf(cheaper.index));
      return { ...base, code: 'floods', check, returnPeriod, shortBy: -this.measure.countedLower(measured, returnPeriod) };
    }
    const designed = { ...base, check: 'L5', returnPeriod: rain.designReturnPeriod } as const;
    for (const limit of [this.limit.fail, this.limit.pass]) {
      if (cheaper.lower < limit && one.lower >= limit) return { ...designed, code: 'short', shortBy: limit - cheaper.lower };
    }
    if (cheaper.lower < one.lower) return { ...designed, code: 'less', shortBy: one.lower - cheaper.lower };
    return { ...base, code: 'backup' };
  }

  private picks(digits: Digits): Picks {
    return Object.fromEntries(this.space.choices.map(({ id, alternatives }, choice) => [id, alternatives[digits[choice]!]!.id]));
  }
}

/** One front from the slices of a search. The front of all is the front of the slices' fronts, since what a slice left out is dominated in it. */
export function mergeOptions(document: DesignDocument, choices: readonly Choice[], cost: CostIndex, slices: readonly OptionsSlice[]): OptionsFront {
  const space = new OptionSpace(document, choices, cost);
  const explainer = new Explainer(space);
  const front = frontOf(slices.flatMap(({ candidates }) => candidates));
  const points = front.map((one, place) => {
    const cheaper = front.slice(0, place).reverse();
    const next = cheaper.find(({ backup }) => backup.every((digit, i) => digit === one.backup[i])) ?? cheaper[0];
    return explainer.point(one, next === undefined ? explainer.stopped(one) : explainer.why(one, next));
  });
  return { points, combinations: space.count, complete: slices.every(({ complete }) => complete) };
}

/**
 * The price-against-protection front of a design: every combination of allowed parts and sizes that is not pointless beside another,
 * cheapest first, with the reason why the next cheaper one is not enough.
 *
 * @param cost index of every alternative; nothing here knows money
 * @param run  progress, stop, and the share of the work that is wanted; see optionsSlice and mergeOptions for more workers
 * Limits: freeboards are the lower ends of the band by runs of whole minutes, which may differ from the evaluation's by some tenths of a millimetre
 * Source: exact branch and bound; Land and Doig 1960 for the principle, bounds ours
 */
export function optionsFront(document: DesignDocument, choices: readonly Choice[], cost: CostIndex, run: OptionsRun = {}): OptionsFront {
  return mergeOptions(document, choices, cost, [optionsSlice(document, choices, cost, run)]);
}
