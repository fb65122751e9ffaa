import type { DesignDocument, Sill } from '../document/document.ts';
import { buildBareModel, buildModel } from '../routing/buildModel.ts';
import { stormInflow, type InflowCase } from '../routing/inflow.ts';
import type { RoutingModel } from '../routing/model.ts';
import { runStorm, type RunOptions, type RunResult, type StormInflow } from '../routing/run.ts';
import { stormRunoff, type StormRunoff } from '../routing/storm.ts';
import { OutageSearch } from './outageSearch.ts';

/** Return periods that every evaluation answers for beside the document's own, where the table holds them [years]. */
export const standardPeriods: readonly number[] = [2, 10, 25, 100];
/** Storm of the outage question [years]. Source: check E5. */
export const outagePeriod = 10;

/** What the topics of one evaluation share: models, storms and the runs made so far. */
export class EvaluationContext {
  readonly document: DesignDocument;
  readonly periods: readonly number[];
  readonly model: RoutingModel;
  readonly sills: readonly { readonly sill: Sill; readonly pond: number; readonly level: number }[];
  massError = 0;
  private readonly storms: Map<number, StormRunoff>;
  private readonly inflows = new Map<string, StormInflow>();
  private readonly runs = new Map<string, RunResult>();
  private bare: RoutingModel | null = null;
  private readonly searches = new Map<number, OutageSearch>();

  /** @param model the model of the document where it was made before */
  constructor(document: DesignDocument, storms: Map<number, StormRunoff> = new Map(), model: RoutingModel = buildModel(document)) {
    this.storms = storms;
    const { returnPeriods } = document.rain.table;
    const low = returnPeriods[0]!;
    const high = returnPeriods[returnPeriods.length - 1]!;
    this.document = document;
    const asked = new Set([...standardPeriods, document.rain.designReturnPeriod, document.rain.checkReturnPeriod]);
    this.periods = [...asked].filter((period) => period >= low && period <= high).sort((a, b) => a - b);
    this.model = model;
    this.sills = document.site.sills.map((sill) => ({
      sill, level: sill.level, pond: document.site.lowSpots.findIndex((spot) => spot.id === sill.lowSpot),
    }));
  }

  get bareModel(): RoutingModel {
    this.bare ??= buildBareModel(this.document);
    return this.bare;
  }

  get hasSystem(): boolean {
    return this.document.system.parts.length > 0;
  }

  get hasPump(): boolean {
    return this.model.basins.some((basin) => basin.pump !== null);
  }

  /** The same site in the same storms with another system; its mass error is counted here by `count`. */
  variant(document: DesignDocument): EvaluationContext {
    return new EvaluationContext(document, this.storms);
  }

  count(variant: EvaluationContext): void {
    this.massError = Math.max(this.massError, variant.massError);
  }

  outageSearch(returnPeriod: number): OutageSearch {
    const search = this.searches.get(returnPeriod) ?? new OutageSearch(this, returnPeriod);
    this.searches.set(returnPeriod, search);
    return search;
  }

  storm(returnPeriod: number): StormRunoff {
    const known = this.storms.get(returnPeriod);
    if (known !== undefined) return known;
    const made = stormRunoff(this.document, returnPeriod);
    this.storms.set(returnPeriod, made);
    return made;
  }

  inflow(returnPeriod: number, inflowCase: InflowCase): StormInflow {
    const key = `${returnPeriod} ${inflowCase}`;
    const known = this.inflows.get(key);
    if (known !== undefined) return known;
    const made = stormInflow(this.document, this.storm(returnPeriod), inflowCase);
    this.inflows.set(key, made);
    return made;
  }

  /** One routing run; the same question is answered once. Its mass error counts for the whole evaluation. */
  run(returnPeriod: number, inflowCase: InflowCase, options: Omit<RunOptions, 'sills'>): RunResult {
    const key = `${returnPeriod} ${inflowCase} ${options.mode} ${options.pace ?? ''} ${options.outage?.join(' ') ?? ''} ${options.window?.join(' ') ?? ''}`;
    const known = this.runs.get(key);
    if (known !== undefined && (options.record !== true || known.samples !== null)) return known;
    const model = inflowCase === 'bare' ? this.bareModel : this.model;
    const result = runStorm(model, this.inflow(returnPeriod, inflowCase), { ...options, sills: this.sills });
    this.counted(result);
    this.runs.set(key, result);
    return result;
  }

  /** A run made elsewhere, its mass error counted with the others. */
  counted(result: RunResult): RunResult {
    this.massError = Math.max(this.massError, result.massError);
    return result;
  }

  /** Time at which the largest block of the design storm begins [s]. */
  get peakTime(): number {
    const { intensity, step } = this.storm(this.document.rain.designReturnPeriod);
    let peak = 0;
    for (let i = 1; i < intensity.length; i += 1) if (intensity[i]! > intensity[peak]!) peak = i;
    return peak * step;
  }
}
