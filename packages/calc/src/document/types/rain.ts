// The rain of a design. Durations [s], depths [mm].

export interface Rain {
  readonly table: RainTable;
  /** Climate allowance added to every depth, 0 to 0.2 [-]. */
  readonly allowance: number;
  readonly storm: Storm;
  /** A storm that was measured, evaluated beside the designed ones; null without one. */
  readonly recorded: RecordedStorm | null;
  /** Design storm for entry at the sill and the check storm [years]. */
  readonly designReturnPeriod: number;
  readonly checkReturnPeriod: number;
}

/** Designed storm: nested blocks from the table, or an NRCS 24-hour type for reference. Duration and block length [s]. */
export interface Storm {
  readonly method: 'alternatingBlock' | 'nrcsI' | 'nrcsIA' | 'nrcsII' | 'nrcsIII';
  readonly duration: number;
  readonly block: number;
}

export interface RecordedStorm {
  readonly name: string;
  readonly source: string;
  /** Length of one reading [s] and the depth of each [mm]. */
  readonly step: number;
  readonly depths: readonly number[];
}

export interface RainTable {
  readonly name: string;
  readonly source: string;
  /** True when the table is invented or otherwise not for building from. */
  readonly illustrative: boolean;
  readonly series: 'partialDuration' | 'annualMaximum';
  /** [s], rising. */
  readonly durations: readonly number[];
  /** [years], rising. */
  readonly returnPeriods: readonly number[];
  /** Depths [mm], one row per duration, one column per return period. */
  readonly depths: readonly (readonly number[])[];
  /** 90 % limits of the same shape, null when the source gives none. */
  readonly lower: readonly (readonly number[])[] | null;
  readonly upper: readonly (readonly number[])[] | null;
}
