import { cbrt } from '../math/cbrt.ts';
import { LEAST_PLANE_SLOPE } from '../runoff/kinematicPlane.ts';

/** Cells along a plane, as in the storm routing. */
const CELLS = 8;
const MINUTES = 5;
const STEP = 300;
/** Longest part of a step while the wave crosses less than `mostCrossing` of a cell in it [s]. */
const PARTS = [15, 5, 1] as const;
/** A step is divided further when the wave would run through more of a cell than this. Source: ours, see the test. */
export const mostCrossing = 0.5;
/** A film of this mean depth that nothing falls on runs off within five minutes: no water is lost, and the tail ends [m]. Source: ours, stated. */
export const LAST_FILM = 5e-5;
/** Newton's next error is the square of this. */
const SETTLED = 1e-4;
const NEWTON_STEPS = 60;

/** A surface on which runoff is delayed. */
export interface RunnerPlane {
  readonly length: number;
  readonly slope: number;
  readonly roughness: number;
  /** [m2] */
  readonly area: number;
}

/**
 * Kinematic plane that is carried on through years: the equations and cells of `kinematicPlane`, five minutes at a time.
 * A wave that is slow against the cells is taken in longer parts of the five minutes, which the implicit scheme allows.
 * What enters is stored or leaves to rounding, whatever the parts are.
 * Source: Henderson and Wooding 1964; parts: ours
 * Checked against: kinematicPlane in 20 s steps, mean flow of each minute in a design storm within 0.5 % of the peak
 */
export class PlaneRunner {
  /** Sum of the cells' depths [m]; 0 on a dry surface. */
  total = 0;
  private readonly depths = new Float64Array(CELLS);
  /** Cube roots of the depths: celerity is 5/3 alpha root^2. */
  private readonly roots = new Float64Array(CELLS);
  private readonly alpha: number;
  private readonly dx: number;
  private readonly width: number;

  constructor(plane: RunnerPlane) {
    this.alpha = Math.sqrt(Math.max(plane.slope, LEAST_PLANE_SLOPE)) / plane.roughness;
    this.dx = plane.length / CELLS;
    this.width = plane.area / plane.length;
  }

  /** Water on the surface [m3]. */
  get stored(): number {
    return this.total * this.dx * this.width;
  }


  /**
   * Five minutes under a steady excess.
   * @param excess [m/s]
   * @param into mean flow of each of the five minutes from `at` on [m3/s]
   */
  advance(excess: number, into: Float64Array, at: number): void {
    if (excess === 0 && this.total <= LAST_FILM * CELLS) {
      this.empty(into, at);
      return;
    }
    const parts = this.partsFor(excess);
    const time = STEP / parts;
    const k = (this.alpha * time) / this.dx;
    const rain = excess * time;
    const toFlow = (this.dx * this.width * parts) / STEP;
    if (parts < MINUTES) {
      const flow = this.part(rain, k) * toFlow;
      for (let m = 0; m < MINUTES; m += 1) into[at + m] = flow;
      return;
    }
    const perMinute = parts / MINUTES;
    for (let m = 0; m < MINUTES; m += 1) {
      let passed = 0;
      for (let p = 0; p < perMinute; p += 1) passed += this.part(rain, k);
      into[at + m] = (passed * toFlow) / perMinute;
    }
  }

  private empty(into: Float64Array, at: number): void {
    const flow = this.stored / STEP;
    for (let m = 0; m < MINUTES; m += 1) into[at + m] = flow;
    this.depths.fill(0);
    this.roots.fill(0);
    this.total = 0;
  }

  private partsFor(excess: number): number {
    let root = this.roots[CELLS - 1]!;
    if (excess > 0) root = cbrt(this.depths[CELLS - 1]! + excess * STEP);
    const celerity = (5 / 3) * this.alpha * root * root;
    const crossing = (celerity * STEP) / this.dx;
    if (crossing <= mostCrossing) return PARTS[2];
    return crossing <= mostCrossing * PARTS[1] ? PARTS[1] : PARTS[0];
  }

  /** One part: every cell from the top; gives back the depth that the last one passes on. */
  private part(rain: number, k: number): number {
    const { depths, roots } = this;
    let inflow = 0;
    let any = 0;
    for (let c = 0; c < CELLS; c += 1) {
      const b = depths[c]! + rain + inflow;
      if (b <= 0) {
        depths[c] = 0;
        inflow = 0;
        continue;
      }
      let u = roots[c]!;
      if (u <= 0) u = cbrt(b);
      for (let i = 0; i < NEWTON_STEPS; i += 1) {
        const square = u * u;
        const ks = k * square;
        const change = (square * u * (1 + ks) - b) / (square * (3 + 5 * ks));
        u -= change;
        if (change < SETTLED * u && change > -SETTLED * u) break;
      }
      let depth = u * u * u;
      if (depth > b) depth = b;
      inflow = b - depth;
      depths[c] = depth;
      roots[c] = u;
      any += depth;
    }
    this.total = any;
    return inflow;
  }
}
