import { CalcProblem } from '../common/problem.ts';
import { linkFlow } from '../routing/linkFlow.ts';
import type { BasinStore, PondStore, RoutingModel } from '../routing/model.ts';
import { spillFlow } from '../routing/pondStorage.ts';
import { risingRoot } from '../routing/root.ts';
import { spilledDown } from './closedForm.ts';
import { MINUTE, PondSolver } from './pondSolver.ts';
import type { Route, RouteBooks, RouteInflow } from './route.ts';
import { MINUTES } from './surfaceRunoff.ts';
import type { Watch } from './watch.ts';

/** What a dry low spot and a basin at its on level pass on without any level changing. */
interface Rest {
  /** Most inflow that a dry low spot passes on [m3/s], and the share of it that goes to the basin. */
  readonly most: number;
  readonly toBasin: number;
  /** Most that the pump takes at the on level [m3/s]. */
  readonly pump: number;
}

function restOf({ ponds, basins, links }: RoutingModel, ground: number): Rest {
  const pond = ponds[0]!;
  const onLevel = basins[0]?.onLevel ?? -Infinity;
  const flows = links.map((link) => ({ flow: linkFlow(link, pond.storage.bottom, link.basin < 0 ? -Infinity : onLevel), basin: link.basin >= 0 }));
  if (flows.some(({ flow }) => flow < 0)) throw new CalcProblem('record.neverRests', '/system/parts', { reason: 'record.restless.onLevel' });
  const pump = basins[0]?.pump?.flow.flow(onLevel) ?? 0;
  if (ground > pump) throw new CalcProblem('record.neverRests', '/system/parts', { reason: 'record.restless.groundWater' });
  const most = flows.reduce((sum, { flow }) => sum + flow, pond.loss);
  return { most, pump, toBasin: most > 0 ? flows.reduce((sum, { flow, basin }) => sum + (basin ? flow : 0), 0) / most : 0 };
}

/**
 * One low spot with its basin through a long record: the same backward Euler steps of one minute, tables and flows as the
 * storm routing, of the twin that runs only above its on level. Steps that change nothing or change evenly are taken in
 * closed form: a dry low spot whose ways out take all that comes, water below every grate and below the rim, and dry time.
 * Source: Chow, Maidment and Mays 1988 ch. 8; backward Euler
 * Checked against: runStorm of the storm routing, levels within 0.05 mm at the same steps and 1 mm at its own
 */
export class SpotRoute implements Route {
  readonly books: RouteBooks = { inflow: 0, outflow: 0, solved: 0, closed: 0 };
  readonly watches: readonly Watch[];
  private readonly watch: Watch;
  private readonly pond: PondStore;
  private readonly basin: BasinStore | null;
  private readonly solver: PondSolver;
  private readonly rest: Rest;
  /** Volume below every grate and below the rim. */
  private readonly quietVolume: number;
  /** True when the rim is the only way out. */
  private readonly onlyRim: boolean;
  private readonly onVolume: number;
  private readonly freeLevel: number;
  private readonly ground: number;
  private volume = 0;
  private basinVolume: number;
  private basinLevel: number;
  private basinGoal = 0;
  private resting = true;
  private minute = 0;
  private readonly coupled: (level: number) => number;
  private readonly free: (level: number) => number;

  /** @param ground steady ground water into the basin [m3/s] */
  constructor(model: RoutingModel, watch: Watch, ground: number) {
    const pond = model.ponds[0]!;
    const basin = model.basins[0] ?? null;
    this.pond = pond;
    this.basin = basin;
    this.watch = watch;
    this.watches = [watch];
    this.ground = basin === null ? 0 : ground;
    this.solver = new PondSolver(pond, model.links);
    this.rest = restOf(model, this.ground);
    this.quietVolume = pond.storage.volume(model.links.reduce((low, { grateLevel }) => Math.min(low, grateLevel), pond.rimLevel));
    this.onlyRim = basin === null && model.links.length === 0 && pond.loss === 0;
    this.onVolume = basin?.storage.volume(basin.onLevel) ?? 0;
    this.basinVolume = this.onVolume;
    this.basinLevel = basin?.onLevel ?? 0;
    this.freeLevel = model.links.reduce((low, link) => (link.basin >= 0 ? Math.min(low, link.freeLevel) : low), Infinity);
    this.free = (level) => this.basinLeaves(level) * MINUTE + basin!.storage.volume(level) - this.basinGoal;
    this.coupled = (level) => {
      this.solver.solve(level);
      return this.free(level) - MINUTE * this.solver.toBasin;
    };
  }

  run(inflow: RouteInflow, end: number): void {
    const pondFlow = inflow.ponds[0]!;
    const basinFlow = inflow.basins[0] ?? null;
    for (let k = 0; k < inflow.count; k += 1) {
      this.pass(inflow.index[k]! * MINUTES);
      const at = k * MINUTES;
      for (let m = 0; m < MINUTES; m += 1) this.step(pondFlow[at + m]!, basinFlow === null ? 0 : basinFlow[at + m]!);
    }
    this.pass(end * MINUTES);
  }

