import type { Watch } from './watch.ts';

/** Inflow of a part of a record: five one-minute means for each active step [m3/s]. */
export interface RouteInflow {
  readonly count: number;
  /** Five-minute steps with inflow, from the start of the record. */
  readonly index: Int32Array;
  readonly ponds: readonly Float64Array[];
  readonly junctions: readonly Float64Array[];
  readonly wells: readonly Float64Array[];
  readonly basins: readonly Float64Array[];
}

/** Volumes that a route has passed since its start [m3]. */
export interface RouteBooks {
  inflow: number;
  outflow: number;
  /** One-minute steps in which levels were solved, and steps in which nothing had to be. */
  solved: number;
  closed: number;
}

/** Carries the levels of one network through a record, part after part. */
export interface Route {
  readonly books: RouteBooks;
  readonly watches: readonly Watch[];
  /** Runs a part of the record up to its end [five-minute steps]. */
  run(inflow: RouteInflow, end: number): void;
  /** Volume that stands in each low spot [m3]. */
  standing(pond: number): number;
  /** Difference between what came, what went and what stands, as a share of what came. */
  massError(): number;
}
