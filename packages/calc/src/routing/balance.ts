import { askedAs, codeOf } from './askedAs.ts';
import { clipped } from './clipped.ts';
import { FlowAt } from './flowAt.ts';
import { film, type Flux, type LinkFlux, type PumpFlux, type WeirFlux } from './fluxes.ts';
import { Look } from './look.ts';
import { solveDominant } from './solver.ts';
import type { Layout } from './stores.ts';

/** A balance this close to nothing is met [m3]: a tenth of a cubic millimetre. */
const volumeTolerance = 1e-10;
/** Rounding of a level, as a share of it, that a balance cannot be closer than. */
const levelRounding = 5e-16;
const mostNewton = 40;
/** From here on a step of Newton that brings nothing is halved, so often at most. */
const searchFrom = 3;
const mostHalvings = 5;

/**
 * Levels at which every store holds just what it had less what flows out of it at these levels in a length of time:
 *
 *   V(level) = base - length * out(levels)
 *
 * Every flow rises with the level it leaves and falls with the level it enters, so there is one answer, and it keeps order.
 * Source: Newton's method with a search along its step, Ortega and Rheinboldt 1970 (from memory)
 */
export class Balance {
  readonly level: Float64Array;
  /** What would stand in each store if nothing flowed between them [m3]. */
  readonly base: Float64Array;
  /** What the last look found at the levels. */
  found: Look;
  /** Levels at which a twin's pumps begin, lowest first, of each store. */
  readonly thresholds: number[][];
  private length = 0;
  private off = 0;
  private readonly count: number;
  private readonly layout: Layout;
  private readonly codes: Uint8Array;
  private readonly bottoms: Float64Array;
  private readonly miss: Float64Array;
  private readonly matrix: Float64Array;
  private readonly before: Float64Array;
  private readonly at = new FlowAt();

  constructor(layout: Layout) {
    const { count } = layout;
    const numbers = (length: number): Float64Array => new Float64Array(length);
    this.count = count;
    this.layout = layout;
    this.codes = Uint8Array.from(layout.fluxes, codeOf);
    this.bottoms = Float64Array.from(layout.tables, ({ bottom }) => bottom);
    this.level = Float64Array.from(this.bottoms);
    this.base = numbers(count);
    this.found = new Look(count, layout.fluxes.length);
    this.thresholds = layout.tables.map(() => []);
    this.miss = numbers(count);
    this.matrix = numbers(count * count);
    this.before = numbers(count);
  }

  /** Flows, volumes and their slopes at the present levels. */
  look(): void {
    const { count, level, found: { answers, out, areas, volumes } } = this;
    const { tables } = this.layout;
    for (let i = 0; i < answers.length; i += 1) answers[i] = 0;
    for (let i = 0; i < count; i += 1) {
      const table = tables[i]!;
      volumes[i] = table.look(level[i]!);
      areas[i] = table.lastArea;
      out[i] = 0;
    }
    this.addFluxes();
  }

  /**
   * Looks for the levels from the present ones on, of which `known` is what was found.
   * @param landing a last step of Newton no longer than this is taken without another look: flows follow their slopes, so that no water is lost [m]
   * @returns false when they do not settle
   */
  solve(length: number, landing = 0, known = this.found): boolean {
    const { found } = this;
    this.length = length;
    let last = known;
    let least = Infinity;
    let halvings = 0;
    for (let i = 0; i < mostNewton; i += 1) {
      if (this.isMet(last)) {
        if (last !== found) found.copy(last);
        return true;
      }
      if (i >= searchFrom && halvings < mostHalvings && this.off >= least) {
        halvings += 1;
        this.halve();
      } else {
        halvings = 0;
        least = this.off;
        this.newton(last);
        if (this.landed(landing, last)) return true;
      }
      this.look();
      last = found;
    }
    return false;
  }

  /** Turns volumes into the heights that they make at the levels of the last look, flows answering during a length of time. */
  heights(volumes: Float64Array, length: number): void {
    this.fillMatrix(length, this.found);
    solveDominant(this.count, this.matrix, volumes);
  }

  /** Moves every level, no further than a step of Newton may. */
  move(heights: Float64Array): void {
    const { level } = this;
    for (let i = 0; i < this.count; i += 1) level[i] = clipped(this.bottoms[i]!, this.thresholds[i]!, level[i]!, level[i]! + heights[i]!);
  }

  // ---------------------------------------------------------------- one iteration

  private isMet({ volumes, out, areas, answers }: Look): boolean {
    const { count, miss, level, base, length } = this;
    let steepest = 0;
    let most = 0;
    let off = 0;
    for (let i = 0; i < count; i += 1) {
      miss[i] = volumes[i]! - base[i]! + length * out[i]!;
      const own = (areas[i]! + length * answers[i * count + i]!) * Math.abs(level[i]!);
      if (own > steepest) steepest = own;
      const by = this.owes(i) ? 0 : Math.abs(miss[i]!);
      off += by;
      if (!(by <= most)) most = by;
    }
    this.off = off;
    return most <= volumeTolerance + levelRounding * steepest;
  }

