import type { FlowTable, LevelTable } from './levelTable.ts';

/** What the router works on: stores with a level, ways between them, and pumps. Plain numbers, no document. Indices count within each list. */
export interface RoutingModel {
  readonly ponds: readonly PondStore[];
  readonly basins: readonly BasinStore[];
  /** Boxes and joints at which paths meet. */
  readonly junctions: readonly JunctionStore[];
  /** Dry wells and trenches at outlets. */
  readonly wells: readonly WellStore[];
  /** Sealed paths from a low spot into the first store downstream. */
  readonly links: readonly Link[];
  /** Pipes from a junction to the next store. */
  readonly conduits: readonly Conduit[];
}

export type StoreKind = 'pond' | 'junction' | 'well' | 'basin';

/** A store by its kind and its place in that list; null is out of the system. */
export interface StorePlace {
  readonly kind: StoreKind;
  readonly index: number;
}

/** What runs back to a low spot of all that leaves at an outlet. */
export interface Returns {
  readonly pond: number;
  readonly share: number;
}

export interface PondStore {
  readonly id: string;
  readonly storage: LevelTable;
  readonly rimLevel: number;
  readonly spillWidth: number;
  /** Low spot that takes what runs over the rim, -1 when it leaves the site. */
  readonly spillsTo: number;
  /** Steady loss while water stands [m3/s]. */
  readonly loss: number;
}

export interface JunctionStore {
  readonly id: string;
  /** The box and the conduits that fill as its level rises. */
  readonly storage: LevelTable;
}

export interface WellStore {
  readonly id: string;
  readonly storage: LevelTable;
  readonly area: number;
  readonly perimeter: number;
  /** Level of the top of the stone: sides above it do not soak. */
  readonly topLevel: number;
  /** Infiltration through base and wetted sides [m/s]. */
  readonly rate: number;
  /** Level at which the full store runs over, and the length of edge it runs over. */
  readonly crestLevel: number;
  readonly crestEdge: number;
  /** Low spot that takes the overflow, -1 when it leaves the site. */
  readonly overflowsTo: number;
  readonly returns: Returns | null;
}

export interface BasinStore {
  readonly id: string;
  /** Basin with the pipes and channels that fill as its level rises. */
  readonly storage: LevelTable;
  readonly offLevel: number;
  readonly onLevel: number;
  /** Lid level, and the length of its edge over which a full basin spills. */
  readonly lidLevel: number;
  readonly lidEdge: number;
  /** Low spot in which the lid lies, -1 when its water leaves the site. */
  readonly lidTo: number;
  /** The duty pumps together, their lines full and their outlets free; null without a pump. */
  readonly pump: PumpRating | null;
  readonly units: readonly PumpUnit[];
  readonly lines: readonly LineStore[];
}

/** One pump as its floats and its power see it. */
export interface PumpUnit {
  readonly id: string;
  readonly startLevel: number;
  readonly battery: boolean;
  /** Energy that its battery holds [J], Infinity on the mains; and the power that it draws [W]. */
  readonly energy: number;
  readonly inputPower: number;
}

/** A discharge line with the pumps that feed it. Flows are against the static head: level to be reached less level in the basin. */
export interface LineStore {
  readonly id: string;
  /** Places in the basin's `units`; bit k of a mask stands for the k-th of them. */
  readonly units: readonly number[];
  readonly liftLevel: number;
  /** Dry well at its end, -1 for a free outlet. */
  readonly well: number;
  readonly returns: Returns | null;
  readonly volume: number;
  /** Part of the content that falls back into the basin when the last pump stops; 0 with check valves. */
  readonly runBack: number;
  /** Net flow of the pumps of a mask through the full line, and into it while it fills. */
  readonly flow: (mask: number) => FlowTable;
  readonly filling: (mask: number) => FlowTable;
}

export interface PumpRating {
  readonly id: string;
  /** Net flow with a full line against basin level. */
  readonly flow: FlowTable;
  readonly lineVolume: number;
  readonly runBack: number;
}

/** A sealed path from a low spot to a store, or to an outlet whose water level is given. */
export interface Link {
  readonly id: string;
  readonly pond: number;
  /** Index of the basin, or -1 for anything else. */
  readonly basin: number;
  readonly to: StorePlace | null;
  readonly returns: Returns | null;
  /** Level of the grate; water enters from the pond above it. */
  readonly grateLevel: number;
  /** Grate as weir (C L, flow = x h^1.5) and as orifice (Cd A sqrt(2g), flow = x h^0.5), clogging counted. */
  readonly grateWeir: number;
  readonly grateOrifice: number;
  /** Mouth of the channel or box: centre level and Cd A sqrt(2g); null when it falls free. */
  readonly mouthLevel: number;
  readonly mouthOrifice: number | null;
  /** Head loss of the full path for a unit flow squared [s2/m5]. */
  readonly resistance: number;
  /** Level at the free end of the path, or the outlet's standing water when that is higher. */
  readonly freeLevel: number;
}

/** A pipe, or pipes in series, from a junction on. */
export interface Conduit {
  readonly id: string;
  readonly junction: number;
  /** A box has a mouth that drowns; pipes that meet in a joint have none. */
  readonly entrance: 'box' | 'joint';
  readonly to: StorePlace | null;
  readonly returns: Returns | null;
  readonly diameterUp: number;
  readonly invertUp: number;
  readonly diameterDown: number;
  readonly invertDown: number;
  readonly resistance: number;
  /** Water that stands at the outlet, -Infinity at a store. */
  readonly standing: number;
}
