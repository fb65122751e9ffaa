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
