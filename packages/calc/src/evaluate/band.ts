import type { StormInflow } from '../routing/run.ts';
import { runStorm } from '../routing/run.ts';
import { buildInflow, inflowTargets, routesOf, type InflowCase, type InflowTargets, type Route } from '../routing/inflow.ts';
import type { RoutingModel } from '../routing/model.ts';
import type { StormRunoff } from '../routing/storm.ts';
import type { FrictionRange } from '../routing/variation.ts';
import { bandInputs, bandRanges, latinHypercube, type BandInput, type Draw } from './bandInputs.ts';
import { DrawReader, modelVariation, rainFactors, rainLimits, runoffFactors, shotsAtSill } from './bandModel.ts';
import type { EvaluationContext } from './context.ts';
import { restlessWindow } from './window.ts';

export { bandRanges } from './bandInputs.ts';

/** What the runs of a band go through: the system or the roof on the low spot, with power or without for a while. */
export interface BandCase {
  readonly inflowCase: InflowCase;
  readonly outage: readonly [number, number] | null;
}

export const asDesigned: BandCase = { inflowCase: 'system', outage: null };

/** One storm made ready: its runoff is varied in place, draw by draw. */
interface Prepared {
  readonly limits: { readonly lower: Float64Array; readonly upper: Float64Array };
  readonly rain: Float64Array;
  readonly storm: StormRunoff;
  readonly varied: StormRunoff;
  readonly window: readonly [number, number];
  readonly routes: readonly Route[];
  readonly targets: InflowTargets;
  /**
   * What finer steps change of the freeboard of the document itself at each sill [m]. The runs of the band take whole minutes,
   * all of them the same, so that they keep order; this is added to every one.
   */
  readonly offsets: readonly number[];
  inflow: Required<StormInflow> | null;
}

export interface BandOptions {
  /** Draws made before for the same seed, by the number of inputs. */
  readonly draws?: (inputs: number) => readonly Draw[];
  /** Lines rated at both ends of the friction in place of the document's own. */
  readonly friction?: FrictionRange;
  /** Whether what finer steps change is added; without it the runs keep order between designs to the last digit. */
  readonly offset?: boolean;
}

/** Seeded runs of the twin that runs only above its on level, and single runs with chosen inputs. */
export class Band {
  readonly inputs: readonly BandInput[];
  readonly draws: readonly Draw[];
  readonly context: EvaluationContext;
  private readonly reader: DrawReader;
  private readonly vary: (draw: Draw) => RoutingModel;
  private readonly models: (RoutingModel | undefined)[] = [];
  private readonly prepared = new Map<string, Prepared>();
  private readonly drawn = new Map<string, (readonly number[])[]>();
  private readonly sampled = new Map<string, readonly (readonly number[])[]>();

  /** Ratings given in place of the document's own, if any. */
  readonly friction: FrictionRange | undefined;
  private readonly offset: boolean;

  constructor(context: EvaluationContext, options: BandOptions = {}) {
    this.context = context;
    this.inputs = bandInputs(context.document);
    this.draws = options.draws?.(this.inputs.length) ?? latinHypercube(bandRanges.samples, this.inputs.length, context.document.seed);
    this.reader = new DrawReader(this.inputs);
    this.vary = modelVariation(context, this.reader, options.friction);
    this.friction = options.friction;
    this.offset = options.offset ?? true;
  }

  get middle(): Draw {
    return this.reader.middle();
  }

  /** Freeboard at every sill with one draw of the inputs. */
  freeboards(returnPeriod: number, draw: Draw, bandCase: BandCase = asDesigned, model: RoutingModel = this.vary(draw)): number[] {
    const { context, reader } = this;
    const prepared = this.prepare(returnPeriod, bandCase);
    rainFactors(prepared.limits, reader.share(draw, 'rain'), prepared.window, prepared.rain);
    prepared.storm.runoff.forEach((from, index) => { multiply(from, prepared.rain, prepared.window, prepared.varied.runoff[index]!); });
    const { document } = context;
    const factors = runoffFactors(document, reader, draw);
    prepared.inflow = buildInflow(prepared.routes, prepared.targets, prepared.varied, factors, prepared.window, prepared.inflow);
    const run = runStorm(model, prepared.inflow, { mode: 'onTwin', pace: 'even', window: prepared.window, ...(bandCase.outage === null ? {} : { outage: bandCase.outage }) });
    context.massError = Math.max(context.massError, run.massError);
    return context.sills.map(({ sill, pond, level }, index) => level + shotsAtSill(reader, draw, sill) - run.maxPond[pond]! + prepared.offsets[index]!);
  }

