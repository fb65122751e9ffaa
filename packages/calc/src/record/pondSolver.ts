import { linkFlow } from '../routing/linkFlow.ts';
import type { Link, PondStore } from '../routing/model.ts';
import { spillFlow } from '../routing/pondStorage.ts';
import { risingRoot } from '../routing/root.ts';

/** Length of a step [s]. */
export const MINUTE = 60;

/** Level and flows of one low spot at the end of a minute, with the level of its basin given. */
export class PondSolver {
  /** Volume at the start of the minute with all that comes in during it [m3]. */
  goal = 0;
  /** Where the root is looked for first, then the answer [m]. */
  level: number;
  // Flows of the answer [m3/s].
  toBasin = 0;
  toOutlets = 0;
  spilled = 0;
  lost = 0;
  private readonly pond: PondStore;
  private readonly links: readonly Link[];
  private readonly bottom: number;
  private readonly balance: (level: number) => number;
  private tail = -Infinity;

  constructor(pond: PondStore, links: readonly Link[]) {
    this.pond = pond;
    this.links = links;
    this.bottom = pond.storage.bottom;
    this.level = this.bottom;
    this.balance = (level) => this.leaves(level) * MINUTE + pond.storage.volume(level) - this.goal;
  }

  solve(tail: number): void {
    this.tail = tail;
    const atBottom = this.balance(this.bottom);
    if (atBottom >= 0) {
      this.drainDry();
      return;
    }
    this.level = risingRoot(this.balance, this.bottom, atBottom, this.level);
    this.setFlows(this.level, 1);
    this.lost = this.pond.loss;
    this.spilled = spillFlow(this.level, this.pond.rimLevel, this.pond.spillWidth);
  }

  private flowOf(link: Link, level: number): number {
    return linkFlow(link, level, link.basin < 0 ? -Infinity : this.tail);
  }

  private leaves(level: number): number {
    let out = this.pond.loss + spillFlow(level, this.pond.rimLevel, this.pond.spillWidth);
    for (let i = 0; i < this.links.length; i += 1) out += this.flowOf(this.links[i]!, level);
    return out;
  }

  /** Flows of the links at a level; those that leave are multiplied. */
  private setFlows(level: number, share: number): void {
    this.toBasin = 0;
    this.toOutlets = 0;
    for (let i = 0; i < this.links.length; i += 1) {
      const link = this.links[i]!;
      const flow = this.flowOf(link, level);
      const part = flow > 0 ? flow * share : flow;
      if (link.basin < 0) this.toOutlets += part;
      else this.toBasin += part;
    }
  }

  /** It runs dry in this minute: what there is goes to its ways out in proportion to what they could take. */
  private drainDry(): void {
    let available = this.goal / MINUTE;
    let could = this.pond.loss;
    for (const link of this.links) {
      const flow = this.flowOf(link, this.bottom);
      if (flow > 0) could += flow;
      else available -= flow;
    }
    const share = could > 0 ? Math.min(1, Math.max(0, available) / could) : 0;
    this.setFlows(this.bottom, share);
    this.lost = this.pond.loss * share;
    this.spilled = 0;
    this.level = this.bottom;
  }
}
