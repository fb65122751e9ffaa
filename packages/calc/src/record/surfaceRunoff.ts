import { MINUTE } from '../common/constants.ts';
import type { Catchment, DesignDocument } from '../document/document.ts';
import { planeEquilibriumTime } from '../runoff/kinematicPlane.ts';
import type { WetSteps } from './disaggregate.ts';
import { LossStore, recoveryShare } from './lossStore.ts';
import { PlaneRunner } from './planeRunner.ts';

/** Rain steps of a long record [s], and the minutes in each. */
export const RAIN_STEP = 300;
export const MINUTES = 5;
const HARD: readonly string[] = ['roof', 'paving', 'pool'];

/** Runoff of every catchment in the five minutes that have any: mean flow of each minute [m3/s]. */
export interface ActiveRunoff {
  count: number;
  /** Five-minute step of each entry, from the start of the record. */
  index: Int32Array;
  /** One array per catchment, five minutes per entry. */
  readonly flows: Float64Array[];
}

/** Volumes of the surfaces [m3]. */
export interface SurfaceBooks {
  excess: number;
  runoff: number;
}

interface Surface {
  readonly loss: LossStore;
  readonly area: number;
  /** Null: it answers at once. */
  readonly plane: PlaneRunner | null;
}

/** A hard surface is taken at once when it is in equilibrium within a minute of the record's strongest rain. */
function isQuick(catchment: Catchment, strongest: number): boolean {
  if (catchment.response === 'instantaneous') return true;
  if (!HARD.includes(catchment.surface)) return false;
  const excess = (strongest / 1000 / RAIN_STEP) * catchment.coefficient;
  return excess <= 0 || planeEquilibriumTime({ length: catchment.flowLength, slope: catchment.slope, roughness: catchment.roughness }, excess) < MINUTE;
}

function surfaceOf(catchment: Catchment, strongest: number): Surface {
  const { area, flowLength: length, slope, roughness } = catchment;
  const plane = area === 0 || isQuick(catchment, strongest) ? null : new PlaneRunner({ length, slope, roughness, area });
  return { loss: new LossStore(catchment), area, plane };
}

const isWet = ({ plane }: Surface): boolean => plane !== null && plane.total > 0;

/**
 * Turns the rain of a long record into runoff, part by part, with the state of every surface carried on.
 * Only five minutes with rain or with water on a plane are computed. A missing reading is taken as no rain here,
 * because nothing better is known; it counts nowhere as observed.
 */
export class SurfaceRunoff {
  readonly books: SurfaceBooks = { excess: 0, runoff: 0 };
  readonly active: ActiveRunoff;
  private readonly surfaces: readonly Surface[];
  /** Last step with rain, and the first one that has not been computed. */
  private lastWet = -1;
  private next = 0;

  /** @param strongest depth of the record's strongest five minutes [mm] */
  constructor(document: DesignDocument, strongest: number) {
    this.surfaces = document.site.catchments.map((catchment) => surfaceOf(catchment, strongest));
    this.active = { count: 0, index: new Int32Array(1024), flows: this.surfaces.map(() => new Float64Array(1024 * MINUTES)) };
  }

  /** Water that stands on the surfaces now [m3]. */
  get stored(): number {
    return this.surfaces.reduce((sum, { plane }) => sum + (plane?.stored ?? 0), 0);
  }

  /** Computes the record up to a step and leaves the result in `active`. */
  advance(wet: WetSteps, end: number): ActiveRunoff {
    this.active.count = 0;
    for (let k = 0; k < wet.index.length; k += 1) {
      const step = wet.index[k]!;
      this.dryUntil(step);
      this.recover(step);
      this.rain(step, wet.depth[k]!);
    }
    this.dryUntil(end);
    return this.active;
  }

  /** Planes run on without rain until their last film has run off. */
  private dryUntil(end: number): void {
    while (this.next < end && this.anyWet()) {
      this.enter(this.next, null);
      this.next += 1;
    }
    this.next = end;
  }

  private recover(step: number): void {
    const dry = step - this.lastWet - 1;
    if (this.lastWet < 0 || dry === 0) return;
    const share = recoveryShare(dry * RAIN_STEP);
    for (const { loss } of this.surfaces) loss.fade(share);
  }

  private rain(step: number, depth: number): void {
    let any = false;
    for (let c = 0; c < this.surfaces.length; c += 1) {
      const excess = this.surfaces[c]!.loss.excess(depth, RAIN_STEP);
      this.excesses[c] = excess;
      if (excess > 0 || isWet(this.surfaces[c]!)) any = true;
    }
    if (any) this.enter(step, this.excesses);
    this.lastWet = step;
    this.next = step + 1;
  }

  private readonly excesses: number[] = [];

  private anyWet(): boolean {
    for (let c = 0; c < this.surfaces.length; c += 1) if (isWet(this.surfaces[c]!)) return true;
    return false;
  }

  private enter(step: number, excesses: readonly number[] | null): void {
    const { active, surfaces, books } = this;
    if (active.count === active.index.length) this.grow();
    const at = active.count * MINUTES;
    active.index[active.count] = step;
    active.count += 1;
    for (let c = 0; c < surfaces.length; c += 1) {
      const { plane, area } = surfaces[c]!;
      const flows = active.flows[c]!;
      const excess = excesses === null ? 0 : excesses[c]!;
      books.excess += (excess / 1000) * area;
      if (plane === null) flows.fill((excess / 1000 / RAIN_STEP) * area, at, at + MINUTES);
      else if (excess === 0 && plane.total === 0) flows.fill(0, at, at + MINUTES);
      else plane.advance(excess / 1000 / RAIN_STEP, flows, at);
      for (let m = 0; m < MINUTES; m += 1) books.runoff += flows[at + m]! * MINUTE;
    }
  }

  private grow(): void {
    const { active } = this;
    const wider = (from: Float64Array): Float64Array => {
      const to = new Float64Array(from.length * 2);
      to.set(from);
      return to;
    };
    const index = new Int32Array(active.index.length * 2);
    index.set(active.index);
    active.index = index;
    for (let c = 0; c < active.flows.length; c += 1) active.flows[c] = wider(active.flows[c]!);
  }
}
