import { requireFinite, requireNotNegative, requirePositive, requireShare } from '../common/require.ts';
import { exp } from '../math/exp.ts';
import { log } from '../math/log.ts';

export interface DryWell {
  /** Plan area and length of the sides around it [m2, m]. */
  readonly area: number;
  readonly perimeter: number;
  /** Depth of stone or chamber below its overflow [m]. */
  readonly depth: number;
  /** Share of the volume that holds water; 1 for an open chamber. */
  readonly voids: number;
  /** Infiltration rate of base and sides [m/s]; the base is often sealed by silt and may be 0. */
  readonly baseRate: number;
  readonly sideRate: number;
}

export interface DryWellStep {
  /** Depth of water at the end of the step [m]. */
  readonly depth: number;
  /** Water that the soil took and that went over in the step [m3]. */
  readonly seeped: number;
  readonly overflow: number;
}

function requireWell(well: DryWell): void {
  requirePositive({ area: well.area, perimeter: well.perimeter, depth: well.depth, voids: well.voids });
  requireShare({ voids: well.voids });
  requireNotNegative({ baseRate: well.baseRate, sideRate: well.sideRate });
}

/**
 * Water that a dry well or trench gives to the soil: unit gradient through base and wetted sides.
 *
 *   Q = f_b*A + f_s*p*h
 *
 * @param well size and rates
 * @param depth h of water [m], 0 to the well's depth
 * @returns Q [m3/s]
 * Limits: bottom above the water table; half of a tested rate for design
 * Source: Darcy with unit gradient; method of BRE Digest 365 (sides only: baseRate 0)
 * Checked against: fixtures/outlet/dryWell.json, worked by hand
 */
export function dryWellSeepage(well: DryWell, depth: number): number {
  requireWell(well);
  requireNotNegative({ depth });
  return depth === 0 ? 0 : well.baseRate * well.area + well.sideRate * well.perimeter * Math.min(depth, well.depth);
}

/** Water that it holds when full [m3]: n*A*d. */
export function dryWellVolume(well: DryWell): number {
  requireWell(well);
  return well.voids * well.area * well.depth;
}

/**
 * Time until it has emptied from one depth to another, with nothing flowing in.
 *
 *   n*A*dh/dt = -(f_b*A + f_s*p*h)
 *
 * @param well size and rates
 * @param from depth at the start [m]
 * @param to   depth at the end [m], 0 to `from`
 * @returns time [s]; Infinity when it never gets there
 * Source: the balance above, integrated
 * Checked against: percolationPit, 1e-12; half-emptying by steps
 */
export function dryWellEmptying(well: DryWell, from: number, to: number): number {
  requireWell(well);
  requireNotNegative({ from, to, fall: from - to });
  if (from === to) return 0;
  const base = well.baseRate * well.area;
  const side = well.sideRate * well.perimeter;
  if (side === 0) return base === 0 ? Infinity : (well.voids * well.area * (from - to)) / base;
  if (base === 0 && to === 0) return Infinity;
  return ((well.voids * well.area) / side) * log((base + side * from) / (base + side * to));
}

/** Depth that a constant inflow reaches after a time [m], not held at floor or top. */
function depthAfter(well: DryWell, start: number, inflow: number, time: number): number {
  const store = well.voids * well.area;
  const net = inflow - well.baseRate * well.area;
  const side = well.sideRate * well.perimeter;
  if (side === 0) return start + (net * time) / store;
  const steady = net / side;
  return steady + (start - steady) * exp((-side * time) / store);
}

/** Time at which a constant inflow reaches a depth [s]; the caller knows that it does. */
function timeTo(well: DryWell, start: number, target: number, inflow: number): number {
  const store = well.voids * well.area;
  const net = inflow - well.baseRate * well.area;
  const side = well.sideRate * well.perimeter;
  if (side === 0) return (store * (target - start)) / net;
  const steady = net / side;
  return (store / side) * log((start - steady) / (target - steady));
}

/**
 * One step of a dry well under a constant inflow, exact between its events: full, and empty.
 *
 * @param well size and rates
 * @param start depth at the start [m], 0 to the well's depth
 * @param inflow [m3/s], >= 0
 * @param time of the step [s], > 0
 * @returns depth [m], water into the soil and over the top [m3]; in = stored + seeped + over
 * Source: the balance of dryWellEmptying with inflow, integrated
 * Checked against: volume balance, 1e-12; small steps
 */
export function dryWellStep(well: DryWell, start: number, inflow: number, time: number): DryWellStep {
  requireWell(well);
  requireFinite({ start });
  requireNotNegative({ start, room: well.depth - start, inflow });
  requirePositive({ time });
  const free = depthAfter(well, start, inflow, time);
  const volume = well.voids * well.area;
  if (free > well.depth) {
    const filling = start >= well.depth ? 0 : timeTo(well, start, well.depth, inflow);
    const overflow = (time - filling) * (inflow - dryWellSeepage(well, well.depth));
    return { depth: well.depth, seeped: inflow * time - volume * (well.depth - start) - overflow, overflow };
  }
  const depth = Math.max(free, 0);
  return { depth, seeped: inflow * time - volume * (depth - start), overflow: 0 };
}
