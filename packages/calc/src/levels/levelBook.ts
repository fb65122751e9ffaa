/** One row of the field book. Lengths in metres; what the row does not hold is null. */
export interface LevelReading {
  readonly id: string;
  readonly point: string;
  readonly backsight: number | null;
  readonly intermediate: number | null;
  readonly foresight: number | null;
  /** Height above the bench mark, for a rod that reads it straight. */
  readonly direct: number | null;
}

export interface BenchMark {
  readonly name: string;
  readonly level: number;
}

export interface LevelBook {
  readonly mode: 'heightOfInstrument' | 'direct';
  readonly benchMark: BenchMark;
  readonly readings: readonly LevelReading[];
  /** Known mark on which the run ends; null when it ends on its own bench mark or does not close. */
  readonly closingOn: BenchMark | null;
}

/** Limits of misclosure [m], for the whole run or times the square root of the set-ups. */
export interface LevelLimits {
  readonly pass: number;
  readonly warn: number;
  readonly per: 'run' | 'rootOfSetUps';
}

export interface ReducedPoint {
  readonly point: string;
  readonly level: number;
  /** Level after the misclosure is spread over the set-ups; equal to `level` when the run does not close. */
  readonly adjustedLevel: number;
  readonly heightOfInstrument: number | null;
  /** Number of the instrument set-up, from 1; 0 for the bench mark itself. */
  readonly setUp: number;
  readonly readingId: string;
  readonly turningPoint: boolean;
}

export interface LevelProblem {
  readonly code:
    | 'levels.noReadings' | 'levels.noBacksightFirst' | 'levels.backsightOnUnknownPoint' | 'levels.noSetUp' | 'levels.emptyReading'
    | 'levels.twoSights' | 'levels.negativeRod' | 'levels.foresightAboveInstrument' | 'levels.rodTooLong' | 'levels.notFinite'
    | 'levels.wrongMode' | 'levels.repeatedId';
  /** Null for a problem of the whole book. */
  readonly readingId: string | null;
  readonly params: Readonly<Record<string, number | string>>;
}

export interface LevelSums {
  readonly backsights: number;
  readonly foresights: number;
  /** Sum of backsights less sum of foresights. */
  readonly difference: number;
  /** Last level less first level, over every set-up in turn; the two must agree. */
  readonly levelDifference: number;
  readonly agrees: boolean;
}

export interface ReducedLevels {
  readonly points: readonly ReducedPoint[];
  readonly setUps: number;
  /** Null in direct mode. */
  readonly sums: LevelSums | null;
  /** Computed less known level at the closing mark [m]; null when the run does not close. */
  readonly misclosure: number | null;
  readonly allowable: { readonly pass: number; readonly warn: number };
  readonly verdict: 'pass' | 'warn' | 'fail' | 'notClosed';
  readonly problems: readonly LevelProblem[];
}
