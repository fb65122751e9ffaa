// Where the water leaves, and what must be answered about that place.
import type { PartBase } from './gravityParts.ts';

export type OutletKind = 'daylight' | 'emitter' | 'percolationTee' | 'dryWell' | 'curb' | 'stormConnection' | 'ditch';

export interface Outlet extends PartBase {
  readonly kind: 'outlet';
  readonly outletKind: OutletKind;
  /** Lid, flow line or invert where water leaves. */
  readonly level: number;
  /** Water surface that the line works against in a storm. */
  readonly waterLevel: number;
  /** Head to lift the lid [m]. */
  readonly openingHead: number;
  readonly distanceToFoundation: number;
  readonly distanceToLotLine: number;
  readonly insideCatchment: boolean;
  readonly groundLevel: number;
  readonly groundFallsAway: number;
  /** Percolation pit under the tee: plan area, stone depth below the tee, void ratio; null without one. */
  readonly pit: { readonly area: number; readonly depth: number; readonly voids: number; readonly bottomLevel: number } | null;
  /** A dry well or infiltration trench that stores and soaks away what arrives; null at every other outlet. */
  readonly dryWell: DryWell | null;
  /** Width of the throat where water leaves [m]; null when it is that of what leads here. */
  readonly exitDiameter: number | null;
  /** What the leaving water runs over; null when not told. */
  readonly exitGround: 'grass' | 'denseGrass' | 'stone' | null;
  /** Level at which water usually stands in a ditch or swale that receives the water; null when dry or not known. */
  readonly ordinaryWater: number | null;
  /** Share of what leaves here that runs back into a low spot; null when none does. */
  readonly returns: { readonly lowSpot: string; readonly share: number } | null;
  readonly questions: OutletQuestions;
}

export interface DryWell {
  /** Plan area [m2], perimeter [m], depth of the store above its bottom [m]. */
  readonly area: number;
  readonly perimeter: number;
  readonly depth: number;
  readonly voids: number;
  readonly bottomLevel: number;
  /** Design infiltration rate through base and wetted sides [m/s], the measured one over its safety factor. */
  readonly infiltrationRate: number;
  /** Whether there is a way over for what the store cannot hold. */
  readonly overflow: boolean;
  /** Low spot that takes the overflow; null when it leaves the site. */
  readonly overflowsTo: string | null;
}

export type Answer = 'yes' | 'no' | 'unknown' | 'notApplicable';

/** The outlet questions O1 to O10; "yes" means cleared, and `unknown` keeps a design provisional. */
export interface OutletQuestions {
  readonly outletTypeNamed: Answer;
  readonly ownerKnown: Answer;
  readonly permissionHeld: Answer;
  readonly notSanitarySewer: Answer;
  readonly notOntoNeighbour: Answer;
  readonly associationAgrees: Answer;
  readonly rightOfWayPermit: Answer;
  readonly noWetland: Answer;
  readonly clearOfSepticAndWell: Answer;
  readonly noEasementConflict: Answer;
}
