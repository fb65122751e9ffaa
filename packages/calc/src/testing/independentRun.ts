import type { Basin, DesignDocument, Outlet, Pipe, Pump } from '../document/document.ts';
import { alternatingBlock } from '../rain/alternatingBlock.ts';
import { basinArea, inlet, leadsTo, lineOf, partsOfKind, pondArea, pumped, weir, type LineOf } from './independentFluxes.ts';
import { integrate } from './odeSolver.ts';

/** Longest span between two looks at the floats [s]; a level that touches a float and leaves again within it is a grazing case. */
const span = 5;
const firstDepth = 1e-4;
/** An event is located to this [s]. */
const eventTime = 1e-7;

export interface IndependentResult {
  readonly maxPond: readonly number[];
  readonly maxBasin: number;
  readonly maxWell: number;
  readonly starts: readonly number[];
  readonly inflow: number;
  readonly pumped: number;
  readonly spilled: number;
  readonly drained: number;
  readonly soaked: number;
  readonly overflowed: number;
  /** Least distance by which a level turned before or after a float it did not pass or just passed [m]. */
  readonly nearestGraze: number;
}

/** Places in the state: levels of ponds, basin and well, then volumes that left. */
interface Places {
  readonly ponds: number;
  readonly basin: number;
  readonly well: number;
  readonly pumped: number;
  readonly spilled: number;
  readonly drained: number;
  readonly soaked: number;
  readonly overflowed: number;
  readonly content: number;
  readonly size: number;
}

/** One storm through a document by a general-purpose solver; formulas from `independentFluxes`, pump events by bisection. */
export class IndependentRun {
  private readonly document: DesignDocument;
  private readonly basin: Basin | undefined;
  private readonly outlet: Outlet;
  private readonly pumps: readonly Pump[];
  private readonly line: LineOf | null;
  private readonly places: Places;
  private readonly runoff: readonly (readonly number[])[];
  private readonly lineVolume: number;
  private readonly runsBack: boolean;
  private readonly running = new Set<Pump>();
  private block = 0;
  private graze = Infinity;
  private rising = true;
  private inRiser = false;

  constructor(document: DesignDocument, returnPeriod: number) {
    this.document = document;
    this.basin = partsOfKind(document, 'basin')[0];
    this.pumps = partsOfKind(document, 'pump');
    const outlets = partsOfKind(document, 'outlet');
    this.outlet = outlets.find((outlet) => document.system.parts.some((part) => part.id !== outlet.id && part.kind !== 'gutter' && leadsTo(document, part, outlet.id)))!;
    this.line = this.pumps.length === 0 ? null : lineOf(document, this.pumps, this.outlet);
    const line = partsOfKind(document, 'dischargeLine')[0];
    this.lineVolume = line === undefined ? 0 : (Math.PI / 4) * line.innerDiameter ** 2 * line.length;
    this.runsBack = this.pumps.length > 0 && !partsOfKind(document, 'checkValve').some(({ present }) => present);
    const n = document.site.lowSpots.length;
    this.places = { ponds: n, basin: n, well: n + 1, pumped: n + 2, spilled: n + 3, drained: n + 4, soaked: n + 5, overflowed: n + 6, content: n + 7, size: n + 8 };
    const { table, storm, allowance } = document.rain;
    const depths = alternatingBlock(table, returnPeriod, storm.duration, storm.block, allowance);
    this.runoff = document.site.catchments.map(({ area, coefficient }) => depths.map((depth) => (area * coefficient * depth) / 1000 / storm.block));
  }

  private inflowOf(target: string): number {
    return this.document.site.catchments.reduce((sum, { drainsTo }, k) => (drainsTo.kind !== 'offSite' && drainsTo.id === target ? sum + this.runoff[k]![this.block]! : sum), 0);
  }

  private tailOf(pipe: Pipe, y: readonly number[]): number {
    if (this.basin !== undefined && leadsTo(this.document, pipe, this.basin.id)) return y[this.places.basin]!;
    return this.outlet.dryWell === null ? this.outlet.waterLevel : y[this.places.well]!;
  }

