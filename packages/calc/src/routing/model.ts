import type { FlowTable, LevelTable } from './levelTable.ts';

/** What the router works on: stores with a level, links between them, and pumps. Plain numbers, no document. */
export interface RoutingModel {
  readonly ponds: readonly PondStore[];
  readonly basins: readonly BasinStore[];
  readonly links: readonly Link[];
}

export interface PondStore {
  readonly id: string;
  readonly storage: LevelTable;
  readonly rimLevel: number;
  readonly spillWidth: number;
  /** Steady loss while water stands [m3/s]. */
  readonly loss: number;
}

export interface BasinStore {
  readonly id: string;
  /** Basin with the pipe and the channel that fill as its level rises. */
  readonly storage: LevelTable;
  readonly offLevel: number;
  readonly onLevel: number;
  /** Lid level, and the length of its edge over which a full basin spills. */
  readonly lidLevel: number;
  readonly lidEdge: number;
  /** Pumped flow that leaves by the line, less what the weep hole returns; null without a pump. */
  readonly pump: PumpRating | null;
}

export interface PumpRating {
  readonly id: string;
  /** Net flow with a full line against basin level. */
  readonly flow: FlowTable;
  /** Flow into an empty line while it fills. */
  readonly filling: FlowTable;
  readonly lineVolume: number;
  /** Content that falls back into the basin at every stop; 0 with a check valve. */
  readonly runBack: number;
}

/** A sealed path from a low spot to a basin or to an outlet whose water level is given. */
export interface Link {
  readonly id: string;
  readonly pond: number;
  /** Index of the basin, or -1 for an outlet. */
  readonly basin: number;
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
