import { DocumentError } from '../document/error.ts';
import type { RoutingModel } from './model.ts';
import { Ledger } from './ledger.ts';
import { locateEvent, pumpEvents, type PumpEvent } from './pumpEvents.ts';
import { Network, pumpAbove, pumpOff } from './network.ts';
import { RestTest } from './rest.ts';

/** Inflow of one storm on an even grid of steps: for each store one mean flow per step [m3/s]. */
export interface StormInflow {
  readonly step: number;
  readonly steps: number;
  readonly ponds: readonly Float64Array[];
  readonly basins: readonly Float64Array[];
}

/**
 * real: pumps start and stop at their floats. offTwin: run whenever the level is above off. onTwin: run only above on.
 * The two twins have no memory and bound the real run.
 */
export type RunMode = 'real' | 'offTwin' | 'onTwin';

export interface RunOptions {
  readonly mode: RunMode;
  /** Time without power, from and to [s]. */
  readonly outage?: readonly [number, number];
  readonly sills?: readonly { readonly pond: number; readonly level: number }[];
  readonly record?: boolean;
  /** Steps to run, from and to; the whole storm by default. */
  readonly window?: readonly [number, number];
}

export interface RunSamples {
  readonly pond: readonly Float64Array[];
  readonly basin: readonly Float64Array[];
  readonly pump: readonly Float64Array[];
}

export interface RunResult {
  readonly maxPond: readonly number[];
  readonly maxBasin: readonly number[];
  readonly secondsOverSill: readonly number[];
  readonly inflowVolume: number;
  readonly massError: number;
  readonly events: readonly PumpEvent[];
  readonly runTime: number;
  readonly samples: RunSamples | null;
}

/** A storm of one day gives some hundred starts; far more means a basin that cannot work at all. */
const mostEvents = 20000;

interface Progress {
  readonly network: Network;
  readonly ledger: Ledger;
  readonly events: PumpEvent[];
  readonly options: RunOptions;
  readonly running: Uint8Array;
}

function setTwinPumps(progress: Progress, powered: boolean): void {
  const { network, options } = progress;
  network.model.basins.forEach((basin, index) => {
    network.pumpMode[index] = powered ? pumpAbove : pumpOff;
    network.pumpThreshold[index] = options.mode === 'onTwin' ? basin.onLevel : basin.offLevel;
  });
}

function takeStep(progress: Progress, dt: number): void {
  progress.network.commit();
  progress.ledger.add(progress.network, dt);
}

/** One grid step of the real run, split wherever a float switches or a line becomes full. */
function realStep(progress: Progress, from: number, step: number, powered: boolean): void {
  let done = 0;
  while (step - done > 1e-9) {
    pumpEvents.before(progress.network, progress.running, powered, from + done, progress.events, progress.ledger);
    const left = step - done;
    progress.network.trial(left);
    const dt = locateEvent(progress.network, progress.running, progress.ledger.lineContent, left);
    takeStep(progress, dt);
    done += dt;
    if (progress.events.length > mostEvents) throw new DocumentError('document.notComputable', '/system/parts', { reason: 'pump starts without end' });
  }
}

function newSamples(model: RoutingModel, steps: number): RunSamples {
  const make = (count: number): Float64Array[] => Array.from({ length: count }, () => new Float64Array(steps));
  return { pond: make(model.ponds.length), basin: make(model.basins.length), pump: make(model.basins.length) };
}

function start(model: RoutingModel, options: RunOptions): Progress {
  const network = new Network(model);
  model.basins.forEach((basin, index) => {
    network.setBasinVolume(index, basin.storage.volume(options.mode === 'onTwin' ? basin.onLevel : basin.offLevel));
  });
  return { network, ledger: new Ledger(network, options.sills ?? []), events: [], options, running: new Uint8Array(model.basins.length) };
}

/**
 * Routes one storm through the stores of a model.
 * Starts dry, basins at their off level (onTwin: at their on level), lines full behind a check valve and empty without one.
 */
export function runStorm(model: RoutingModel, inflow: StormInflow, options: RunOptions): RunResult {
  const progress = start(model, options);
  const { network, ledger } = progress;
  const samples = options.record === true ? newSamples(model, inflow.steps) : null;
  const rest = new RestTest(network, options.mode);
  const [first, last] = options.window ?? [0, inflow.steps];
  for (let i = first; i < last; i += 1) {
    const from = i * inflow.step;
    for (let pond = 0; pond < inflow.ponds.length; pond += 1) network.pondInflow[pond] = inflow.ponds[pond]![i]!;
    for (let basin = 0; basin < inflow.basins.length; basin += 1) network.basinInflow[basin] = inflow.basins[basin]![i]!;
    const { outage } = options;
    const powered = outage === undefined || from < outage[0] || from >= outage[1];
    if (options.mode === 'real') realStep(progress, from, inflow.step, powered);
    else {
      setTwinPumps(progress, powered);
      if (powered && rest.holds()) ledger.pass(network, rest.passing, inflow.step);
      else {
        network.trial(inflow.step);
        takeStep(progress, inflow.step);
      }
    }
    if (samples !== null) record(samples, network, ledger, i, inflow.step);
  }
  return {
    maxPond: Array.from(ledger.maxPond), maxBasin: Array.from(ledger.maxBasin), secondsOverSill: Array.from(ledger.secondsOver),
    inflowVolume: ledger.inflow, massError: ledger.massError(network), events: progress.events, runTime: ledger.runTime, samples,
  };
}

function record(samples: RunSamples, network: Network, ledger: Ledger, i: number, step: number): void {
  for (let pond = 0; pond < samples.pond.length; pond += 1) samples.pond[pond]![i] = network.pondLevel[pond]!;
  for (let basin = 0; basin < samples.basin.length; basin += 1) {
    samples.basin[basin]![i] = network.basinLevel[basin]!;
    samples.pump[basin]![i] = ledger.takePumped(basin) / step;
  }
}
