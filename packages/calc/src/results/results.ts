import type { BandResult, Protection, WhatIf } from './decisions.ts';
import type { HandDifference } from './handDifference.ts';
import type {
  BasinResult, ChannelResult, DryWellResult, ExistingDrainResult, GrateResult, GravityAnswer, GutterResult, LowSpotResult, OutletResult, PeakFlow, PipeResult, PumpResult, RoofLineResult, SwaleResult, UnderdrainResult, WellRun,
} from './partResults.ts';
import type { RecordedRun } from './recordedRun.ts';

export type * from './partResults.ts';

/** The whole output of one evaluation. SI units; see document.ts. */
export interface Evaluation {
  readonly calcVersion: string;
  readonly results: Results;
  readonly findings: readonly Finding[];
  readonly workings: readonly Working[];
  /** Largest relative mass error of any routing run [-]. */
  readonly massError: number;
}

export interface Results {
  readonly gravity: readonly GravityAnswer[];
  readonly peaks: readonly PeakFlow[];
  readonly gutters: readonly GutterResult[];
  readonly channels: readonly ChannelResult[];
  readonly pipes: readonly PipeResult[];
  readonly basins: readonly BasinResult[];
  readonly pumps: readonly PumpResult[];
  readonly outlets: readonly OutletResult[];
  readonly lowSpots: readonly LowSpotResult[];
  /** One entry per sill and return period of the table's 2, 10, 25 and 100 years. */
  readonly freeboards: readonly Freeboard[];
  /** Designed storm, the real run, for the storm graph. */
  readonly storm: StormRun | null;
  /** A measured storm beside the designed ones; null without one. */
  readonly recorded: RecordedRun | null;
  /** The slider family: every return period of 2, 10, 25, 100 x every case. */
  readonly family: readonly FamilyMember[];
  readonly outage: OutageResult | null;
  /** What happens when something fails, in every storm; empty in an evaluation without the what-ifs. */
  readonly whatIfs: readonly WhatIf[];
  /** What moves the freeboard most, and the storm that is kept out; null in an evaluation without the band. */
  readonly band: BandResult | null;
  readonly protection: Protection | null;
  readonly existingDrains: readonly ExistingDrainResult[];
  readonly grates: readonly GrateResult[];
  readonly roofLines: readonly RoofLineResult[];
  readonly swales: readonly SwaleResult[];
  readonly underdrains: readonly UnderdrainResult[];
  readonly dryWells: readonly DryWellResult[];
  /** Each dry well in the designed storm. */
  readonly wells: readonly WellRun[];
  readonly quantities: readonly Quantity[];
  readonly referrals: readonly string[];
  /** The hand calculation beside the coupled model, per return period; empty in an evaluation without the band. */
  readonly handDifferences: readonly HandDifference[];
}

export interface Freeboard {
  readonly sill: string;
  readonly returnPeriod: number;
  readonly withSystem: number;
  readonly withoutSystem: number;
  readonly offTwin: number;
  readonly onTwin: number;
  /** Lower and upper end of the band on the ON-twin. */
  readonly lower: number;
  readonly upper: number;
  readonly minutesOverSill: number;
  readonly minutesOverSillWithoutSystem: number;
}

export type FamilyCase = 'noSystem' | 'system' | 'powerOut' | 'gutterOverflowing';

export interface FamilyMember {
  readonly case: FamilyCase;
  readonly returnPeriod: number;
  readonly maxLevel: number;
  readonly minutesOverSill: number;
  /** Water level of the first low spot, one sample a `step` seconds from `start`. */
  readonly start: number;
  readonly step: number;
  readonly levels: readonly number[];
}

export interface StormRun {
  readonly returnPeriod: number;
  readonly start: number;
  readonly step: number;
  readonly intensity: readonly number[];
  readonly inflow: readonly number[];
  readonly pumpFlow: readonly number[];
  readonly pondLevel: readonly number[];
  readonly basinLevel: readonly number[];
  readonly events: readonly { readonly time: number; readonly kind: 'pumpOn' | 'pumpOff'; readonly part: string }[];
  readonly starts: number;
  readonly runTime: number;
  readonly maxPond: number;
}

export interface OutageResult {
  readonly returnPeriod: number;
  /** Longest pump-off time that floods nothing over all start times [s]. */
  readonly longestSafe: number;
  readonly cases: readonly { readonly duration: number; readonly worstFreeboard: number; readonly fromPeak: number }[];
}

export interface Quantity {
  readonly code: string;
  readonly part: string | null;
  readonly amount: number;
  readonly unit: 'm' | 'm2' | 'm3' | 'each' | 'kg' | 'bag80' | 'cutMetreInch';
  readonly origin: 'drawing' | 'allowance';
}

export type Severity = 'stop' | 'caution' | 'note' | 'refer';

export type Params = Readonly<Record<string, number | string>>;

/** One JSON-patch-like step on the document: replace the value at `path`. */
export interface Remedy {
  readonly code: string;
  readonly params: Params;
  readonly patch: readonly { readonly path: string; readonly value: number | string | boolean }[];
}

export interface Finding {
  /** Check id and case, for example "L5.freeboardShort". */
  readonly code: string;
  readonly check: string;
  readonly severity: Severity;
  /** Id of the part, sill, low spot or outlet that it stands at; null for the whole job. */
  readonly at: string | null;
  readonly params: Params;
  /** The limit in force: pass, fail; and by, at, why where the company has set it. */
  readonly limit: Params;
  readonly source: string;
  readonly remedy: Remedy | null;
}

export interface Working {
  /** JSON pointer of the result in the evaluation, for example "/results/pumps/0/dutyAtOff/flow". */
  readonly result: string;
  /** The result's name without its place: "pumps.dutyAtOff.flow". Its words stand in the text package. */
  readonly code: string;
  /** Id of the part, sill, low spot or outlet that it is about; null for the whole job. */
  readonly at: string | null;
  /** An equation in the symbols below; its left side is the value, or what `solves` says. */
  readonly formula: string;
  readonly symbols: readonly WorkingSymbol[];
  /** Intermediate values in order, each from the symbols and the values before it. */
  readonly steps: readonly WorkingStep[];
  /** Symbol that was found by trial: put in, it gives the left side, which then is a symbol too. Null when the formula gives the value outright. */
  readonly solves: string | null;
  readonly value: number;
  readonly unit: string;
  readonly source: string;
  /** How far the formula by hand may stand off, as a share of the value: tables that the engine reads between. */
  readonly tolerance: number;
}

/** `meaning` is a text code; `from` a JSON pointer into the document or the evaluation, null for a constant of the method or an outcome of the routing. */
export interface WorkingSymbol {
  readonly symbol: string;
  readonly meaning: string;
  readonly value: number;
  readonly unit: string;
  readonly from: string | null;
}

export interface WorkingStep {
  readonly symbol: string;
  readonly meaning: string;
  readonly formula: string;
  readonly value: number;
  readonly unit: string;
}

/** Thrown for a document that cannot be evaluated: a code, the path in the document, and parameters for the sentence. */
export interface DocumentProblem {
  readonly code: string;
  readonly path: string;
  readonly params: Params;
}
