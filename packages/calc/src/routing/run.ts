import type { RunVolumes } from './ledger.ts';
import type { RoutingModel } from './model.ts';
import type { Network } from './network.ts';
import { Pace } from './pace.ts';
import type { PumpEvent } from './pumpEvents.ts';
import type { RunSamples } from './recorder.ts';
import { Run } from './steps.ts';

/**
 * The router. `buildModel(document)` gives the stores and the ways between them, `stormInflow(document, stormRunoff(document, T), case)`
 * what comes into them, `runStorm(model, inflow, options)` one storm through them. A model and an inflow may be shared by any number of
 * runs and are not changed. `variedModel` and `buildInflow` make what-ifs of both. Everything in it is SI, indices count in the lists of
 * the model, and a run gives highest levels, time over sills, pump events and where every litre went.
 */

/** Inflow of one storm on an even grid of steps: for each store one mean flow per step [m3/s]. */
export interface StormInflow {
  readonly step: number;
  readonly steps: number;
  readonly ponds: readonly Float64Array[];
  readonly basins: readonly Float64Array[];
  /** Left out where nothing flows straight into a junction or dry well. */
  readonly junctions?: readonly Float64Array[];
  readonly wells?: readonly Float64Array[];
}

/**
 * real: pumps start and stop at their floats. offTwin: run whenever the level is above off. onTwin: run only above on.
 * The two twins have no memory and bound the real run.
 */
export type RunMode = 'real' | 'offTwin' | 'onTwin';

export interface RunOptions {
  readonly mode: RunMode;
  /** Time without mains power, from and to [s]; pumps on a battery run on. */
  readonly outage?: readonly [number, number];
  readonly sills?: readonly { readonly pond: number; readonly level: number }[];
  readonly record?: boolean;
  /** Steps to run, from and to; the whole storm by default. */
  readonly window?: readonly [number, number];
  /** even: every step of the grid once, whatever happens; fitted (the default) divides and merges steps. */
  readonly pace?: 'fitted' | 'even';
}

export interface RunResult {
  readonly maxPond: readonly number[];
  readonly maxBasin: readonly number[];
  readonly maxWell: readonly number[];
  readonly secondsOverSill: readonly number[];
  readonly inflowVolume: number;
  readonly volumes: RunVolumes;
  /** Soaked away and run over at each dry well [m3]. */
  readonly wells: readonly { readonly soaked: number; readonly overflowed: number }[];
  readonly massError: number;
  readonly events: readonly PumpEvent[];
  readonly runTime: number;
  readonly samples: RunSamples | null;
  /** Steps solved, and steps that were too long to be solved. */
  readonly effort: { readonly steps: number; readonly failed: number };
}

/**
 * Routes one storm through the stores of a model.
 * Starts dry, basins at their off level (onTwin: at their on level), lines full behind check valves and empty down to their sag without.
 */
export function runStorm(model: RoutingModel, inflow: StormInflow, options: RunOptions): RunResult {
  const run = new Run(model, inflow, options);
  const { network } = run;
  const window = options.window ?? [0, inflow.steps];
  const pace = options.pace === 'even' ? null : new Pace(network, inflow, window);
  for (let i = window[0]; i < window[1];) {
    const powered = isPowered(options.outage, i * inflow.step);
    const end = nextChange(options.outage, i, window[1], inflow.step);
    const count = pace === null ? 1 : pace.together(i, end);
    setInflow(network, inflow, i, count);
    run.span(i * inflow.step, count * inflow.step, powered);
    i += count;
  }
  return resultOf(run);
}

const isPowered = (outage: RunOptions['outage'], time: number): boolean => outage === undefined || time < outage[0] || time >= outage[1];

/** Step before which the power changes next, or the end. */
function nextChange(outage: RunOptions['outage'], i: number, last: number, step: number): number {
  if (outage === undefined) return last;
  for (const time of outage) {
    const at = -Math.floor(-time / step);
    if (at > i && at < last) return at;
  }
  return last;
}

function setInflow(network: Network, inflow: StormInflow, i: number, count: number): void {
  const { firstJunction, firstWell, firstBasin } = network.layout;
  setList(network, inflow.ponds, 0, i, count);
  if (inflow.junctions !== undefined) setList(network, inflow.junctions, firstJunction, i, count);
  if (inflow.wells !== undefined) setList(network, inflow.wells, firstWell, i, count);
  setList(network, inflow.basins, firstBasin, i, count);
}

function setList(network: Network, list: readonly Float64Array[], first: number, i: number, count: number): void {
  for (let n = 0; n < list.length; n += 1) {
    const series = list[n]!;
    if (count === 1) {
      network.inflow[first + n] = series[i]!;
      continue;
    }
    let sum = 0;
    for (let k = 0; k < count; k += 1) sum += series[i + k]!;
    network.inflow[first + n] = sum / count;
  }
}

function resultOf({ network, ledger, floats, steps, samples }: Run): RunResult {
  const { model, layout } = network;
  const { firstJunction, firstWell, firstBasin } = layout;
  const highest = Array.from(ledger.maxLevel);
  const movedAt = (id: string, kind: string): number => layout.fluxes.reduce((sum, flux, k) => (flux.id === id && flux.kind === kind ? sum + ledger.moved[k]! : sum), 0);
  return {
    maxPond: highest.slice(0, firstJunction), maxBasin: highest.slice(firstBasin), maxWell: highest.slice(firstWell, firstBasin),
    secondsOverSill: Array.from(ledger.secondsOver), inflowVolume: ledger.inflow, volumes: ledger.volumes(),
    wells: model.wells.map(({ id }) => ({ soaked: movedAt(id, 'seepage'), overflowed: movedAt(id, 'overflow') })),
    massError: ledger.massError(), events: floats.events, runTime: ledger.runTime, samples, effort: { steps, failed: network.failed },
  };
}
