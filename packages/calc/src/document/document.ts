import type { Construction } from './types/construction.ts';
import type { CatchBasin, Channel, Cleanout, Gutter, Leader, Pipe, RoofLine, Swale, Underdrain } from './types/gravityParts.ts';
import type { Outlet } from './types/outletPart.ts';
import type { Basin, CheckValve, DischargeLine, Pump, WeepHole } from './types/pumpedParts.ts';
import type { Rain } from './types/rain.ts';
import type { Site } from './types/site.ts';

export type * from './types/construction.ts';
export type * from './types/gravityParts.ts';
export type * from './types/outletPart.ts';
export type * from './types/plan.ts';
export type * from './types/pumpedParts.ts';
export type * from './types/rain.ts';
export type * from './types/site.ts';

/**
 * The design document: the whole input of one evaluation. SI units throughout
 * (m, m2, m3, s, m3/s, slope as m/m); only rain depths are in millimetres.
 * Levels are heights above the job's own datum, in metres.
 * There is no money in it, and nothing in it is optional: what is not known is `null`.
 */
export interface DesignDocument {
  readonly schema: 'yardfall.design';
  readonly version: 2;
  readonly title: string;
  /** Seed of every random draw that an evaluation makes. */
  readonly seed: number;
  readonly site: Site;
  readonly rain: Rain;
  readonly system: System;
  readonly construction: Construction;
  /** Limits that the company has set otherwise than the published or built-in ones. */
  readonly limits: readonly LimitOverride[];
  /** Where the copies of levels and rain in this document were taken from. */
  readonly sources: {
    readonly survey: SourceStamp | null;
    readonly rain: SourceStamp | null;
    /** Parts whose figures were taken from the company's library; nothing there changes them afterwards. */
    readonly library?: readonly LibraryStamp[] | undefined;
  };
}

/** Another value of a limit, with who set it, when, and why. A looser one needs a reason; see findings/limits.ts for the names. */
export interface LimitOverride {
  readonly limit: string;
  readonly pass: number;
  readonly fail: number;
  readonly by: string;
  readonly at: string;
  readonly why: string;
}

/** A part that was copied from a library, as it stood then. */
export interface LibraryStamp extends SourceStamp {
  readonly part: string;
}

export interface SourceStamp {
  readonly id: string;
  readonly sha256: string;
  readonly takenAt: string;
}

export interface System {
  readonly parts: readonly Part[];
}

export type Part =
  | Gutter | Leader | RoofLine | Channel | CatchBasin | Pipe | Cleanout | Underdrain | Swale
  | Basin | Pump | CheckValve | WeepHole | DischargeLine | Outlet;

export type PartKind = Part['kind'];
