/** What goes wrong, or is left out, in one what-if. */
export type WhatIfCase =
  | 'noSystem' | 'pumpFailed' | 'powerOut' | 'grateHalfBlocked' | 'emitterHalfBlocked' | 'gutterOverflowing' | 'outletSaturated' | 'checkValveMissing';

/** One what-if in one storm: by the twin that runs only above its on level, everything else as designed. */
export interface WhatIf {
  readonly case: WhatIfCase;
  /** Part that fails; null where it is not one part. */
  readonly at: string | null;
  readonly returnPeriod: number;
  /** Time without power, from and to [s], at its worst start; null in every other case. */
  readonly outage: readonly [number, number] | null;
  /** Highest level of each low spot [m], in the order of the document. */
  readonly maxLevels: readonly number[];
  readonly sills: readonly WhatIfSill[];
}

export interface WhatIfSill {
  readonly sill: string;
  /** Height of the sill over the highest level [m]; negative: water stands over it. */
  readonly freeboard: number;
  readonly minutesOverSill: number;
}

/** Largest storm of the rain table that is kept out, and every smaller one with it. */
export interface ProtectedStorm {
  /** [years]; null when already the smallest storm of the table comes in. */
  readonly returnPeriod: number | null;
  /** The largest storm of the table passes: "or more" is said, and nothing beyond the table. */
  readonly wholeTable: boolean;
  /** Least freeboard over all sills in that storm, lower end of the band [m]; null without one. */
  readonly lower: number | null;
  /** Smallest storm of the table that comes in [years]; null when none does. */
  readonly failsAt: number | null;
}

export interface Protection {
  /** Most of a grate's opening that is counted on: half [-]. */
  readonly openShare: number;
  /** Length of the outage [s]. */
  readonly outage: number;
  readonly powerOn: ProtectedStorm;
  /** Power out for that long, at the start that is worst for the middle run; null without a pump. */
  readonly powerOut: ProtectedStorm | null;
  /** All roof water on the low spot; null where no gutter stands. */
  readonly gutterOverflowing: ProtectedStorm | null;
}

export type RankedInput =
  | 'rain' | 'coefficient' | 'sillShot' | 'pondShot' | 'rimShot' | 'basinShot' | 'invertShot' | 'outletShot' | 'storage' | 'pump' | 'friction' | 'loss';

/**
 * What hangs on one input within its range.
 * gravity: whether gravity reaches the outlet, pump or no pump. need: whether the site floods at all without a system.
 * freeboard: whether the freeboard of the designed or the check storm meets its limit.
 */
export type Decision = 'gravity' | 'need' | 'freeboard';

/** One input moved from its low to its high end, all others in the middle, in the designed storm. */
export interface RankedSwing {
  readonly input: RankedInput;
  /** Sill, low spot, basin or outlet it belongs to, or the kind of surface; null for the whole job. */
  readonly at: string | null;
  /** Least freeboard over all sills with the input at its low and at its high end [m]. */
  readonly low: number;
  readonly high: number;
  /** Height between the two [m]. */
  readonly swing: number;
  readonly decides: Decision | null;
}

export interface BandResult {
  readonly returnPeriod: number;
  readonly samples: number;
  /** Least freeboard over all sills with every input in the middle [m]. */
  readonly middle: number;
  /** The inputs that decide something first, then by their swing. */
  readonly ranking: readonly RankedSwing[];
}
