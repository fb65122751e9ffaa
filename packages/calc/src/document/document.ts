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
  readonly sources: { readonly survey: SourceStamp | null; readonly rain: SourceStamp | null };
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

export interface SourceStamp {
  readonly id: string;
  readonly sha256: string;
  readonly takenAt: string;
}

// ---------------------------------------------------------------- site

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

/** A place on the plan: x to the east, y to the north of the plan's own origin [m]. */
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

// ---------------------------------------------------------------- rain

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

// ---------------------------------------------------------------- system

export interface System {
  readonly parts: readonly Part[];
}

interface PartBase {
  readonly id: string;
  readonly name: string;
  /** Id of the part that this one drains to; null for an outlet and for a part that only belongs to another. */
  readonly drainsTo: string | null;
}

export type OutletKind = 'daylight' | 'emitter' | 'percolationTee' | 'dryWell' | 'curb' | 'stormConnection' | 'ditch';

export interface Gutter extends PartBase {
  readonly kind: 'gutter';
  readonly width: number;
  readonly depth: number;
  readonly length: number;
  readonly slope: number;
  /** Low spot that receives what the gutter and its leaders cannot carry. */
  readonly overflowsTo: string;
}

export interface Leader extends PartBase {
  readonly kind: 'leader';
  readonly diameter: number;
  readonly count: number;
}

/** A buried solid roof line that runs full under its own head to a lid on the lawn. */
export interface RoofLine extends PartBase {
  readonly kind: 'roofLine';
  readonly diameter: number;
  readonly length: number;
  readonly roughness: number;
  readonly bends90: number;
  readonly bends45: number;
  /** Lowest joint at the house that is not sealed. */
  readonly unsealedJointLevel: number;
}

export interface Grate {
  readonly openAreaRatio: number;
  readonly slotWidth: number;
  readonly locked: boolean;
  readonly loadClass: 'foot' | 'car' | 'truck';
  /** Share of the opening that is left when half dirty [-]. */
  readonly clogging: number;
}

export interface Channel extends PartBase {
  readonly kind: 'channel';
  readonly lowSpot: string;
  readonly length: number;
  /** Width at the top of the water way. */
  readonly width: number;
  readonly depth: number;
  /** Cross-section; a trapezoid narrows to `bottomWidth`, a round bottom is a half circle of the width below straight sides. */
  readonly shape: 'rectangular' | 'trapezoidal' | 'roundBottomed';
  readonly bottomWidth: number;
  /** Steps down along the floor toward the outlet: distance from the upstream end [m] and drop [m]; the rest of the floor is even. */
  readonly steps: readonly { readonly at: number; readonly drop: number }[];
  /** Invert at the upstream end and at the outlet end. */
  readonly invertUp: number;
  readonly invertDown: number;
  readonly roughness: number;
  readonly grateLevel: number;
  readonly grate: Grate;
  /** Flow arrives at the outlet from this many sides (1 end outlet, 2 middle outlet or outlets at both ends). */
  readonly outletSides: 1 | 2;
  /** Diameter of the outlet; null for an end that falls free. */
  readonly outletDiameter: number | null;
  readonly surround: number;
  readonly use: 'foot' | 'car';
}

export interface CatchBasin extends PartBase {
  readonly kind: 'catchBasin';
  readonly lowSpot: string;
  readonly grateLevel: number;
  readonly gratePerimeter: number;
  readonly grateOpenArea: number;
  readonly clogging: number;
  readonly invertOut: number;
  readonly sumpDepth: number;
}

export interface Pipe extends PartBase {
  readonly kind: 'pipe';
  readonly diameter: number;
  readonly length: number;
  readonly invertUp: number;
  readonly invertDown: number;
  readonly roughness: number;
  readonly material: 'smoothSolid' | 'corrugatedSolid' | 'perforated';
  readonly joints: 'glued' | 'gasketed' | 'pushFit';
  readonly coverMin: number;
  readonly underWheels: boolean;
  readonly bends90: number;
  readonly bends45: number;
  readonly longSweep: boolean;
  readonly cleanouts: number;
}

export interface Basin extends PartBase {
  readonly kind: 'basin';
  readonly diameter: number;
  readonly floorLevel: number;
  readonly rimLevel: number;
  readonly inletInvert: number;
  readonly offLevel: number;
  readonly onLevel: number;
  readonly alarmLevel: number;
  /** Calibrated marks of a basin that is no cylinder: level and volume below it, both rising; empty for a cylinder. */
  readonly marks: readonly { readonly level: number; readonly volume: number }[];
  readonly wall: 'solid' | 'perforated';
  readonly floatClearance: number;
  readonly floatKind: 'vertical' | 'electronic' | 'tether';
  /** Concrete collar against flotation [m3] and the empty weight of basin and lid [kg]. */
  readonly collarVolume: number;
  readonly emptyMass: number;
  readonly lidFixed: boolean;
}

export interface CurvePoint {
  readonly flow: number;
  readonly head: number;
}

