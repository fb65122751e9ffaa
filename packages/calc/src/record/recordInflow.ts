import type { DesignDocument } from '../document/document.ts';
import { buildInflow, inflowTargets, routesOf, type InflowCase, type InflowTargets, type Route as CatchmentRoute } from '../routing/inflow.ts';
import type { StormInflow } from '../routing/run.ts';
import type { RouteInflow } from './route.ts';
import { MINUTES, type ActiveRunoff } from './surfaceRunoff.ts';

const MINUTE = 60;
const nothing = new Float64Array(0);

/** Brings the runoff of the catchments to low spots and basins, by the same gutters and paths as in a storm. */
export class RecordInflow {
  /** Steady ground water into each store that is not a low spot [m3/s]. */
  readonly targets: InflowTargets;
  private readonly routes: readonly CatchmentRoute[];
  private buffer: Required<StormInflow> | null = null;

  constructor(document: DesignDocument, inflowCase: InflowCase) {
    this.routes = routesOf(document, inflowCase);
    this.targets = inflowTargets(document, inflowCase);
  }

  /** Inflow of a part; its arrays are used again by the next one. */
  of(active: ActiveRunoff): RouteInflow {
    const steps = active.count * MINUTES;
    const storm = { returnPeriod: 0, step: MINUTE, steps: active.index.length * MINUTES, intensity: nothing, runoff: active.flows };
    if (this.buffer === null || this.buffer.steps < storm.steps) this.buffer = null;
    this.buffer = buildInflow(this.routes, this.targets, storm, null, [0, steps], this.buffer);
    const { ponds, junctions, wells, basins } = this.buffer;
    return { count: active.count, index: active.index, ponds, junctions, wells, basins };
  }
}
