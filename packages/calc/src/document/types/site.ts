// The site: what must stay dry, where water gathers, what the ground is like. SI units, levels above the job's own datum [m].
import type { OutletKind } from './outletPart.ts';
import type { Plan } from './plan.ts';

export interface Site {
  readonly datum: { readonly benchMark: string; readonly level: number };
  /** How the survey closed on its bench mark [m] and over how many set-ups; null when it was not closed or not surveyed. */
  readonly closure: { readonly misclosure: number; readonly setUps: number } | null;
  /** Area of the lot [m2], null when not known. */
  readonly lotArea: number | null;
  readonly sills: readonly Sill[];
  readonly spotLevels: readonly SpotLevel[];
  /** Lines along which the ground breaks, and lines that no water crosses. Together with the spot levels they make the surface. */
  readonly breaklines: readonly Breakline[];
  readonly walls: readonly Wall[];
  readonly lowSpots: readonly LowSpot[];
  readonly catchments: readonly Catchment[];
  readonly candidateOutlets: readonly CandidateOutlet[];
  readonly soil: Soil;
  readonly existingDrains: readonly ExistingDrain[];
  readonly utilities: readonly Utility[];
  readonly observations: readonly Observation[];
  /** The drawn plan; null when none was drawn. */
  readonly plan: Plan | null;
}

/** The lowest place at which water can enter what must stay dry. */
export interface Sill {
  readonly id: string;
  readonly name: string;
  readonly kind: 'door' | 'garage' | 'vent' | 'equipment';
  readonly level: number;
  /** Low spot whose pond reaches this sill first. */
  readonly lowSpot: string;
  /** Fall of the soil away from the house over the first 10 ft beside this sill [m]; null where it is paved or was not measured. */
  readonly soilFall: number | null;
  /** Step down from this sill to its landing before and after the works [m]; null when the works leave the landing alone. */
  readonly landing: { readonly kind: 'egress' | 'other'; readonly before: number; readonly after: number } | null;
}

export interface SpotLevel {
  readonly id: string;
  readonly name: string;
  readonly level: number;
  /** Distance from the sill along the section [m], null when the shot is not on it. */
  readonly station: number | null;
  /** Place on the plan [m], null when it was not measured. */
  readonly position: Position | null;
}

/** A place on the plan: x to the right, y upwards from the plan's own origin [m]; where north lies is said by the plan. */
export interface Position {
  readonly x: number;
  readonly y: number;
}

export interface Breakline {
  readonly id: string;
  readonly name: string;
  readonly points: readonly (Position & { readonly level: number })[];
}

export interface Wall {
  readonly id: string;
  readonly name: string;
  readonly points: readonly Position[];
}

export interface StageArea {
  readonly level: number;
  readonly area: number;
}

export interface LowSpot {
  readonly id: string;
  readonly name: string;
  /** Rising levels with water-surface area; the first is the lowest point. */
  readonly stageArea: readonly StageArea[];
  /** Level at which water would escape over the rim, and the width it escapes over. */
  readonly rimLevel: number;
  readonly spillWidth: number;
  /** Low spot that receives what escapes over the rim; null when it leaves the site. */
  readonly spillsTo: string | null;
  /** Steady loss at any pond level: an old drain by its hose test, soakage [m3/s]. */
  readonly existingLoss: number;
  /** Distance of the lowest point from the sill along the section [m]. */
  readonly station: number;
}

export type Surface = 'roof' | 'paving' | 'lawn' | 'bed' | 'gravel' | 'permeablePaving' | 'pool' | 'neighbour';

/** Where the runoff of a surface goes: into a low spot, into a part of the system, or off the site. */
export type DrainsTo =
  | { readonly kind: 'lowSpot'; readonly id: string }
  | { readonly kind: 'part'; readonly id: string }
  | { readonly kind: 'offSite' };

export interface Catchment {
  readonly id: string;
  readonly name: string;
  readonly surface: Surface;
  readonly area: number;
  /** Share of rain that runs off [-], 0 to 1. */
  readonly coefficient: number;
  /** Rain kept on the surface before any runs off [mm]. */
  readonly depressionStorage: number;
  readonly flowLength: number;
  readonly slope: number;
  /** Manning n of the surface as overland flow. */
  readonly roughness: number;
  readonly loss: Loss;
  /** How its runoff arrives: over the surface, at once (hard surfaces under one minute), or by the unit hydrograph (above 1 acre only). */
  readonly response: 'kinematic' | 'instantaneous' | 'unitHydrograph';
  readonly drainsTo: DrainsTo;
}

/**
 * What of the rain does not run off.
 * volumetric: the coefficient and depression storage of the catchment. The others keep the depression storage and do not read the coefficient.
 */
export type Loss =
  | { readonly method: 'volumetric' }
  | { readonly method: 'curveNumber'; readonly curveNumber: number }
  /** Conductivity [m/s], suction head at the wetting front [m], moisture deficit [-]. */
  | { readonly method: 'greenAmpt'; readonly conductivity: number; readonly suctionHead: number; readonly moistureDeficit: number }
  /** Infiltration capacity at the start and at the end [m/s], decay [1/s]. */
  | { readonly method: 'horton'; readonly initial: number; readonly final: number; readonly decay: number };

export interface CandidateOutlet {
  readonly id: string;
  readonly name: string;
  readonly kind: OutletKind;
  readonly level: number;
  /** Length of pipe from the collector to it [m]. */
  readonly distance: number;
  /** Height of standing water above `level` to allow for [m]. */
  readonly tailwater: number;
  /** Collector invert at the head of that pipe. */
  readonly collectorInvert: number;
}

export interface Soil {
  readonly texture: string;
  /** Measured infiltration rate [m/s], null when not tested. */
  readonly infiltrationRate: number | null;
  /** Level of the seasonal high water table, null when not known. */
  readonly seasonalHighWaterTable: number | null;
  /** Level of the ground at the basin or pit, for flotation with water at grade. */
  readonly gradeLevel: number;
  /** Depth to which the ground freezes [m], null when not known. */
  readonly frostDepth: number | null;
}

export interface ExistingDrain {
  readonly id: string;
  readonly name: string;
  readonly diameter: number;
  /** Hose flow of the test [m3/s] and the time until it backed up [s]; null when it never did. */
  readonly hoseFlow: number;
  readonly backedUpAfter: number | null;
  readonly dyeSeen: boolean;
  /** Distance at which a camera stopped [m], null when none was run. */
  readonly cameraStop: number | null;
}

export interface Utility {
  readonly id: string;
  readonly kind: 'power' | 'gas' | 'communication' | 'water' | 'reclaimed' | 'sewer' | 'private';
  readonly name: string;
  readonly station: number | null;
  readonly level: number | null;
  /** Hand-dig strip each side of the mark [m]. */
  readonly tolerance: number;
}

/** A fact seen on site that can stop a design or hand it to an engineer. */
export interface Observation {
  readonly id: string;
  readonly kind:
    | 'retainingWallOver4ft' | 'leaningWall' | 'slabOffset' | 'voidUnderSlab' | 'movingFooting' | 'postTensionSlab' | 'publicPipe'
    | 'sewage' | 'waterOnDryDays' | 'externalFlood' | 'neighbourFill' | 'lotLineDispute' | 'septicNear' | 'wetland';
  readonly note: string;
}
