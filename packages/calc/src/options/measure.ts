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

/** Checks on inlets, channels, pipes and roof. */
const beforePumpChecks = /^[CDGI]/;
const pumpKinds = new Set(['pump', 'checkValve', 'weepHole', 'dischargeLine']);
/** Most draws that a bound runs. Source: ours. */
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
  private readonly stopped = new Map<string, string | null>();

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

  /** Lower end of a design in the designed storm, its grates as they are in the document. */
  lower(band: Band): number {
    return lowest(band, this.returnPeriod, asDesigned);
  }

  worth(band: Band): Worth {
    const counted = this.counted(band);
    let held = 0;
    while (held < this.periods.length && passes(counted, this.periods[held]!, asDesigned)) held += 1;
    return { lower: this.lower(band), held };
  }

  /**
   * Whether the lower end of a design in a storm surely lies below a freeboard. The 21st lowest of some draws is no lower than the
   * 21st lowest of all, and the lower end lies between the 20th and the 21st. The draws that are worst for the base design are tried,
   * until 21 of them lie below, or so many above that it cannot be told this way.
   */
  isBelow(band: Band, returnPeriod: number, freeboard: number): boolean {
    const below = band.context.sills.map(() => 0);
    let above = 0;
    for (let i = 0; i < boundDraws; i += 1) {
      let most = 0;
      band.ofDraw(this.severity[i]!, returnPeriod).forEach((value, sill) => {
        if (value < freeboard) below[sill] = below[sill]! + 1;
        most = Math.max(most, below[sill]!);
      });
      if (most >= endPlace) return true;
      above = i + 1 - most;
      if (above > boundDraws - endPlace) return false;
    }
    return false;
  }

  isBelowInDesignStorm(band: Band, freeboard: number): boolean {
    return this.isBelow(band, this.returnPeriod, freeboard);
  }

  /** Whether a design surely keeps out no more storms than this many: the next one comes in. */
  holdsNoMore(band: Band, held: number): boolean {
    return held >= this.periods.length || this.isBelow(this.counted(band), this.periods[held]!, 0);
  }

  /**
   * First stop on sizes that comes with a combination; stops of the base design at parts that no choice touches are left out.
   * Checks of inlets, channels, pipes and roof are told from everything but pumps and lines; the others from everything but the catchments.
   */
  stop(document: DesignDocument, beforePump: boolean, known: ReadonlySet<string>, touched: ReadonlySet<string>): string | null {
    const { site, system } = document;
    const key = JSON.stringify(beforePump ? [system.parts.filter(({ kind }) => !pumpKinds.has(kind)), site.catchments.map(({ drainsTo }) => drainsTo)] : system.parts);
    const before = this.stopped.get(key);
    if (before !== undefined) return before;
    const found = findingsOnSizes(this.context(document)).find(({ severity, code, at, check }) => severity === 'stop'
      && beforePumpChecks.test(check) === beforePump && !(known.has(`${code} ${at ?? ''}`) && !touched.has(at ?? '')));
    const answer = found?.check ?? null;
    this.stopped.set(key, answer);
    return answer;
  }

  private counted(band: Band): Band {
    const counted = halfBlocked(band.context);
    return counted === band.context ? band : this.band(counted, band.friction);
  }
}
