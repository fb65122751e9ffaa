import { CalcProblem } from '../common/problem.ts';
import type { InflowTargets } from '../routing/inflow.ts';
import type { RoutingModel } from '../routing/model.ts';
import { Network } from '../routing/network.ts';
import { restLevel, setTwin } from '../routing/pumpModes.ts';
import type { Route, RouteBooks, RouteInflow } from './route.ts';
import { MINUTES } from './surfaceRunoff.ts';
import type { Watch } from './watch.ts';

const MINUTE = 60;
/** A store whose level moves less than this in a minute has come to rest [m]: ten nanometers. */
const still = 1e-8;
/** An hour after the last inflow dry time is taken in longer steps [min]; backward Euler allows any. */
const patience = 60;
const longStep = 5;
/** A system that has not come to rest after so many dry minutes never will: thirty days. */
const longest = 43_200;

/**
 * Any network through a long record: the stores, fluxes and twin of the storm routing, minute by minute, with their levels
 * carried on from storm to storm. Dry time is leapt over once every store rests; a low spot that only loses falls evenly then.
 * Source: as SpotRoute
 * Checked against: runStorm of the storm routing at the same steps, within 0.05 mm
 */
export class NetworkRoute implements Route {
  readonly books: RouteBooks = { inflow: 0, outflow: 0, solved: 0, closed: 0 };
  readonly watches: readonly Watch[];
  private readonly network: Network;
  private readonly model: RoutingModel;
  private readonly ground: Float64Array;
  private readonly before: Float64Array;
  private readonly startVolume: number;
  private minute = 0;
  private dry = 0;
  private resting = true;

  /** @param ground steady ground water into each store [m3/s] */
  constructor(model: RoutingModel, watches: readonly Watch[], ground: InflowTargets) {
    const network = new Network(model);
    this.model = model;
    this.network = network;
    this.watches = watches;
    model.basins.forEach((basin, index) => { network.setLevel(network.layout.firstBasin + index, restLevel(basin)); });
    // A battery that lasts a storm does not last a record: pumps run on the mains only.
    setTwin(network, 'onTwin', (basin, unit) => !model.basins[basin]!.units[unit]!.battery);
    this.ground = Float64Array.from([...model.ponds.map(() => 0), ...ground.junctions, ...ground.wells, ...ground.basins]);
    this.before = new Float64Array(network.layout.count);
    this.startVolume = this.stored();
    if (this.ground.some((flow) => flow > 0)) this.resting = false;
  }

  run(inflow: RouteInflow, end: number): void {
    const series = [...inflow.ponds, ...inflow.junctions, ...inflow.wells, ...inflow.basins];
    for (let k = 0; k < inflow.count; k += 1) {
      this.pass(inflow.index[k]! * MINUTES);
      this.dry = 0;
      for (let m = 0; m < MINUTES; m += 1) {
        for (let store = 0; store < series.length; store += 1) this.network.inflow[store] = series[store]![k * MINUTES + m]!;
        this.step(1);
      }
    }
    this.pass(end * MINUTES);
  }

  standing(pond: number): number {
    return this.network.volume[pond]!;
  }

  massError(): number {
    const { inflow, outflow } = this.books;
    return inflow > 0 ? Math.abs(inflow - outflow - (this.stored() - this.startVolume)) / inflow : 0;
  }

  private stored(): number {
    const { layout, level } = this.network;
    return layout.tables.reduce((sum, table, store) => sum + table.volume(level[store]!), 0);
  }

  private step(minutes: number): void {
    const { network, books } = this;
    const length = minutes * MINUTE;
    this.before.set(network.level);
    for (let done = 0; length - done > 1e-9;) {
      const dt = network.settle(length - done);
      network.commit();
      done += dt;
      this.book(dt);
    }
    this.minute += minutes;
    books.solved += 1;
    for (let pond = 0; pond < this.watches.length; pond += 1) this.watches[pond]!.see(network.volume[pond]!, this.minute, minutes);
    this.resting = false;
  }

  private book(dt: number): void {
    const { network, books } = this;
    for (let store = 0; store < network.inflow.length; store += 1) books.inflow += dt * network.inflow[store]!;
    const { fluxes } = network.layout;
    for (let k = 0; k < fluxes.length; k += 1) {
      const { to, back, backShare } = fluxes[k]!;
      if (to < 0) books.outflow += dt * network.flows[k]! * (back < 0 ? 1 : 1 - backShare);
    }
  }

  /** Time without inflow but ground water, up to a minute. */
  private pass(until: number): void {
    if (this.minute < until) this.network.inflow.set(this.ground);
    while (this.minute < until && !this.resting) {
      const minutes = this.dry >= patience ? Math.min(longStep, until - this.minute) : 1;
      this.step(minutes);
      this.dry += minutes;
      this.resting = this.isResting(minutes);
      if (this.dry > longest) throw new CalcProblem('record.neverRests', '/site/lowSpots', { reason: 'record.restless.store' });
    }
    if (this.minute < until) this.leap(until - this.minute);
    this.minute = until;
  }

  /** A low spot may also fall evenly by its loss alone. */
  private isResting(minutes: number): boolean {
    const { level, layout } = this.network;
    for (let store = 0; store < layout.count; store += 1) {
      if (Math.abs(level[store]! - this.before[store]!) <= still * minutes) continue;
      if (store >= layout.firstJunction || !this.fallsEvenly(store, minutes)) return false;
    }
    return true;
  }

  private fallsEvenly(pond: number, minutes: number): boolean {
    const { storage, loss } = this.model.ponds[pond]!;
    const fallen = storage.volume(this.before[pond]!) - this.network.volume[pond]!;
    return loss > 0 && Math.abs(fallen - loss * minutes * MINUTE) <= 1e-9;
  }

  private leap(span: number): void {
    const { network, books } = this;
    for (let pond = 0; pond < this.watches.length; pond += 1) {
      const volume = network.volume[pond]!;
      const falls = Math.abs(network.level[pond]! - this.before[pond]!) > still || network.level[pond]! > this.model.ponds[pond]!.storage.bottom + still;
      const perMinute = falls ? this.model.ponds[pond]!.loss * MINUTE : 0;
      this.watches[pond]!.fall(volume, perMinute, this.minute, span);
      const gone = Math.min(volume, perMinute * span);
      books.outflow += gone;
      if (gone > 0) network.addVolume(pond, -gone);
    }
    let ground = 0;
    for (const flow of this.ground) ground += flow * MINUTE * span;
    books.inflow += ground;
    books.outflow += ground;
  }
}