/** Drains to its check valve or discharge line; stands in `basin`. */
export interface Pump extends PartBase {
  readonly kind: 'pump';
  readonly basin: string;
  readonly curveName: string;
  /** Datasheet points, flow rising, head falling; the last has flow 0 at shut-off or the first has. */
  readonly curve: readonly CurvePoint[];
  readonly solids: number;
  readonly minSubmergence: number;
  readonly role: 'duty' | 'standby';
  /** Own start level of a standby pump; null: it starts at the basin's alarm level. A duty pump starts at the basin's on level. */
  readonly startLevel: number | null;
  readonly power: 'mains' | 'battery';
  /** Energy that a battery holds for it [J] and the power that it draws [W]; null on the mains. */
  readonly energy: number | null;
  readonly inputPower: number | null;
}

export interface CheckValve extends PartBase {
  readonly kind: 'checkValve';
  readonly equivalentLength: number;
  readonly present: boolean;
}

/** A small hole in the riser below the check valve that lets trapped air out. Belongs to `pump`. */
export interface WeepHole extends PartBase {
  readonly kind: 'weepHole';
  readonly pump: string;
  readonly diameter: number;
}

export interface Fitting {
  readonly kind: 'bend90' | 'bend45' | 'tee' | 'ballValve';
  readonly count: number;
  readonly equivalentLength: number;
}

export interface DischargeLine extends PartBase {
  readonly kind: 'dischargeLine';
  readonly innerDiameter: number;
  readonly nominal: string;
  readonly length: number;
  readonly hazenWilliamsC: number;
  readonly fittings: readonly Fitting[];
  /** Highest point of the line when above the outlet's water surface, else null. */
  readonly highPoint: number | null;
  /** Lowest sag of the line that keeps water when it empties; null when it empties whole. */
  readonly lowestSag: number | null;
  /** Absolute roughness of the wall for Darcy-Weisbach outside the range of Hazen-Williams [m]. */
  readonly wallRoughness: number;
  readonly coverMin: number;
}

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

export interface Underdrain extends PartBase {
  readonly kind: 'underdrain';
  readonly diameter: number;
  readonly length: number;
  readonly invertUp: number;
  readonly invertDown: number;
  /** Steady ground-water inflow per length [m2/s], as typed or as the seepage below gives it. */
  readonly inflowPerLength: number;
  readonly seepage: Seepage | null;
}

/**
 * Ground water from which the inflow follows; conductivity [m/s], depths and heights [m].
 * interceptor: cuts off a flow down a slope. relief: lowers a table on `sides` sides down to a barrier.
 */
export type Seepage =
  | { readonly method: 'interceptor'; readonly conductivity: number; readonly fromTexture: boolean; readonly gradient: number; readonly depth: number }
  | {
    readonly method: 'relief'; readonly conductivity: number; readonly fromTexture: boolean; readonly waterAbove: number; readonly barrierBelow: number;
    readonly reach: number; readonly sides: 1 | 2;
  };

export interface Swale extends PartBase {
  readonly kind: 'swale';
  readonly length: number;
  readonly slope: number;
  readonly sideSlope: number;
  readonly depth: number;
  readonly roughness: number;
}

export interface Cleanout extends PartBase {
  readonly kind: 'cleanout';
  readonly diameter: number;
}

export type Part =
  | Gutter | Leader | RoofLine | Channel | CatchBasin | Pipe | Cleanout | Underdrain | Swale
  | Basin | Pump | CheckValve | WeepHole | DischargeLine | Outlet;

export type PartKind = Part['kind'];

// ---------------------------------------------------------------- construction

export interface Construction {
  readonly slabCuts: readonly SlabCut[];
  readonly trenches: readonly Trench[];
  readonly electrical: Electrical | null;
  readonly restoration: { readonly sodArea: number; readonly paverArea: number };
  readonly treesNear: boolean;
  readonly poolWithin3m: boolean;
  readonly trenchNearFooting: boolean;
  readonly foundationWithin1ft: boolean;
}

export interface SlabCut {
  readonly id: string;
  readonly name: string;
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  readonly reinforcement: 'none' | 'mesh' | 'bar';
  readonly part: string;
}

export interface Trench {
  readonly id: string;
  readonly name: string;
  readonly length: number;
  readonly width: number;
  readonly depth: number;
  readonly soil: 'sand' | 'loam' | 'clay';
  readonly part: string;
}

export interface Electrical {
  readonly dedicatedCircuit: boolean;
  readonly gfci: boolean;
  readonly extensionCord: boolean;
  readonly alarm: 'differentCircuit' | 'sameCircuitBattery' | 'none';
  readonly backup: 'none' | 'battery' | 'secondPump' | 'generatorInlet';
  readonly runLength: number;
  readonly current: number;
  /** Conductor resistance [ohm/m]. */
  readonly conductorResistance: number;
  readonly voltage: number;
  /** How the cable is buried and how deep [m]; null when not told. */
  readonly burial: { readonly method: 'direct' | 'conduit' | 'gfciCable'; readonly depth: number } | null;
  /** Level of the receptacle or junction that feeds the pump; null when not told. */
  readonly receptacleLevel: number | null;
}
