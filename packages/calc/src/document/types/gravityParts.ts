// Parts through which water runs by itself, from the gutter to the swale.

export interface PartBase {
  readonly id: string;
  readonly name: string;
  /** Id of the part that this one drains to; null for an outlet and for a part that only belongs to another. */
  readonly drainsTo: string | null;
}

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
