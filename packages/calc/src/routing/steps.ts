import { DocumentError } from '../document/error.ts';
import { Ledger } from './ledger.ts';
import type { RoutingModel } from './model.ts';
import { Network } from './network.ts';
import { PumpFloats } from './pumpEvents.ts';
import { setTwin } from './pumpModes.ts';
import { Recorder, type RunSamples } from './recorder.ts';
import type { RunOptions, StormInflow } from './run.ts';

/** A storm of one day gives some hundred starts; far more means a basin that cannot work at all. */
const mostEvents = 20000;
/** Longest part of a step in which a real pump runs [s]: it empties a basin in a minute. Source: ours. */
const longestPumping = 10;

/** A part of a step this short always settles, unless the numbers are beyond reason [s]. */
const shortestPart = 1e-3;

const unsettled = (): DocumentError => new DocumentError('document.notComputable', '/system/parts', { reason: 'levels that do not settle' });

/** One run on its way: the network, its books, its pumps and what their batteries hold. */
export class Run {
  readonly network: Network;
  readonly ledger: Ledger;
  readonly floats: PumpFloats;
  private readonly options: RunOptions;
  private readonly energy: readonly Float64Array[];
  private powered = true;
  private twinKey = '';
  private readonly recorder: Recorder | null;
  private time = 0;
  steps = 0;

  constructor(model: RoutingModel, inflow: StormInflow, options: RunOptions) {
    this.options = options;
    this.network = new Network(model);
    const { firstBasin } = this.network.layout;
    model.basins.forEach((basin, index) => { this.network.setLevel(firstBasin + index, options.mode === 'onTwin' ? basin.onLevel : basin.offLevel); });
    this.energy = model.basins.map(({ units }) => Float64Array.from(units, ({ energy }) => energy));
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
  span(from: number, length: number, parts: number, powered: boolean): void {
    this.powered = powered;
    this.time = from;
    if (this.options.mode === 'real') this.realSpan(from, length, length / parts);
    else {
      this.setTwins();
      for (let k = 0; k < parts; k += 1) this.advance(length / parts);
    }
  }

  /** A step of a twin, halved until it can be solved. */
  private advance(dt: number): void {
    if (this.network.trial(dt)) {
      this.take(dt);
      return;
    }
    if (dt < shortestPart) throw unsettled();
    this.advance(dt / 2);
    this.advance(dt / 2);
  }

  /** The real run, split wherever a float switches, a line becomes full or a battery is empty. */
  private realSpan(from: number, length: number, longest: number): void {
    let done = 0;
    const even = this.options.pace === 'even';
    while (length - done > 1e-9) {
      this.floats.before(from + done);
      let step = Math.min(length - done, longest);
      if (!even && step > longestPumping && this.floats.anyRuns()) step = longestPumping;
      step = Math.min(step, this.energyLeft());
      while (!this.network.trial(step)) {
        if (step < shortestPart) throw unsettled();
        step /= 2;
      }
      const dt = this.floats.locate(step);
      this.take(dt);
      done += dt;
      if (this.floats.events.length > mostEvents) throw new DocumentError('document.notComputable', '/system/parts', { reason: 'pump starts without end' });
    }
  }

  private take(dt: number): void {
    this.network.commit();
    this.ledger.add(dt);
    this.recorder?.add(this.time, dt);
    this.time += dt;
    this.steps += 1;
    this.network.model.basins.forEach(({ units }, basin) => {
      units.forEach((unit, index) => { if (unit.battery) this.drain(basin, index, dt); });
    });
  }

  // ---------------------------------------------------------------- batteries

  /** A battery is not charged during a storm: what it held at the start is what there is. Source: ours. */
  private drain(basin: number, index: number, dt: number): void {
    const { lines, units } = this.network.model.basins[basin]!;
    const line = lines.findIndex((item) => item.units.includes(index));
    const share = this.options.mode === 'real' ? (this.floats.runs(basin, index) ? 1 : 0) : this.network.layout.pumps[basin]![line]!.share;
    const left = this.energy[basin]![index]! - share * units[index]!.inputPower * dt;
    this.energy[basin]![index] = left > 1e-6 ? left : 0;
  }

  private energyLeft(): number {
    let least = Infinity;
    this.network.model.basins.forEach(({ units }, basin) => {
      units.forEach((unit, index) => {
        const left = this.energy[basin]![index]!;
        if (unit.battery && unit.inputPower > 0 && left > 0 && this.floats.runs(basin, index)) least = Math.min(least, left / unit.inputPower);
      });
    });
    return Math.max(least, 1e-4);
  }

  /** Stages change only with the power and with what the batteries hold. */
  private setTwins(): void {
    let key = this.powered ? '1' : '0';
    for (const left of this.energy) for (const value of left) key += value > 0 ? '1' : '0';
    if (key === this.twinKey) return;
    this.twinKey = key;
    setTwin(this.network, this.options.mode, (basin, unit) => this.available(basin, unit));
  }
}
