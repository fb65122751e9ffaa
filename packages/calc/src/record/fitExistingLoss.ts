import { CalcProblem } from '../common/problem.ts';
import { requirePositive } from '../common/require.ts';
import type { DesignDocument, Sill } from '../document/document.ts';
import { waysOf, type RainWay } from './disaggregate.ts';
import { checkRun, startCase, withLosses, type LossOverride } from './longRun.ts';
import { recordQuality, yearStarts } from './quality.ts';
import { RecordInflow } from './recordInflow.ts';
import type { RainRecord } from './rainRecord.ts';
import type { RouteInflow } from './route.ts';
import { MINUTES } from './surfaceRunoff.ts';
import { WayRain } from './wayRain.ts';

/** Reported events are taken as known to this share either way. Source: ours, stated. */
export const REPORT_SHARE = 0.5;
/** Losses are searched between these [m3/s]: a drop a minute, and a pipe of six inches. Source: ours. */
const leastLoss = 1e-9;
const mostLoss = 0.05;
/** Ratio of the ends of the last bracket less one. */
const tolerance = 0.02;

export interface FittedWay {
  readonly way: RainWay;
  readonly loss: number;
  /** Loss at which the reports would be half as many again, and half as many. */
  readonly lossAtMore: number;
  readonly lossAtFewer: number;
  /** Events of the record at the fitted loss. */
  readonly counted: number;
}

export interface FittedLoss {
  readonly lowSpot: string;
  readonly sill: string;
  readonly reportedPerYear: number;
  readonly share: number;
  readonly ways: readonly FittedWay[];
  readonly losses: readonly LossOverride[];
}

export interface FitOptions {
  /** Sill at which the events were seen; the first one of the document by default. */
  readonly sill?: string;
  readonly shouldStop?: () => boolean;
}

/** Inflow of a year, kept so that every trial of a loss can use it. */
interface KeptYear {
  readonly inflow: RouteInflow;
  readonly end: number;
}

function keptYears(document: DesignDocument, record: RainRecord, way: RainWay, shouldStop: (() => boolean) | undefined): KeptYear[] {
  const rain = new WayRain(document, record, way);
  const inflow = new RecordInflow(document, 'bare');
  return yearStarts(record).map(({ from, to }) => {
    if (shouldStop?.() === true) throw new CalcProblem('record.stopped', '', { share: 0 });
    const { count, index, ponds } = inflow.of(rain.part(from, to));
    return { inflow: { count, index: index.slice(0, count), ponds: ponds.map((flows) => flows.slice(0, count * MINUTES)), junctions: [], wells: [], basins: [] }, end: rain.stepOf(to) };
  });
}

class Fit {
  private readonly known = new Map<number, number>();
  private readonly document: DesignDocument;
  private readonly way: RainWay;
  private readonly years: readonly KeptYear[];
  private readonly lowSpot: string;
  private readonly pond: number;
  private readonly place: number;
  private readonly shouldStop: (() => boolean) | undefined;

  constructor(document: DesignDocument, record: RainRecord, way: RainWay, sill: Sill, shouldStop: (() => boolean) | undefined) {
    this.document = document;
    this.way = way;
    this.years = keptYears(document, record, way, shouldStop);
    this.shouldStop = shouldStop;
    this.lowSpot = sill.lowSpot;
    this.pond = document.site.lowSpots.findIndex(({ id }) => id === sill.lowSpot);
    this.place = document.site.sills.filter(({ lowSpot }) => lowSpot === sill.lowSpot).indexOf(sill);
  }

  /** Events of the record at a loss, without a system. */
  count(loss: number): number {
    const before = this.known.get(loss);
    if (before !== undefined) return before;
    if (this.shouldStop?.() === true) throw new CalcProblem('record.stopped', '', { share: 0 });
    const { route } = startCase(withLosses(this.document, [{ lowSpot: this.lowSpot, way: this.way, loss }], this.way, 'bare'), 'bare');
    let count = 0;
    for (const { inflow, end } of this.years) {
      route.run(inflow, end);
      count += route.watches.map((watch, pond) => watch.close(route.standing(pond)))[this.pond]!.events[this.place]!;
    }
    this.known.set(loss, count);
    return count;
  }

  /** Largest loss at which the events are at least as many as wanted: from the dry end downward, then between the last two. */
  lossFor(wanted: number): number | null {
    let high = mostLoss;
    if (this.count(high) >= wanted) return high;
    let low = high / 4;
    while (this.count(low) < wanted) {
      high = low;
      low /= 4;
      if (low < leastLoss) return null;
    }
    while (high / low > 1 + tolerance) {
      const middle = Math.sqrt(high * low);
      if (this.count(middle) >= wanted) low = middle;
      else high = middle;
    }
    return low;
  }
}

/**
 * Steady loss of the low spot [m3/s] at which the record, without a system, brings water to a sill as often as the customer reports.
 * Fitted for each way of sharing out the rain; beside it the losses of half as many again and of half as many events.
 *
 * @param reportedPerYear events a year that the customer reports
 * @returns losses, to be given to longRecord
 * Limits: throws record.notReached when no loss gives so many events: then the hollow, the runoff or the report is not as thought
 * Source: calibration to reports, +-50 %: ours
 * Checked against: reports counted in a run of known loss give that loss back
 */
export function fitExistingLoss(document: DesignDocument, record: RainRecord, reportedPerYear: number, options: FitOptions = {}): FittedLoss {
  requirePositive({ reportedPerYear });
  const sill = document.site.sills.find(({ id }) => options.sill === undefined || id === options.sill);
  if (sill === undefined) throw new CalcProblem('record.noSill', '/site/sills', { sill: options.sill ?? '' });
  const wanted = reportedPerYear * recordQuality(record).observedYears;
  const quoted = waysOf(record);
  checkRun(document, record, quoted);
  const ways = quoted.map((way): FittedWay => {
    const fit = new Fit(document, record, way, sill, options.shouldStop);
    const loss = fit.lossFor(wanted);
    if (loss === null) throw new CalcProblem('record.notReached', 'reportedPerYear', { perYear: reportedPerYear, way });
    return {
      way, loss, counted: fit.count(loss), lossAtMore: fit.lossFor((1 + REPORT_SHARE) * wanted) ?? 0, lossAtFewer: fit.lossFor((1 - REPORT_SHARE) * wanted) ?? mostLoss,
    };
  });
  return {
    lowSpot: sill.lowSpot, sill: sill.id, reportedPerYear, share: REPORT_SHARE, ways,
    losses: ways.map(({ way, loss }) => ({ lowSpot: sill.lowSpot, way, loss })),
  };
}