  /** Freeboards of one of the seeded draws. */
  ofDraw(index: number, returnPeriod: number, bandCase: BandCase = asDesigned): readonly number[] {
    const key = keyOf(returnPeriod, bandCase);
    const drawn = this.drawn.get(key) ?? [];
    this.drawn.set(key, drawn);
    const model = this.models[index] ?? this.vary(this.draws[index]!);
    this.models[index] = model;
    const found = drawn[index] ?? this.freeboards(returnPeriod, this.draws[index]!, bandCase, model);
    drawn[index] = found;
    return found;
  }

  /** Freeboards of all seeded draws at each sill, lowest first. */
  sorted(returnPeriod: number, bandCase: BandCase = asDesigned): readonly (readonly number[])[] {
    const key = keyOf(returnPeriod, bandCase);
    const known = this.sampled.get(key);
    if (known !== undefined) return known;
    const found = this.context.sills.map((): number[] => []);
    this.draws.forEach((_, index) => {
      this.ofDraw(index, returnPeriod, bandCase).forEach((freeboard, sill) => { found[sill]!.push(freeboard); });
    });
    for (const list of found) list.sort((a, b) => a - b);
    this.sampled.set(key, found);
    return found;
  }

  /** The 10 and 90 % ends of the freeboard at a sill. */
  limits(returnPeriod: number, sill: number, bandCase: BandCase = asDesigned): { readonly lower: number; readonly upper: number } {
    const list = this.sorted(returnPeriod, bandCase)[sill]!;
    return { lower: quantile(list, bandRanges.lowShare), upper: quantile(list, bandRanges.highShare) };
  }

  private prepare(returnPeriod: number, bandCase: BandCase): Prepared {
    const key = keyOf(returnPeriod, bandCase);
    const known = this.prepared.get(key);
    if (known !== undefined) return known;
    const { context } = this;
    const storm = context.storm(returnPeriod);
    const limits = rainLimits(context.document, storm);
    const made: Prepared = {
      limits, rain: new Float64Array(storm.steps), storm,
      varied: { ...storm, runoff: storm.runoff.map(({ length }) => new Float64Array(length)) },
      window: windowOf(context, returnPeriod, bandCase, mostOf(limits.upper)), inflow: null, offsets: this.offset ? offsetsOf(context, returnPeriod, bandCase) : context.sills.map(() => 0),
      routes: routesOf(context.document, bandCase.inflowCase), targets: inflowTargets(context.document, bandCase.inflowCase),
    };
    this.prepared.set(key, made);
    return made;
  }
}

const keyOf = (returnPeriod: number, { inflowCase, outage }: BandCase): string => `${returnPeriod} ${inflowCase} ${outage?.join(' ') ?? ''}`;

/** Most that any draw makes of the plain inflow. */
const mostOf = (upper: Float64Array): number => upper.reduce((most, value) => (value > most ? value : most), 1) * (1 + bandRanges.soft);

/** Steps in which something happens, with the outage and ten minutes after it. */
function windowOf(context: EvaluationContext, returnPeriod: number, { inflowCase, outage }: BandCase, most: number): readonly [number, number] {
  const storm = context.storm(returnPeriod);
  const [first, last] = restlessWindow(context.model, context.inflow(returnPeriod, inflowCase), most);
  if (outage === null) return [first, last];
  return [Math.max(0, Math.min(first, Math.floor(outage[0] / storm.step))), Math.min(storm.steps, Math.max(last, Math.floor((outage[1] + 600) / storm.step)))];
}

function offsetsOf(context: EvaluationContext, returnPeriod: number, { inflowCase, outage }: BandCase): number[] {
  const options = { mode: 'onTwin', ...(outage === null ? {} : { outage }) } as const;
  const fine = context.run(returnPeriod, inflowCase, options);
  const even = context.run(returnPeriod, inflowCase, { ...options, pace: 'even' });
  return context.sills.map(({ pond }) => even.maxPond[pond]! - fine.maxPond[pond]!);
}

function multiply(from: Float64Array, factors: Float64Array, window: readonly [number, number], into: Float64Array): void {
  for (let i = window[0]; i < window[1]; i += 1) into[i] = from[i]! * factors[i]!;
}

/**
 * Value below which a share of a sorted list lies, by straight lines between its places.
 * @param count length of the whole list, where only its beginning is given
 */
export function quantile(sorted: readonly number[], share: number, count = sorted.length): number {
  const place = share * (count - 1);
  const i = Math.floor(place);
  const low = sorted[i]!;
  return low + ((sorted[i + 1] ?? low) - low) * (place - i);
}