  standing(): number {
    return this.volume;
  }

  massError(): number {
    const { books, pond, basin } = this;
    const basinStored = basin === null ? 0 : basin.storage.volume(basin.storage.level(this.basinVolume)) - this.onVolume;
    const stored = pond.storage.volume(pond.storage.level(this.volume)) + basinStored;
    return books.inflow > 0 ? Math.abs(books.inflow - books.outflow - stored) / books.inflow : 0;
  }

  /** Time without inflow but ground water, up to a minute: stepped until the system rests, then in closed form. */
  private pass(until: number): void {
    while (this.minute < until && !(this.resting && this.volume <= this.quietVolume)) {
      if (this.onlyRim && this.spillsOn(until)) return;
      this.step(0, this.ground);
    }
    const span = until - this.minute;
    if (span <= 0) return;
    if (this.volume > 0) {
      const perMinute = this.pond.loss * MINUTE;
      this.watch.fall(this.volume, perMinute, this.minute, span);
      const gone = Math.min(this.volume, perMinute * span);
      this.books.outflow += gone;
      this.volume -= gone;
    }
    this.books.inflow += this.ground * MINUTE * span;
    this.books.outflow += this.ground * MINUTE * span;
    this.minute = until;
  }

  /** Water a little over the rim of a low spot without any other way out; false while the area still changes. */
  private spillsOn(until: number): boolean {
    const span = until - this.minute;
    const next = spilledDown(this.pond, this.volume, span * MINUTE);
    if (next === null) return false;
    this.watch.fall(this.volume, (this.volume - next) / span, this.minute, span);
    this.books.outflow += this.volume - next;
    this.volume = next;
    this.minute = until;
    return true;
  }

  private step(inflow: number, basinInflow: number): void {
    const { books, rest } = this;
    this.minute += 1;
    books.inflow += (inflow + basinInflow) * MINUTE;
    if (this.resting && this.volume === 0 && inflow <= rest.most && basinInflow + inflow * rest.toBasin <= rest.pump) {
      books.outflow += (inflow + basinInflow) * MINUTE;
      books.closed += 1;
      return;
    }
    const quiet = this.volume + (inflow - this.pond.loss) * MINUTE;
    if (this.resting && quiet <= this.quietVolume && this.quietVolume > 0 && basinInflow <= rest.pump) {
      const next = quiet > 0 ? quiet : 0;
      books.outflow += this.volume + (inflow + basinInflow) * MINUTE - next;
      books.closed += 1;
      this.volume = next;
    } else this.solve(inflow, basinInflow);
    this.watch.see(this.volume, this.minute, 1);
  }

  private solve(inflow: number, basinInflow: number): void {
    const { books, basin, solver } = this;
    books.solved += 1;
    solver.goal = this.volume + MINUTE * inflow;
    solver.level = this.pond.storage.level(this.volume);
    if (basin === null) solver.solve(-Infinity);
    else {
      const before = this.basinVolume;
      this.basinGoal = before + MINUTE * basinInflow;
      this.solveBasin(basin);
      books.outflow += before + MINUTE * (basinInflow + solver.toBasin) - this.basinVolume;
    }
    const gone = MINUTE * (solver.spilled + solver.lost + solver.toOutlets);
    this.volume = Math.max(0, solver.goal - gone - MINUTE * solver.toBasin);
    books.outflow += gone;
  }

  private solveBasin(basin: BasinStore): void {
    const { solver } = this;
    solver.solve(basin.onLevel);
    const more = this.basinGoal + MINUTE * solver.toBasin - this.onVolume;
    this.resting = more >= 0 && more <= MINUTE * this.rest.pump;
    if (this.resting) {
      this.basinVolume = this.onVolume;
      this.basinLevel = basin.onLevel;
      return;
    }
    const from = this.freeLevel;
    const atFree = from === Infinity ? 1 : this.coupled(from);
    if (atFree < 0) {
      this.basinLevel = risingRoot(this.coupled, from, atFree, Math.max(this.basinLevel, from));
      solver.solve(this.basinLevel);
      this.basinGoal += MINUTE * solver.toBasin;
    } else {
      // Below the free end of its pipes a basin does not act back on the low spot.
      this.basinGoal += MINUTE * solver.toBasin;
      const { bottom } = basin.storage;
      const atBottom = this.free(bottom);
      this.basinLevel = atBottom >= 0 ? bottom : risingRoot(this.free, bottom, atBottom, this.basinLevel);
    }
    this.basinVolume = Math.max(0, this.basinGoal - MINUTE * this.basinLeaves(this.basinLevel));
  }

  private basinLeaves(level: number): number {
    const basin = this.basin!;
    const pumped = level <= basin.onLevel ? 0 : basin.pump!.flow.flow(level);
    return pumped + spillFlow(level, basin.lidLevel, basin.lidEdge);
  }
}