  private fillMatrix(length: number, { answers, areas }: Look): void {
    const { count, matrix } = this;
    for (let i = 0; i < matrix.length; i += 1) matrix[i] = length * answers[i]!;
    for (let i = 0; i < count; i += 1) matrix[i * count + i] = matrix[i * count + i]! + areas[i]!;
  }

  private addFluxes(): void {
    const { codes, level, at, found } = this;
    const { fluxes } = this.layout;
    for (let k = 0; k < codes.length; k += 1) {
      const flux = fluxes[k]!;
      const { from, to } = flux;
      const tail = to < 0 ? -Infinity : level[to]!;
      switch (codes[k]) {
        case askedAs.weir: (flux as WeirFlux).at(level[from]!, tail, at); break;
        case askedAs.link: (flux as LinkFlux).at(level[from]!, tail, at); break;
        case askedAs.pump: (flux as PumpFlux).at(level[from]!, tail, at); break;
        default: flux.at(level[from]!, tail, at);
      }
      if (at.flow === 0 && at.from === 0 && at.to === 0) {
        found.flows[k] = 0;
        found.byFrom[k] = 0;
        found.byTo[k] = 0;
      } else this.addFlux(flux, k);
    }
  }

  private addFlux(flux: Flux, k: number): void {
    const { count, at, found } = this;
    const { out, answers } = found;
    const { from, to, back } = flux;
    this.thin(at.flow >= 0 ? from : to);
    const { flow, from: byFrom, to: byTo } = at;
    found.flows[k] = flow;
    found.byFrom[k] = byFrom;
    found.byTo[k] = byTo;
    out[from] = out[from]! + flow;
    answers[from * count + from] = answers[from * count + from]! + byFrom;
    if (to >= 0) answers[from * count + to] = answers[from * count + to]! + byTo;
    if (!flux.delivers) return;
    if (to >= 0) {
      out[to] = out[to]! - flow;
      answers[to * count + from] = answers[to * count + from]! - byFrom;
      answers[to * count + to] = answers[to * count + to]! - byTo;
    } else if (back >= 0) {
      out[back] = out[back]! - flux.backShare * flow;
      answers[back * count + from] = answers[back * count + from]! - flux.backShare * byFrom;
    }
  }

  /** A store gives less as the last film of water in it goes; nothing comes in from outside. */
  private thin(source: number): void {
    const { at } = this;
    const depth = this.level[source]! - this.bottoms[source]!;
    if (depth >= film) return;
    const share = depth > 0 ? depth / film : 0;
    const { flow } = at;
    if (flow >= 0) at.set(flow * share, at.from * share + flow / film, at.to * share);
    else at.set(flow * share, at.from * share, at.to * share + flow / film);
  }

  /** A dry store that gave a rounding more than it held: it gives nothing more, stays at its bottom and owes it to the next inflow. */
  private owes(store: number): boolean {
    return this.miss[store]! > 0 && this.level[store]! <= this.bottoms[store]!;
  }

  private newton(last: Look): void {
    const { count, miss, level, before } = this;
    this.fillMatrix(this.length, last);
    for (let i = 0; i < count; i += 1) {
      if (this.owes(i)) this.hold(i);
      else miss[i] = -miss[i]!;
      before[i] = level[i]!;
    }
    solveDominant(count, this.matrix, miss);
    this.move(miss);
  }

  /** Whether the last step was too short to need another look; then all that the last one found follows along the slopes. */
  private landed(landing: number, last: Look): boolean {
    const { count, miss, level, before, found } = this;
    for (let i = 0; i < count; i += 1) if (!(Math.abs(miss[i]!) < landing) || level[i] !== before[i]! + miss[i]!) return false;
    if (last !== found) found.copy(last);
    const { areas, volumes, out, answers, flows, byFrom, byTo } = found;
    const { fluxes } = this.layout;
    for (let i = 0; i < count; i += 1) {
      volumes[i] = volumes[i]! + areas[i]! * miss[i]!;
      for (let j = 0; j < count; j += 1) out[i] = out[i]! + answers[i * count + j]! * miss[j]!;
    }
    for (let k = 0; k < flows.length; k += 1) {
      const { from, to } = fluxes[k]!;
      if (byFrom[k] !== 0 || byTo[k] !== 0) flows[k] = flows[k]! + byFrom[k]! * miss[from]! + (to < 0 ? 0 : byTo[k]! * miss[to]!);
    }
    return true;
  }

  /** Leaves a level where it is in the next step of Newton. */
  private hold(store: number): void {
    const { count, miss, matrix } = this;
    miss[store] = 0;
    for (let i = 0; i < count; i += 1) matrix[store * count + i] = i === store ? 1 : 0;
  }

  /** Back half way along the last step. */
  private halve(): void {
    for (let i = 0; i < this.count; i += 1) this.level[i] = 0.5 * (this.before[i]! + this.level[i]!);
  }
}
