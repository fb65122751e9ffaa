import { SHARP_RIM_WEIR } from '../inlet/weir.ts';
import { conduitFlowAt } from './conduitFlow.ts';
import type { FlowAt } from './flowAt.ts';
import type { FlowTable } from './levelTable.ts';
import { linkFlowAt } from './linkFlow.ts';
import type { Conduit, LineStore, Link, WellStore } from './model.ts';
import { seepageAt } from './seepage.ts';
import { weirFlowAt } from './weirFlow.ts';

/** What a flux carries, for the books. */
export type FluxKind = 'spill' | 'loss' | 'seepage' | 'overflow' | 'inlet' | 'conduit' | 'lid' | 'pump';

/** Thickness of water at which a store no longer gives at full rate, and of the edge at a twin's threshold [m]. Source: ours. */
export const film = 1e-5;

/** One way that water takes between two stores, or out of the system (-1). Store numbers are those of the network. */
export abstract class Flux {
  readonly kind: FluxKind;
  readonly id: string;
  readonly from: number;
  readonly to: number;
  /** Store that part of what leaves the system runs back to, -1 for none. */
  readonly back: number;
  readonly backShare: number;
  /** False while what leaves stays in the line that it fills. */
  delivers = true;

  constructor(kind: FluxKind, id: string, from: number, to: number, back = -1, backShare = 0) {
    this.kind = kind;
    this.id = id;
    this.from = from;
    this.to = to;
    this.back = back;
    this.backShare = back < 0 ? 0 : backShare;
  }

  /** Flow [m3/s] between two levels [m]; it rises with `from` and falls with `to`. */
  abstract at(from: number, to: number, out: FlowAt): void;
}

/** A steady loss at any level. */
export class LossFlux extends Flux {
  private readonly rate: number;

  constructor(id: string, from: number, rate: number) {
    super('loss', id, from, -1);
    this.rate = rate;
  }

  at(_from: number, _to: number, out: FlowAt): void {
    out.set(this.rate, 0, 0);
  }
}

export class SeepageFlux extends Flux {
  private readonly well: WellStore;

  constructor(well: WellStore, from: number) {
    super('seepage', well.id, from, -1);
    this.well = well;
  }

  at(from: number, _to: number, out: FlowAt): void {
    seepageAt(this.well, from, out);
  }
}

/** Over a rim, a lid or the crest of a dry well. One way: nothing comes back in from above. */
export class WeirFlux extends Flux {
  private readonly coefficient: number;
  private readonly crest: number;
  private readonly bothWays: boolean;

  constructor(kind: 'spill' | 'lid' | 'overflow', id: string, ends: readonly [number, number], crest: number, width: number, back = -1, backShare = 0) {
    super(kind, id, ends[0], ends[1], back, backShare);
    this.coefficient = SHARP_RIM_WEIR * width;
    this.crest = crest;
    this.bothWays = kind === 'spill';
  }

  at(from: number, to: number, out: FlowAt): void {
    if (from <= this.crest ? !this.bothWays || to <= this.crest : !this.bothWays && from <= to) out.set(0, 0, 0);
    else weirFlowAt(this.coefficient, this.crest, from, this.to < 0 ? -Infinity : to, out);
  }
}

export class LinkFlux extends Flux {
  private readonly link: Link;
  private readonly conveyance: number;

  constructor(link: Link, from: number, to: number) {
    super('inlet', link.id, from, to, link.returns?.pond ?? -1, link.returns?.share ?? 0);
    this.link = link;
    this.conveyance = 1 / Math.sqrt(link.resistance);
  }

  at(from: number, to: number, out: FlowAt): void {
    linkFlowAt(this.link, from, this.to < 0 ? -Infinity : to, out, this.conveyance);
  }
}

export class ConduitFlux extends Flux {
  private readonly conduit: Conduit;
  private readonly conveyance: number;

  constructor(conduit: Conduit, from: number, to: number) {
    super('conduit', conduit.id, from, to, conduit.returns?.pond ?? -1, conduit.returns?.share ?? 0);
    this.conduit = conduit;
    this.conveyance = 1 / Math.sqrt(conduit.resistance);
  }

  at(from: number, to: number, out: FlowAt): void {
    conduitFlowAt(this.conduit, from, to, out, this.conveyance);
  }
}

/** A pump set that acts above a level: the whole of `table` a film above `start`. */
export interface PumpStage {
  readonly start: number;
  readonly table: FlowTable;
}

const noStages: readonly PumpStage[] = [];

/** The pumps of one line. A run sets which of them act; the stages add up from the lowest start. */
export class PumpFlux extends Flux {
  stages: readonly PumpStage[] = [];
  /** Share of the pumping time in the last answer, 0 to 1. */
  share = 0;
  private readonly lift: number;

  constructor(line: LineStore, from: number, to: number) {
    super('pump', line.id, from, to, line.returns?.pond ?? -1, line.returns?.share ?? 0);
    this.lift = line.liftLevel;
  }

  /** One pump set at any level, or none: a real pump between its floats. @returns whether anything is other than before */
  setOne(table: FlowTable | null, delivers: boolean): boolean {
    const before = this.stages.length === 0 ? null : this.stages[0]!.table;
    if (before === table && this.delivers === delivers) return false;
    this.delivers = delivers;
    this.stages = table === null ? noStages : [{ start: -Infinity, table }];
    return true;
  }

  at(from: number, to: number, out: FlowAt): void {
    const backed = this.to >= 0 && this.delivers && to > this.lift;
    const head = (backed ? to : this.lift) - from;
    let flow = 0;
    let slope = 0;
    let edge = 0;
    this.share = 0;
    const { stages } = this;
    for (let k = 0; k < stages.length; k += 1) {
      const { start, table } = stages[k]!;
      const above = from - start;
      if (above <= 0) break;
      const full = table.flow(head);
      const part = above < film ? above / film : 1;
      if (this.share === 0) this.share = part;
      const more = full > flow ? full - flow : 0;
      if (part < 1) edge += more / film;
      slope += part * (table.lastSlope - slope);
      flow += part * more;
    }
    if (slope > 0) slope = 0;
    out.set(flow, edge - slope, backed ? slope : 0);
  }
}
