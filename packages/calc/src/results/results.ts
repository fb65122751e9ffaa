import type { BandResult, Protection, WhatIf } from './decisions.ts';
import type { HandDifference } from './handDifference.ts';
import type { RecordedRun } from './recordedRun.ts';

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

export interface GravityAnswer {
  readonly outlet: string;
  readonly neededLevel: number;
  /** Positive: gravity is short by this height [m]; negative: to spare. */
  readonly shortfall: number;
  readonly shortfallWithMargin: number;
  readonly feasible: boolean;
}

export interface PeakFlow {
  readonly returnPeriod: number;
  readonly target: string;
  /** 5-minute rational peak with and without the roof diverted [m3/s]. */
  readonly flow: number;
}

export interface GutterResult {
  readonly part: string;
  readonly capacity: number;
  readonly leaderCapacity: number;
  readonly demand: number;
  readonly overflow: number;
}

export interface ChannelResult {
  readonly part: string;
  readonly returnPeriod: number;
  readonly flow: number;
  /** Depth at the upstream end with a free, frictionless, level end: sqrt(3) * y_c. */
  readonly depthFreeFrictionless: number;
  readonly depthFree: number;
  /** Greatest depth with the real end. */
  readonly depth: number;
  readonly endCondition: 'critical' | 'outlet';
  readonly share: number;
  readonly profile: readonly { readonly x: number; readonly depth: number }[];
}

export interface PipeResult {
  readonly part: string;
  readonly slope: number;
  readonly fullFlow: number;
  readonly fullVelocity: number;
  readonly designFlow: number;
  readonly share: number;
  readonly depthRatio: number;
  readonly velocity: number;
  readonly tractiveStress: number;
}

export interface BasinResult {
  readonly part: string;
  readonly workingVolume: number;
  readonly worstStartsPerHour: number;
  readonly aloneRunTime: number;
  readonly flotationAtWaterTable: number | null;
  readonly flotationAtGrade: number;
  readonly upliftAtWaterTable: number | null;
}

export interface DutyPoint {
  readonly basinLevel: number;
  readonly staticHead: number;
  readonly flow: number;
  readonly head: number;
  readonly velocity: number;
}

export interface PumpResult {
  readonly part: string;
  readonly line: string;
  readonly outlet: string;
  readonly equivalentLength: number;
  readonly dutyAtOff: DutyPoint;
  readonly dutyAtOn: DutyPoint;
  readonly lineVolume: number;
  /** Run-back without the check valve, and as a share of the working volume. */
  readonly runBack: number;
  readonly runBackShare: number;
  readonly weepFlow: number;
  readonly weepShare: number;
  readonly systemCurve: readonly CurveSample[];
  readonly pumpCurve: readonly CurveSample[];
}

export interface CurveSample {
  readonly flow: number;
  readonly head: number;
}

export interface OutletResult {
  readonly part: string;
  readonly pitVolume: number | null;
  readonly lineVolume: number;
  /** Flow and velocity with which the design storm leaves; null where nothing that is computed leads there. */
  readonly exitFlow: number | null;
  readonly exitVelocity: number | null;
}

export interface LowSpotResult {
  readonly lowSpot: string;
  readonly volumeToSill: number;
  readonly volumeToRim: number;
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

export interface ExistingDrainResult {
  readonly drain: string;
  readonly backedUpVolume: number | null;
  readonly blindLength: number | null;
}

/** Capacity of an inlet's grate at the allowed head, and the flow that it gets in the design storm [m3/s]. */
export interface GrateResult {
  readonly part: string;
  readonly capacity: number;
  readonly flow: number;
}

export interface RoofLineResult {
  readonly part: string;
  readonly flow: number;
  /** Level to which water stands at the house while the line carries its design flow [m]. */
  readonly standingLevel: number;
  /** Water that stays in the line between storms [m3]. */
  readonly volume: number;
}

export interface SwaleResult {
  readonly part: string;
  readonly flow: number;
  readonly depth: number;
  readonly velocity: number;
  readonly topWidth: number;
  /** Depth over the depth that is built. */
  readonly share: number;
}

export interface UnderdrainResult {
  readonly part: string;
  /** Steady ground water that it takes [m3/s]. */
  readonly inflow: number;
}

export interface DryWellResult {
  readonly part: string;
  /** Water that its voids hold [m3], soakage when full [m3/s], time in which it empties [s], null where nothing soaks away. */
  readonly store: number;
  readonly soakage: number;
  readonly emptyTime: number | null;
}

export interface WellRun {
  readonly part: string;
  readonly returnPeriod: number;
  readonly highestLevel: number;
  /** What the soil took and what ran over in the storm [m3]. */
  readonly soaked: number;
  readonly overflowed: number;
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
