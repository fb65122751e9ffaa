import type { Ledger } from './ledger.ts';
import type { BasinStore } from './model.ts';
import type { Network } from './network.ts';
import { maskOf, type Available } from './pumpModes.ts';

export interface PumpEvent {
  readonly time: number;
  readonly kind: 'pumpOn' | 'pumpOff';
  readonly basin: number;
  /** Place in the basin's units. */
  readonly unit: number;
}

/** A float is taken as reached within this height [m]. */
export const floatReach = 1e-5;
/** Time to which an event is found [s]: the level moves by less than the reach of a float in it. */
const eventTolerance = 1e-4;
/** No step is shorter than this [s]; an event that close is taken as now. */
const shortestStep = 1e-4;
/** Far more than a cut ever takes. */
const mostCuts = 60;
/** A line counts as full from this share on. */
const fullShare = 1 - 1e-9;

/**
 * The real pumps: each starts at its start level and stops at the basin's off level, when its power goes or its battery is empty.
 * A line without a check valve falls back into its basin, down to its lowest sag, when its last pump stops, and is filled again before it delivers.
 */
export class PumpFloats {
  readonly events: PumpEvent[] = [];
  private readonly network: Network;
  private readonly ledger: Ledger;
  private readonly available: Available;
  private readonly running: readonly Uint8Array[];

  constructor(network: Network, ledger: Ledger, available: Available) {
    this.network = network;
    this.ledger = ledger;
    this.available = available;
    this.running = network.model.basins.map(({ units }) => new Uint8Array(units.length));
  }

  runs(basin: number, unit: number): boolean {
    return this.running[basin]![unit] === 1;
  }

  /** Sets floats and lines right before the next part of a step. */
  before(time: number): void {
    const { network } = this;
    const { basins } = network.model;
    for (let index = 0; index < basins.length; index += 1) {
      const basin = basins[index]!;
      let changed = false;
      for (let unit = 0; unit < basin.units.length; unit += 1) if (this.switchOne(basin, index, unit, time)) changed = true;
      if (changed) this.runBack(basin, index);
      this.setLines(basin, index);
    }
  }

  private switchOne(basin: BasinStore, index: number, unit: number, time: number): boolean {
    const level = this.network.level[this.network.layout.firstBasin + index]!;
    const powered = this.available(index, unit);
    const running = this.running[index]!;
    if (running[unit] === 1 ? powered && level > basin.offLevel + floatReach : !powered || level < basin.units[unit]!.startLevel - floatReach) return false;
    running[unit] = running[unit] === 1 ? 0 : 1;
    this.events.push({ time, kind: running[unit] === 1 ? 'pumpOn' : 'pumpOff', basin: index, unit });
    return true;
  }

  /** Source: taken as at once; a line of the trade empties within half a minute. */
  private runBack(basin: BasinStore, index: number): void {
    const contents = this.ledger.lineContent[index]!;
    basin.lines.forEach((line, k) => {
      if (line.runBack === 0 || line.units.some((unit) => this.runs(index, unit))) return;
      const back = Math.max(0, contents[k]! - (line.volume - line.runBack));
      if (back === 0) return;
      contents[k] = contents[k]! - back;
      this.network.addVolume(this.network.layout.firstBasin + index, back);
    });
  }

  private setLines(basin: BasinStore, index: number): void {
    const contents = this.ledger.lineContent[index]!;
    for (let k = 0; k < basin.lines.length; k += 1) {
      const line = basin.lines[k]!;
      const flux = this.network.layout.pumps[index]![k]!;
      const mask = maskOf(line, (unit) => this.runs(index, unit));
      const delivers = contents[k]! >= line.volume * fullShare;
      if (flux.setOne(mask === 0 ? null : delivers ? line.flow(mask) : line.filling(mask), delivers)) this.network.otherFlows();
    }
  }

  /** How far beyond its next event a basin stands at a level reached in `dt`, as a height; negative before any. */
  private overshoot(index: number, level: number, dt: number): number {
    const { network, ledger } = this;
    const basin = network.model.basins[index]!;
    let most = -1;
    for (let unit = 0; unit < basin.units.length; unit += 1) {
      if (this.runs(index, unit)) most = Math.max(most, basin.offLevel - level);
      else if (this.available(index, unit)) most = Math.max(most, level - basin.units[unit]!.startLevel);
    }
    for (let k = 0; k < basin.lines.length; k += 1) {
      if (network.layout.pumps[index]![k]!.delivers) continue;
      const flow = network.flows[network.layout.pumpPlaces[index]![k]!]!;
      if (flow <= 0) continue;
      const over = ledger.lineContent[index]![k]! + dt * flow - basin.lines[k]!.volume;
      most = Math.max(most, over / basin.storage.area(level));
    }
    return most;
  }

  /** Length of the step up to the first event within it; leaves the network's last trial at exactly that length. */
  locate(step: number, fine: boolean): number {
    let dt = step;
    for (let index = 0; index < this.running.length; index += 1) {
      const { level, trialLevel, layout } = this.network;
      const store = layout.firstBasin + index;
      const over = this.overshoot(index, trialLevel[store]!, dt);
      if (over > floatReach / 2) dt = this.cut(index, this.overshoot(index, level[store]!, 0), dt, over, fine);
    }
    return dt;
  }

  /**
   * The step in which a basin goes from before its next event to beyond it is cut where it has just passed it, by no more than half the reach of a float.
   * Source: false position with the Illinois step, which does not stay at one end
   */
  private cut(index: number, atStart: number, step: number, atEnd: number, fine: boolean): number {
    const { network } = this;
    const store = network.layout.firstBasin + index;
    const goal = floatReach / 4;
    let [low, below, high, above] = [0, atStart - goal, step, atEnd - goal];
    let last = 0;
    for (let i = 0; i < mostCuts && below < 0 && high - low > eventTolerance; i += 1) {
      const wanted = i % 8 === 7 ? 0.5 * (low + high) : low + ((high - low) * -below) / (above - below);
      const dt = network.settle(Math.max(wanted, shortestStep), fine);
      const over = this.overshoot(index, network.trialLevel[store]!, dt) - goal;
      if (Math.abs(over) <= goal) return dt;
      if (over < 0) {
        if (last < 0) above *= 0.5;
        [low, below, last] = [dt, over, -1];
      } else {
        if (last > 0) below *= 0.5;
        [high, above, last] = [dt, over, 1];
      }
    }
    return network.settle(below < 0 ? high : shortestStep, fine);
  }
}
