import { bracketedRoot } from '../math/bracketedRoot.ts';
import type { Ledger } from './ledger.ts';
import { type Network, pumpOff, pumpRunning } from './network.ts';

export interface PumpEvent {
  readonly time: number;
  readonly kind: 'pumpOn' | 'pumpOff';
  readonly basin: number;
}

/** A float is taken as reached within this height [m]: two root tolerances. */
const floatReach = 2e-6;
/** Time to which an event is found [s]: the level moves by less than the reach of a float in it. */
const eventTolerance = 1e-4;
/** No step is shorter than this [s]; an event that close is taken as now. */
const shortestStep = 1e-4;

function switchOne(network: Network, running: Uint8Array, powered: boolean, basin: number): PumpEvent['kind'] | null {
  const store = network.model.basins[basin]!;
  const level = network.basinLevel[basin]!;
  if (store.pump === null) return null;
  if (running[basin] === 1 && (!powered || level <= store.offLevel + floatReach)) return 'pumpOff';
  if (running[basin] === 0 && powered && level >= store.onLevel - floatReach) return 'pumpOn';
  return null;
}

/** A line without a check valve empties into its basin when the pump stops, and fills again at the next start. */
function runBack(network: Network, ledger: Ledger, basin: number): void {
  const pump = network.model.basins[basin]!.pump!;
  if (pump.runBack === 0) return;
  const back = Math.min(pump.runBack, ledger.lineContent[basin]!);
  ledger.lineContent[basin] = ledger.lineContent[basin]! - back;
  network.setBasinVolume(basin, network.basinVolume[basin]! + back);
}

/** Sets floats and lines right before the next part of a step. */
function before(network: Network, running: Uint8Array, powered: boolean, time: number, events: PumpEvent[], ledger: Ledger): void {
  for (let basin = 0; basin < running.length; basin += 1) {
    const kind = switchOne(network, running, powered, basin);
    if (kind !== null) {
      running[basin] = kind === 'pumpOn' ? 1 : 0;
      events.push({ time, kind, basin });
      if (kind === 'pumpOff') runBack(network, ledger, basin);
    }
    const pump = network.model.basins[basin]!.pump;
    network.pumpMode[basin] = running[basin] === 1 ? pumpRunning : pumpOff;
    network.lineFilling[basin] = pump !== null && ledger.lineContent[basin]! < pump.lineVolume * (1 - 1e-9) ? 1 : 0;
  }
}

export const pumpEvents = { before };

/** How far beyond its next event a basin stands at the end of the last trial; negative before the event. */
function overshoot(network: Network, running: Uint8Array, content: Float64Array, basin: number, dt: number): number {
  const store = network.model.basins[basin]!;
  if (store.pump === null) return -1;
  const level = network.trialBasin[basin]!;
  if (running[basin] === 0) return level - store.onLevel;
  const empty = store.offLevel - level;
  if (network.lineFilling[basin] === 0) return empty;
  const area = store.storage.area(level);
  return Math.max(empty, (content[basin]! + dt * network.pumpFlows[basin]! - store.pump.lineVolume) / area);
}

/**
 * Length of the step up to the first event within it; leaves the network's last trial at exactly that length.
 * An unpowered pump whose level is above its float waits: it has no event of its own.
 */
export function locateEvent(network: Network, running: Uint8Array, content: Float64Array, step: number): number {
  let dt = step;
  for (let basin = 0; basin < running.length; basin += 1) {
    const waiting = running[basin] === 0 && network.basinLevel[basin]! >= network.model.basins[basin]!.onLevel - floatReach;
    if (waiting || overshoot(network, running, content, basin, dt) <= floatReach / 2) continue;
    const beyond = (length: number): number => {
      network.trial(length);
      return overshoot(network, running, content, basin, length);
    };
    dt = beyond(shortestStep) >= 0 ? shortestStep : bracketedRoot(beyond, shortestStep, dt, eventTolerance);
    network.trial(dt);
  }
  return dt;
}
