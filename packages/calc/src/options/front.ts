import type { DesignDocument } from '../document/document.ts';
import { limits } from '../findings/limits.ts';
import type { Choice, CostIndex } from './choices.ts';
import { Measure } from './measure.ts';
import { frontOf, type Candidate, type Rejected } from './point.ts';
import { optionsSlice, type OptionsRun, type OptionsSlice } from './search.ts';
import { OptionSpace } from './space.ts';

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

  constructor(space: OptionSpace, measure: Measure) {
    this.space = space;
    this.measure = measure;
  }

  picks(index: number): Picks {
    const digits = this.space.digitsOf(index);
    return Object.fromEntries(this.space.choices.map(({ id, alternatives }, choice) => [id, alternatives[digits[choice]!]!.id]));
  }

  point(one: Candidate, cheaper: Candidate | Rejected | undefined): OptionPoint {
    const { periods } = this.measure;
    return {
      picks: this.picks(one.index), cost: one.cost, lower: one.lower, protectedStorm: periods[one.held - 1] ?? null, wholeTable: one.held === periods.length,
      passes: one.lower >= limits.L5.fail, whyNotCheaper: cheaper === undefined ? null : this.why(one, cheaper),
    };
  }

  private why(one: Candidate, cheaper: Candidate | Rejected): WhyNotCheaper {
    const { rain } = this.space.document;
    const base = { cheaper: this.picks(cheaper.index), check: null, returnPeriod: null, shortBy: null } as const;
    if ('check' in cheaper) return { ...base, code: 'stops', check: cheaper.check };
    if (cheaper.held < one.held) {
      const returnPeriod = this.measure.periods[cheaper.held]!;
      const check = returnPeriod === rain.checkReturnPeriod && returnPeriod !== rain.designReturnPeriod ? 'L6' : 'L5';
      return { ...base, code: 'floods', check, returnPeriod, shortBy: -this.lowerAt(cheaper, returnPeriod) };
    }
    const designed = { ...base, check: 'L5', returnPeriod: rain.designReturnPeriod } as const;
    for (const limit of [limits.L5.fail, limits.L5.pass]) {
      if (cheaper.lower < limit && one.lower >= limit) return { ...designed, code: 'short', shortBy: limit - cheaper.lower };
    }
    if (cheaper.lower < one.lower) return { ...designed, code: 'less', shortBy: one.lower - cheaper.lower };
    return { ...base, code: 'backup' };
  }

  private lowerAt({ index }: Candidate, returnPeriod: number): number {
    const context = this.measure.context(this.space.documentOf(this.space.digitsOf(index)));
    return this.measure.countedLower(this.measure.band(context), returnPeriod);
  }
}

/** One front from the slices of a search. The front of all is the front of the slices' fronts, since what a slice left out is dominated in it. */
export function mergeOptions(document: DesignDocument, choices: readonly Choice[], cost: CostIndex, slices: readonly OptionsSlice[]): OptionsFront {
  const space = new OptionSpace(document, choices, cost);
  const explainer = new Explainer(space, new Measure(document));
  const front = frontOf(slices.flatMap(({ candidates }) => candidates));
  const rejected = slices.flatMap((slice) => slice.rejected).sort((a, b) => b.cost - a.cost || a.index - b.index);
  // Below the cheapest of the front only what may not be built is left.
  const points = front.map((one, place) => {
    const cheaper = front.slice(0, place).reverse();
    const sameBackup = cheaper.find(({ backup }) => backup.every((digit, i) => digit === one.backup[i]));
    return explainer.point(one, sameBackup ?? cheaper[0] ?? rejected.find(({ cost: lower }) => lower < one.cost));
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