  private readonly slope = (_t: number, y: number[]): number[] => {
    const { document, places, basin } = this;
    const net = new Array<number>(places.size).fill(0);
    const add = (place: number, flow: number): void => { net[place] = net[place]! + flow; };
    document.site.lowSpots.forEach((spot, i) => {
      add(i, this.inflowOf(spot.id));
      const to = document.site.lowSpots.findIndex(({ id }) => id === spot.spillsTo);
      const over = weir(spot.spillWidth, spot.rimLevel, y[i]!, to < 0 ? -Infinity : y[to]!);
      add(i, -over);
      add(to < 0 ? places.spilled : to, over);
    });
    for (const part of [...partsOfKind(document, 'channel'), ...partsOfKind(document, 'catchBasin')]) {
      const pipe = partsOfKind(document, 'pipe').find(({ id }) => id === part.drainsTo)!;
      const pond = document.site.lowSpots.findIndex(({ id }) => id === part.lowSpot);
      const flow = inlet(part, pipe, y[pond]!, this.tailOf(pipe, y));
      add(pond, -flow);
      add(basin !== undefined && leadsTo(document, pipe, basin.id) ? places.basin : this.outlet.dryWell === null ? places.drained : places.well, flow);
    }
    if (basin !== undefined) this.addBasin(basin, y, add);
    if (this.outlet.dryWell !== null) this.addWell(y, add);
    document.site.lowSpots.forEach((spot, i) => { net[i] = net[i]! / pondArea(spot, y[i]!); });
    if (basin !== undefined) net[places.basin] = net[places.basin]! / basinArea(document, basin, y[places.basin]!);
    if (this.outlet.dryWell !== null) net[places.well] = net[places.well]! / this.wellArea();
    return net;
  };

  private addBasin(basin: Basin, y: readonly number[], add: (place: number, flow: number) => void): void {
    const { places } = this;
    add(places.basin, this.inflowOf(basin.id));
    const content = y[places.content]!;
    const full = content >= this.lineVolume;
    const tail = this.outlet.dryWell === null ? -Infinity : y[places.well]!;
    const flow = pumped(this.line!, [...this.running], y[places.basin]!, full ? tail : -Infinity, full ? 1 : Math.max(0, content / this.lineVolume));
    add(places.basin, -flow);
    if (!full) add(places.content, flow);
    else add(this.outlet.dryWell === null ? places.pumped : places.well, flow);
    const over = weir(Math.PI * basin.diameter, basin.rimLevel, y[places.basin]!, -Infinity);
    add(places.basin, -over);
    add(places.drained, over);
  }

  /** Stone, or the riser above it; the solver meets the change between them as an event and not as a jump. */
  private wellArea(): number {
    const well = this.outlet.dryWell!;
    return this.inRiser ? 0.05 : well.area * well.voids;
  }

  private addWell(y: readonly number[], add: (place: number, flow: number) => void): void {
    const { places } = this;
    const well = this.outlet.dryWell!;
    const top = well.bottomLevel + well.depth;
    const level = y[places.well]!;
    const depth = Math.min(level, top) - well.bottomLevel;
    // A solver needs some depth over which the soakage of the dry bottom begins.
    const soaked = Math.max(0, Math.min(1, depth / firstDepth)) * well.infiltrationRate * (well.area + well.perimeter * Math.max(0, depth));
    const over = weir(1, Math.max(top, this.outlet.level), level, -Infinity);
    add(places.well, -soaked - over);
    add(places.soaked, soaked);
    add(places.overflowed, over);
  }

  // ---------------------------------------------------------------- time

  private step(t: number, y: number[], dt: number): number[] {
    return integrate(this.slope, t, y, dt);
  }

  /** How far each event is: below 0 before it, 0 or more from it on. */
  private events(y: readonly number[]): { readonly at: number; readonly act: () => void }[] {
    const { basin, places, outlet } = this;
    const list: { readonly at: number; readonly act: () => void }[] = [];
    if (outlet.dryWell !== null) {
      const above = y[places.well]! - (outlet.dryWell.bottomLevel + outlet.dryWell.depth);
      list.push({ at: this.inRiser ? -above : above, act: () => { this.inRiser = !this.inRiser; } });
    }
    if (basin === undefined) return list;
    const level = y[places.basin]!;
    list.push(...this.pumps.map((pump) => {
      const start = pump.role === 'duty' ? basin.onLevel : pump.startLevel ?? basin.alarmLevel;
      return this.running.has(pump)
        ? { at: basin.offLevel - level, act: () => { this.running.delete(pump); } }
        : { at: level - start, act: () => { this.running.add(pump); } };
    }));
    if (this.running.size > 0 && y[places.content]! < this.lineVolume) list.push({ at: y[places.content]! - this.lineVolume, act: () => undefined });
    return list;
  }

