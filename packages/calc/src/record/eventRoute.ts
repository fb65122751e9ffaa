import { CalcProblem } from '../common/problem.ts';
import type { InflowTargets } from '../routing/inflow.ts';
import type { RoutingModel } from '../routing/model.ts';
import { runStorm, type StormInflow } from '../routing/run.ts';
import type { Route, RouteBooks, RouteInflow } from './route.ts';
import { MINUTES } from './surfaceRunoff.ts';
import type { Watch } from './watch.ts';

const MINUTE = 60;
/** Five-minute steps without inflow that end an event, if the system is at rest by then: six hours. */
const QUIET = 72;
/** An event that has not come to rest after so many steps never will: thirty days. */
const LONGEST = 8640;

/** What the router keeps as a film on the ground [m], twice over. */
const restDepth = 2e-5;
const kinds = ['ponds', 'junctions', 'wells', 'basins'] as const;
type Kind = (typeof kinds)[number];

/** Steps of one event with their inflow. */
interface Event extends Readonly<Record<Kind, readonly number[][]>> {
  readonly index: number[];
}

function newEvent(model: RoutingModel): Event {
  const empty = (list: readonly unknown[]): number[][] => list.map(() => []);
  return { index: [], ponds: empty(model.ponds), junctions: empty(model.junctions), wells: empty(model.wells), basins: empty(model.basins) };
}

/**
 * Any network through a long record: each event is routed whole by the storm routing, minute by minute, from rest to rest.
 * An event ends when six hours bring no inflow and every low spot has emptied as far as it can; otherwise it goes on.
 * One that reaches over New Year counts in the year in which it ends.
 */
export class EventRoute implements Route {
  readonly books: RouteBooks = { inflow: 0, outflow: 0, solved: 0, closed: 0 };
  readonly watches: readonly Watch[];
  private readonly model: RoutingModel;
  private readonly ground: InflowTargets;
  private readonly restLevels: readonly number[];
  private event: Event;
  /** Water that the storm routing could not account for [m3]. */
  private lost = 0;

  /** @param ground steady ground water into each store [m3/s] */
  constructor(model: RoutingModel, watches: readonly Watch[], ground: InflowTargets) {
    this.model = model;
    this.watches = watches;
    this.ground = ground;
    // Below its lowest grate a low spot without a loss keeps what it has.
    this.restLevels = model.ponds.map(({ storage, loss }, pond) => {
      const grates = model.links.filter((link) => link.pond === pond).map((link) => link.grateLevel);
      return loss > 0 || grates.length === 0 ? storage.bottom : Math.max(storage.bottom, grates.reduce((low, level) => Math.min(low, level), Infinity));
    });
    this.event = newEvent(model);
  }

  run(inflow: RouteInflow, end: number): void {
    for (let k = 0; k < inflow.count; k += 1) {
      const step = inflow.index[k]!;
      this.settle(step);
      this.take(this.event, inflow, k, step);
    }
    this.settle(end);
  }

  private take(event: Event, inflow: RouteInflow, k: number, step: number): void {
    event.index.push(step);
    for (const kind of kinds) {
      event[kind].forEach((to, i) => { for (let m = 0; m < MINUTES; m += 1) to.push(inflow[kind][i]![k * MINUTES + m]!); });
    }
  }

  /** Routes what is waiting when it is over by a step; leaves it waiting otherwise. */
  private settle(step: number): void {
    const { index } = this.event;
    const last = index[index.length - 1];
    if (last === undefined || step - last <= QUIET) return;
    const first = index[0]!;
    const until = Math.min(step, first + LONGEST);
    for (let stop = last + 1 + QUIET; ; stop = Math.min(until, first + 2 * (stop - first))) {
      const storm = this.stormOf(first, Math.min(stop, until));
      const result = runStorm(this.model, storm, { mode: 'onTwin', record: true, pace: 'even' });
      const levels = result.samples!.pond;
      if (levels.every((series, pond) => series[series.length - 1]! <= this.restLevels[pond]! + restDepth)) {
        this.finish(levels, first * MINUTES, result.inflowVolume, result.massError);
        return;
      }
      if (stop >= until) break;
    }
    if (step - first >= LONGEST) throw new CalcProblem('record.neverRests', '/site/lowSpots', { reason: 'a low spot that does not empty' });
  }

  private stormOf(first: number, stop: number): StormInflow {
    const { event } = this;
    const steps = (stop - first) * MINUTES;
    const spread = (kind: Kind): Float64Array[] => event[kind].map((from, store) => {
      const to = new Float64Array(steps).fill(kind === 'ponds' ? 0 : this.ground[kind][store]!);
      event.index.forEach((step, k) => { for (let m = 0; m < MINUTES; m += 1) to[(step - first) * MINUTES + m] = from[k * MINUTES + m]!; });
      return to;
    });
    return { step: MINUTE, steps, ponds: spread('ponds'), junctions: spread('junctions'), wells: spread('wells'), basins: spread('basins') };
  }

  private finish(levels: readonly Float64Array[], minute: number, inflow: number, massError: number): void {
    levels.forEach((series, pond) => {
      const { storage } = this.model.ponds[pond]!;
      series.forEach((level, i) => { this.watches[pond]!.see(storage.volume(level), minute + i + 1, 1); });
    });
    this.books.inflow += inflow;
    this.books.outflow += inflow;
    this.books.solved += levels[0]?.length ?? 0;
    this.lost += massError * inflow;
    this.event = newEvent(this.model);
  }

  standing(): number {
    return 0;
  }

  massError(): number {
    return this.books.inflow > 0 ? this.lost / this.books.inflow : 0;
  }
}
