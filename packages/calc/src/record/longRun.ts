import { CalcProblem } from '../common/problem.ts';
import { checkDocument } from '../document/check.ts';
import type { DesignDocument } from '../document/document.ts';
import { buildBareModel, buildModel } from '../routing/buildModel.ts';
import { waysOf, type RainWay } from './disaggregate.ts';
import { yearStarts } from './quality.ts';
import { RecordInflow } from './recordInflow.ts';
import { readingsPerDay, type RainRecord } from './rainRecord.ts';
import type { Route, RouteBooks } from './route.ts';
import { recordRoute } from './routesOf.ts';
import { Watch, type WatchedPart } from './watch.ts';
import { WayRain } from './wayRain.ts';

/** The site with its system, or as it is. */
export type RecordCase = 'system' | 'bare';

/** A loss that stands in for the document's own in the runs of one way [m3/s]; see fitExistingLoss. */
export interface LossOverride {
  readonly lowSpot: string;
  readonly way: RainWay;
  readonly loss: number;
}

export interface LongRunOptions {
  readonly ways?: readonly RainWay[];
  readonly cases?: readonly RecordCase[];
  readonly losses?: readonly LossOverride[];
}

/** One case of one way, year by year and low spot by low spot. */
export interface CaseRun {
  readonly recordCase: RecordCase;
  /** In the order of the years, then of the low spots. */
  readonly years: readonly (readonly WatchedPart[])[];
  readonly books: RouteBooks;
  readonly massError: number;
}

export interface WayRun {
  readonly way: RainWay;
  readonly cases: readonly CaseRun[];
  /** Rain that ran off less what has arrived or still stands on the surfaces, as a share of it. */
  readonly surfaceError: number;
}

/**
 * The document with the losses of a way. Without a system they are taken as they are; with one the smaller of the two counts,
 * so that no design leans on a loss that only a fit has seen. Source: ours.
 */
export function withLosses(document: DesignDocument, losses: readonly LossOverride[], way: RainWay, recordCase: RecordCase): DesignDocument {
  const lossOf = (id: string, own: number): number => {
    const fitted = losses.find((item) => item.lowSpot === id && item.way === way)?.loss ?? own;
    return recordCase === 'bare' ? fitted : Math.min(own, fitted);
  };
  const lowSpots = document.site.lowSpots.map((spot) => ({ ...spot, existingLoss: lossOf(spot.id, spot.existingLoss) }));
  return { ...document, site: { ...document.site, lowSpots } };
}

export interface RunningCase {
  readonly recordCase: RecordCase;
  readonly inflow: RecordInflow;
  readonly route: Route;
  readonly years: WatchedPart[][];
}

/** A case at rest before its first year. */
export function startCase(document: DesignDocument, recordCase: RecordCase): RunningCase {
  const model = recordCase === 'bare' ? buildBareModel(document) : buildModel(document);
  const inflow = new RecordInflow(document, recordCase);
  const watches = document.site.lowSpots.map((spot, pond) =>
    new Watch(model.ponds[pond]!.storage, document.site.sills.filter(({ lowSpot }) => lowSpot === spot.id).map(({ level }) => level)));
  return { recordCase, inflow, route: recordRoute(model, watches, inflow.targets), years: [] };
}

/** The record in one way, a calendar year at a time. */
class RunningWay {
  private readonly way: RainWay;
  private readonly rain: WayRain;
  private readonly cases: readonly RunningCase[];

  constructor(document: DesignDocument, record: RainRecord, way: RainWay, options: LongRunOptions) {
    this.way = way;
    this.rain = new WayRain(document, record, way);
    this.cases = (options.cases ?? ['system', 'bare']).map((recordCase) => startCase(withLosses(document, options.losses ?? [], way, recordCase), recordCase));
  }

  year(from: number, to: number): void {
    const active = this.rain.part(from, to);
    for (const { inflow, route, years } of this.cases) {
      route.run(inflow.of(active), this.rain.stepOf(to));
      years.push(route.watches.map((watch, pond) => watch.close(route.standing(pond))));
    }
  }

  result(): WayRun {
    const cases = this.cases.map(({ recordCase, route, years }) => ({ recordCase, years, books: route.books, massError: route.massError() }));
    return { way: this.way, cases, surfaceError: this.rain.error };
  }
}

export function checkRun(document: DesignDocument, record: RainRecord, ways: readonly RainWay[]): void {
  checkDocument(document);
  const days = record.depths.length / readingsPerDay(record);
  if (record.depths.length === 0 || days !== Math.floor(days)) throw new CalcProblem('record.notWholeDays', 'record', { readings: record.depths.length });
  if (document.site.lowSpots.length === 0) throw new CalcProblem('record.noLowSpot', '/site/lowSpots');
  for (const way of ways) {
    if ((way === 'recorded') !== (record.step === 300)) throw new CalcProblem('record.way', 'ways', { way });
  }
}

/**
 * A long record on its way through the site: `advance` runs one calendar year of one way and may be called from a timer,
 * between two messages of a worker or in a row.
 */
export class LongRun {
  private readonly document: DesignDocument;
  private readonly record: RainRecord;
  private readonly options: LongRunOptions;
  private readonly ways: readonly RainWay[];
  private readonly years: readonly { readonly from: number; readonly to: number }[];
  private readonly done: WayRun[] = [];
  private running: RunningWay | null = null;
  private year = 0;

  constructor(document: DesignDocument, record: RainRecord, options: LongRunOptions = {}) {
    this.document = document;
    this.record = record;
    this.options = options;
    this.ways = options.ways ?? waysOf(record);
    this.years = yearStarts(record);
    checkRun(document, record, this.ways);
  }

  /** Share of the work that is done [-]. */
  get share(): number {
    const all = this.ways.length * this.years.length;
    return all === 0 ? 1 : (this.done.length * this.years.length + this.year) / all;
  }

  /** Runs one more year; false when all is done. */
  advance(): boolean {
    const way = this.ways[this.done.length];
    if (way === undefined) return false;
    this.running ??= new RunningWay(this.document, this.record, way, this.options);
    const { from, to } = this.years[this.year]!;
    this.running.year(from, to);
    this.year += 1;
    if (this.year === this.years.length) {
      this.done.push(this.running.result());
      this.running = null;
      this.year = 0;
    }
    return this.done.length < this.ways.length;
  }

  /** What every way gave; throws while years are left. */
  result(): readonly WayRun[] {
    if (this.done.length < this.ways.length) throw new CalcProblem('record.unfinished', '', { share: this.share });
    return this.done;
  }
}

/** Runs to the end, telling the share that is done after every year; `shouldStop` ends it with record.stopped. */
export function runToEnd(run: LongRun, progress?: (share: number) => void, shouldStop?: () => boolean): readonly WayRun[] {
  for (let more = true; more;) {
    if (shouldStop?.() === true) throw new CalcProblem('record.stopped', '', { share: run.share });
    more = run.advance();
    progress?.(run.share);
  }
  return run.result();
}
