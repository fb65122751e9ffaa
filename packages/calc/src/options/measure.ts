import { Band, asDesigned } from '../evaluate/band.ts';
import { bandRanges, latinHypercube, type Draw } from '../evaluate/bandInputs.ts';
import { EvaluationContext } from '../evaluate/context.ts';
import { findingsOnSizes } from '../evaluate/evaluate.ts';
import { halfBlocked, lowest, passes } from '../evaluate/protectedStorm.ts';
import type { DesignDocument } from '../document/document.ts';
import type { FrictionRange } from '../routing/variation.ts';
import type { StormRunoff } from '../routing/storm.ts';

/** What the search weighs beside the cost. */
export interface Worth {
  /** Least freeboard over all sills in the designed storm, lower end of the band [m]. */
  readonly lower: number;
  /** Places in the rain table of the storms kept out, counted from the smallest: 0 for none. */
  readonly held: number;
}

/** Draws that a bound runs: the lower end leaves out that many less ten. Source: ours. */
const boundDraws = 30;
/** Places of the draws that the lower end lies between: the 20th and the 21st of 200. */
const endPlace = Math.floor(bandRanges.lowShare * (bandRanges.samples - 1)) + 2;

/**
 * Measures combinations on the bands' own runs. They step by whole minutes and take no offsets, so that a design whose pumps are nowhere weaker
 * and that receives nowhere more never measures worse, to the last digit. (Backward Euler on one grid keeps order; see Network.)
 */
export class Measure {
  readonly periods: readonly number[];
  private readonly returnPeriod: number;
  private readonly storms = new Map<number, StormRunoff>();
  private readonly drawn = new Map<number, readonly Draw[]>();
  private readonly severity: readonly number[];

  constructor(document: DesignDocument) {
    this.periods = document.rain.table.returnPeriods;
    this.returnPeriod = document.rain.designReturnPeriod;
    const base = this.band(this.context(document));
    const worst = base.draws.map((_, index) => base.ofDraw(index, this.returnPeriod).reduce((least, value) => Math.min(least, value), Infinity));
    this.severity = worst.map((value, index) => ({ value, index })).sort((a, b) => a.value - b.value || a.index - b.index).map(({ index }) => index);
  }

  context(document: DesignDocument): EvaluationContext {
    return new EvaluationContext(document, this.storms);
  }

  band(context: EvaluationContext, friction?: FrictionRange): Band {
    const draws = (inputs: number): readonly Draw[] => {
      const made = this.drawn.get(inputs) ?? latinHypercube(bandRanges.samples, inputs, context.document.seed);
      this.drawn.set(inputs, made);
      return made;
    };
    return new Band(context, { draws, offset: false, ...(friction === undefined ? {} : { friction }) });
  }

  /** Lower end of a design in one storm with its inlets half blocked. */
  countedLower(band: Band, returnPeriod: number): number {
    return lowest(this.counted(band), returnPeriod, asDesigned);
  }

  /** Stops on the sizes of a design, by code and place. */
  stopsOf(document: DesignDocument): ReadonlySet<string> {
    return new Set(findingsOnSizes(this.context(document)).filter(({ severity }) => severity === 'stop').map(({ code, at }) => `${code} ${at ?? ''}`));
  }

  worth(band: Band): Worth {
    const counted = this.counted(band);
    let held = 0;
    while (held < this.periods.length && passes(counted, this.periods[held]!, asDesigned)) held += 1;
    return { lower: lowest(band, this.returnPeriod, asDesigned), held };
  }

  /**
   * A freeboard that the lower end in a storm is not above. The 21st lowest of some draws is no lower than the 21st lowest of all,
   * and the lower end lies between the 20th and the 21st. The draws that are worst for the base design are tried.
   */
  upperBound(band: Band, returnPeriod: number): number {
    const found = band.context.sills.map((): number[] => []);
    for (let i = 0; i < boundDraws; i += 1) {
      band.ofDraw(this.severity[i]!, returnPeriod).forEach((freeboard, sill) => { found[sill]!.push(freeboard); });
    }
    return found.reduce((least, list) => Math.min(least, list.sort((a, b) => a - b)[endPlace - 1]!), Infinity);
  }

  lowerBoundOf(band: Band): number {
    return this.upperBound(band, this.returnPeriod);
  }

  /** No more storms are held than this: the first that a bound puts under water ends the count. `from` of them are not asked. */
  heldBound(band: Band, from: number): number {
    const counted = this.counted(band);
    return from < this.periods.length && this.upperBound(counted, this.periods[from]!) < 0 ? from : this.periods.length;
  }

  /** Stops on sizes that come with the combination: those of the base design at parts that no choice touches are left out. */
  stops(context: EvaluationContext, known: ReadonlySet<string>, touched: ReadonlySet<string>): string[] {
    return findingsOnSizes(context)
      .filter(({ severity, code, at }) => severity === 'stop' && !(known.has(`${code} ${at ?? ''}`) && !touched.has(at ?? '')))
      .map(({ check }) => check);
  }

  private counted(band: Band): Band {
    const counted = halfBlocked(band.context);
    return counted === band.context ? band : this.band(counted, band.friction);
  }
}
