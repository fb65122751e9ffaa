import { DAY, MINUTE } from '../common/constants.ts';
import { Accuracy } from './accuracy.ts';
import { Ledger } from './ledger.ts';
import type { RoutingModel } from './model.ts';
import { type Network, networkOf } from './network.ts';
import { PumpFloats } from './pumpEvents.ts';
import { restLevel, setTwin } from './pumpModes.ts';
import { Recorder, type RunSamples } from './recorder.ts';
import type { RunMode, RunOptions, StormInflow } from './run.ts';

/**
 * Starts and stops in a day that are followed one by one: a start every nine seconds. A storm gives some hundred; a pump that starts so
 * often has a basin or a line that cannot work (B1, N1), and from there on its mean counts: the twin that pumps what comes in. Source: ours.
 */
const mostEventsInDay = 20_000;

/** One run on its way: the network, its books, its pumps and what their batteries hold. */
export class Run {
  readonly network: Network;
  readonly ledger: Ledger;
  readonly floats: PumpFloats;
  private readonly energy: readonly Float64Array[];
  private readonly even: boolean;
  private readonly accuracy: Accuracy;
  private powered = true;
  private twinsOf = -1;
  /** Whether any pump has a battery. */
  private readonly batteries: boolean;
  private readonly recorder: Recorder | null;
  private readonly mostEvents: number;
  private mode: RunMode;
  private time = 0;
  steps = 0;

  constructor(model: RoutingModel, inflow: StormInflow, options: RunOptions) {
    this.mode = options.mode;
    this.mostEvents = mostEventsInDay * Math.max(1, (inflow.step * inflow.steps) / DAY);
    this.network = networkOf(model);
    this.even = options.pace === 'even';
    this.accuracy = new Accuracy(this.network);
    const { firstBasin } = this.network.layout;
    model.basins.forEach((basin, index) => { this.network.setLevel(firstBasin + index, options.mode === 'onTwin' ? restLevel(basin) : basin.offLevel); });
    this.energy = model.basins.map(({ units }) => Float64Array.from(units, ({ energy }) => energy));
    this.batteries = model.basins.some(({ units }) => units.some(({ battery }) => battery));
    this.ledger = new Ledger(this.network, options.sills ?? []);
    this.floats = new PumpFloats(this.network, this.ledger, (basin, unit) => this.available(basin, unit));
    this.recorder = options.record === true ? new Recorder(model, this.network, inflow.step, inflow.steps) : null;
  }

  get samples(): RunSamples | null {
    return this.recorder?.samples ?? null;
  }

  private available(basin: number, unit: number): boolean {
    const { battery } = this.network.model.basins[basin]!.units[unit]!;
    return battery ? this.energy[basin]![unit]! > 0 : this.powered;
  }

  /** One span of time with steady inflow. */
  span(from: number, length: number, powered: boolean): void {
    this.powered = powered;
    this.time = from;
    if (this.mode !== 'real') this.setTwins();
    for (let done = 0; length - done > 1e-9;) {
      const real = this.mode === 'real';
      if (real) this.floats.before(from + done);
      else if (this.batteries) this.setTwins();
      done += this.advance(this.wanted(length - done, real), real);
      if (real && this.floats.events.length > this.mostEvents) this.average();
    }
  }

  /** From here on the pumps give what comes in above their start levels, and their starts are no longer counted. */
  private average(): void {
    this.mode = 'onTwin';
    for (const pumps of this.network.layout.pumps) for (const pump of pumps) pump.setOne(null, true);
    this.setTwins();
  }

  /** Length of the next part of a span of which `left` is left. */
  private wanted(left: number, real: boolean): number {
    if (this.even) return real ? Math.min(left, this.energyLeft(true)) : left;
    return Math.min(this.accuracy.next(left), this.energyLeft(real));
  }

  /** Solves a step, shorter when it does not settle or its error is too great, and takes it; up to the first event of the real run. */
  private advance(wanted: number, real: boolean): number {
    const fine = !this.even;
    let dt = this.network.settle(wanted, fine);
    if (fine) for (let shorter = this.accuracy.again(dt); shorter > 0; shorter = this.accuracy.again(dt)) dt = this.network.settle(shorter, true);
    if (real) dt = this.floats.locate(dt, fine);
    if (fine) this.accuracy.taken(dt);
    this.take(dt);
    return dt;
  }

  private take(dt: number): void {
    this.network.commit();
    this.ledger.add(dt);
    this.recorder?.add(this.time, dt);
    this.time += dt;
    this.steps += 1;
    if (this.batteries) this.drainAll(dt);
  }

  // ---------------------------------------------------------------- batteries

  private drainAll(dt: number): void {
    this.network.model.basins.forEach(({ units }, basin) => {
      units.forEach((unit, index) => { if (unit.battery) this.drain(basin, index, dt); });
    });
  }

  /** A battery is not charged during a storm: what it held at the start is what there is. Source: ours. */
  private drain(basin: number, index: number, dt: number): void {
    const { lines, units } = this.network.model.basins[basin]!;
    const line = lines.findIndex((item) => item.units.includes(index));
    const share = this.mode === 'real' ? (this.floats.runs(basin, index) ? 1 : 0) : this.network.layout.pumps[basin]![line]!.share;
    const left = this.energy[basin]![index]! - share * units[index]!.inputPower * dt;
    this.energy[basin]![index] = left > 1e-6 ? left : 0;
  }

  /** Time for which every battery in use lasts; a twin, whose pumps may run at any time, is told to the minute. */
  private energyLeft(real: boolean): number {
    if (!this.batteries) return Infinity;
    let least = Infinity;
    this.network.model.basins.forEach(({ units }, basin) => {
      units.forEach((unit, index) => {
        const left = this.energy[basin]![index]!;
        if (unit.battery && unit.inputPower > 0 && left > 0 && (!real || this.floats.runs(basin, index))) least = Math.min(least, left / unit.inputPower);
      });
    });
    return Math.max(least, real ? 1e-4 : MINUTE);
  }

  /** Stages change only with the power and with what the batteries hold. */
  private setTwins(): void {
    let state = this.powered ? 1 : 0;
    if (this.batteries) for (const left of this.energy) for (const value of left) state = 2 * state + (value > 0 ? 1 : 0);
    if (state === this.twinsOf) return;
    this.twinsOf = state;
    setTwin(this.network, this.mode, (basin, unit) => this.available(basin, unit));
  }
}
