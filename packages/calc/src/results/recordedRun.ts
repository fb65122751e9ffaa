/** A measured storm: levels of the real run, one sample a `step` seconds, each the highest of its span; freeboards of real run and twins. */
export interface RecordedRun {
  readonly name: string;
  readonly step: number;
  readonly starts: number;
  readonly runTime: number;
  readonly levels: readonly { readonly lowSpot: string; readonly maxLevel: number; readonly levels: readonly number[] }[];
  readonly freeboards: readonly {
    readonly sill: string;
    readonly withSystem: number;
    readonly withoutSystem: number;
    readonly offTwin: number;
    readonly onTwin: number;
    readonly minutesOverSill: number;
    readonly minutesOverSillWithoutSystem: number;
  }[];
  readonly events: readonly { readonly time: number; readonly kind: 'pumpOn' | 'pumpOff'; readonly part: string }[];
}
