import type { DesignDocument } from '../document/document.ts';
import type { FittedLoss } from './fitExistingLoss.ts';
import { LongRun, runToEnd, type CaseRun, type RecordCase, type WayRun } from './longRun.ts';
import { recordNotes, type RecordNote } from './notes.ts';
import { COUNT_CONFIDENCE, poissonLimits } from './poissonLimits.ts';
import type { Gauge, RainRecord } from './rainRecord.ts';
import { recordQuality, type RecordQuality } from './quality.ts';
import type { RainWay } from './disaggregate.ts';

export interface LongRecordOptions {
  /** Loss fitted to the customer's reports; without it the count without a system is an estimate. */
  readonly fitted?: FittedLoss | null;
  readonly progress?: (share: number) => void;
  /** Asked before every year; true ends the run with record.stopped. */
  readonly shouldStop?: () => boolean;
}

/** How often water reached a sill in the record: the lowest and highest count of the quoted ways. */
export interface SillCount {
  readonly low: number;
  readonly high: number;
  /** Limits of the expected number in the same time at 95 %: those of `low` below and of `high` above. */
  readonly lowerLimit: number;
  readonly upperLimit: number;
}

export interface SillAnswer {
  readonly sill: string;
  readonly withSystem: SillCount | null;
  readonly withoutSystem: (SillCount & {
    /** True while the loss has not been fitted to reported events. */
    readonly estimate: boolean;
  }) | null;
}

/** Highest level of a complete year [m]. */
export interface AnnualMaximum {
  readonly year: number;
  readonly level: number;
}

export interface WayAnswer {
  readonly way: RainWay;
  readonly recordCase: RecordCase;
  readonly sills: readonly { readonly sill: string; readonly count: number; readonly minutesOver: number; readonly perYear: readonly number[] }[];
  readonly maxima: readonly { readonly lowSpot: string; readonly years: readonly AnnualMaximum[] }[];
}

export interface LongRecordResult {
  /** Always shown with any number below. */
  readonly gauge: Gauge;
  readonly quality: RecordQuality;
  readonly confidence: number;
  readonly sills: readonly SillAnswer[];
  readonly ways: readonly WayAnswer[];
  readonly notes: readonly RecordNote[];
  /** Worst relative difference of water in and out, of any run and of the surfaces [-]. */
  readonly massError: number;
  /** One-minute steps solved and taken in closed form, all runs together. */
  readonly steps: { readonly solved: number; readonly closed: number };
}

/** Ways that are quoted: uniform rain is only a lower bound. */
const isQuoted = (way: RainWay): boolean => way !== 'uniform';

function answerOf(document: DesignDocument, quality: RecordQuality, way: RainWay, run: CaseRun): WayAnswer {
  const { sills, lowSpots } = document.site;
  return {
    way, recordCase: run.recordCase,
    sills: sills.map((sill) => {
      const pond = lowSpots.findIndex(({ id }) => id === sill.lowSpot);
      const place = sills.filter(({ lowSpot }) => lowSpot === sill.lowSpot).indexOf(sill);
      const perYear = run.years.map((parts) => parts[pond]!.events[place]!);
      return {
        sill: sill.id, perYear, count: perYear.reduce((sum, count) => sum + count, 0),
        minutesOver: run.years.reduce((sum, parts) => sum + parts[pond]!.minutesOver[place]!, 0),
      };
    }),
    maxima: lowSpots.map(({ id }, pond) => ({
      lowSpot: id, years: quality.years.flatMap(({ year, complete }, i) => (complete ? [{ year, level: run.years[i]![pond]!.maxLevel }] : [])),
    })),
  };
}

function countOf(answers: readonly WayAnswer[], recordCase: RecordCase, sill: string): SillCount | null {
  const counts = answers
    .filter((answer) => answer.recordCase === recordCase && isQuoted(answer.way))
    .map((answer) => answer.sills.find((item) => item.sill === sill)!.count);
  if (counts.length === 0) return null;
  const low = counts.reduce((least, count) => Math.min(least, count), Infinity);
  const high = counts.reduce((most, count) => Math.max(most, count), 0);
  return { low, high, lowerLimit: poissonLimits(low).lower, upperLimit: poissonLimits(high).upper };
}

/** Reported events are known to half of their number either way; the limits of the count are never closer than that. */
function withoutSystem(count: SillCount | null, fitted: FittedLoss | null, sill: string, years: number): SillAnswer['withoutSystem'] {
  if (count === null) return null;
  if (fitted === null || fitted.sill !== sill) return { ...count, estimate: true };
  const reported = fitted.reportedPerYear * years;
  return {
    ...count, lowerLimit: Math.min(count.lowerLimit, (1 - fitted.share) * reported), upperLimit: Math.max(count.upperLimit, (1 + fitted.share) * reported),
    estimate: false,
  };
}

export function assemble(document: DesignDocument, record: RainRecord, runs: readonly WayRun[], fitted: FittedLoss | null): LongRecordResult {
  const quality = recordQuality(record);
  const ways = runs.flatMap(({ way, cases }) => cases.map((run) => answerOf(document, quality, way, run)));
  const hasSystem = document.system.parts.length > 0;
  const sills = document.site.sills.map(({ id }): SillAnswer => ({
    sill: id, withSystem: hasSystem ? countOf(ways, 'system', id) : null, withoutSystem: withoutSystem(countOf(ways, 'bare', id), fitted, id, quality.observedYears),
  }));
  const all = runs.flatMap(({ cases }) => cases);
  return {
    gauge: record.gauge, quality, confidence: COUNT_CONFIDENCE, sills, ways, notes: recordNotes(document, record, quality, sills, fitted),
    massError: runs.reduce((worst, run) => run.cases.reduce((most, { massError }) => Math.max(most, massError), Math.max(worst, run.surfaceError)), 0),
    steps: { solved: all.reduce((sum, { books }) => sum + books.solved, 0), closed: all.reduce((sum, { books }) => sum + books.closed, 0) },
  };
}

/**
 * Runs years of recorded rain through a site, with its system and without, and counts how often water reached each sill.
 * Hourly rain is shared out in the two quoted ways, which give the range; the pump is the twin that runs only above its on level.
 *
 * @param record from parseHourly or parseSeries
 * @returns counts with their exact limits, highest levels of complete years, gauge, gaps, notes for the words, mass error
 * Limits: says nothing beyond the record's own years; the recorded gauge is not this yard
 * Source: continuous simulation with the methods of the storm routing; Garwood 1936 for the limits; recovery and event separation ours
 */
export function longRecord(document: DesignDocument, record: RainRecord, options: LongRecordOptions = {}): LongRecordResult {
  const fitted = options.fitted ?? null;
  const run = new LongRun(document, record, { losses: fitted?.losses ?? [], cases: document.system.parts.length > 0 ? ['system', 'bare'] : ['bare'] });
  return assemble(document, record, runToEnd(run, options.progress, options.shouldStop), fitted);
}