  run(): IndependentResult {
    const { places, document, basin, outlet } = this;
    const { duration, block } = document.rain.storm;
    let y = new Array<number>(places.size).fill(0);
    document.site.lowSpots.forEach((spot, i) => { y[i] = spot.stageArea[0]!.level; });
    y[places.basin] = basin?.offLevel ?? 0;
    y[places.well] = outlet.dryWell?.bottomLevel ?? 0;
    y[places.content] = this.runsBack ? 0 : this.lineVolume;
    const highest = y.slice();
    const starts: number[] = [];
    let inflow = 0;
    for (let t = 0; t < duration - 1e-9;) {
      this.block = Math.min(Math.floor(duration / block) - 1, Math.floor(t / block + 1e-9));
      const dt = Math.min(span, (this.block + 1) * block - t);
      const { end, taken, pump } = this.advance(t, y, dt);
      inflow += taken * this.runoffNow();
      if (pump !== null) starts.push(t + taken);
      t += taken;
      y = end;
      y.forEach((value, i) => { if (value > highest[i]!) highest[i] = value; });
    }
    return {
      maxPond: highest.slice(0, places.ponds), maxBasin: highest[places.basin]!, maxWell: highest[places.well]!, starts, inflow, pumped: y[places.pumped]!,
      spilled: y[places.spilled]!, drained: y[places.drained]!, soaked: y[places.soaked]!, overflowed: y[places.overflowed]!, nearestGraze: this.graze,
    };
  }

  private runoffNow(): number {
    return this.document.site.catchments.reduce((sum, { drainsTo }, k) => (drainsTo.kind === 'offSite' ? sum : sum + this.runoff[k]![this.block]!), 0);
  }

  /** Up to the first event within `dt`, and the event done. */
  private advance(t: number, y: number[], dt: number): { readonly end: number[]; readonly taken: number; readonly pump: Pump | null } {
    const end = this.step(t, y, dt);
    const before = this.events(y);
    const passed = this.events(end).map(({ at, act }, i) => ({ at, act, i })).filter(({ at, i }) => at >= 0 && (before[i]?.at ?? -1) < 0);
    this.watchGraze(y, end);
    if (passed.length === 0) return { end, taken: dt, pump: null };
    let low = 0;
    let high = dt;
    while (high - low > eventTime) {
      const middle = (low + high) / 2;
      const state = this.step(t, y, middle);
      if (this.events(state).some(({ at }, i) => at >= 0 && (before[i]?.at ?? -1) < 0)) high = middle;
      else low = middle;
    }
    const at = this.step(t, y, high);
    const running = this.running.size;
    for (const event of this.events(at).filter((item, i) => item.at >= 0 && (before[i]?.at ?? -1) < 0)) event.act();
    if (at[this.places.content]! >= this.lineVolume - 1e-9) at[this.places.content] = this.lineVolume;
    if (running > 0 && this.running.size === 0 && this.runsBack) this.fallBack(at);
    return { end: at, taken: high, pump: this.running.size > running ? [...this.running].pop()! : null };
  }

  /** The line's content goes back into the basin at once: its level rises until the volume is there. */
  private fallBack(y: number[]): void {
    const basin = this.basin!;
    const content = y[this.places.content]!;
    const pieces = 2000;
    let level = y[this.places.basin]!;
    for (let i = 0; i < pieces; i += 1) level += content / pieces / basinArea(this.document, basin, level);
    y[this.places.basin] = level;
    y[this.places.content] = 0;
  }

  /** A rise that turned just under a start level, or passed it by a hair. */
  private watchGraze(from: readonly number[], to: readonly number[]): void {
    const { basin, places } = this;
    if (basin === undefined) return;
    const rises = to[places.basin]! > from[places.basin]!;
    const turned = this.rising && !rises;
    this.rising = rises;
    if (!turned) return;
    for (const pump of this.pumps) {
      const start = pump.role === 'duty' ? basin.onLevel : pump.startLevel ?? basin.alarmLevel;
      if (!this.running.has(pump)) this.graze = Math.min(this.graze, Math.abs(start - from[places.basin]!));
    }
  }
}
