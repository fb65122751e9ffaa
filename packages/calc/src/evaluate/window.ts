import type { StormInflow } from '../routing/run.ts';
import type { RoutingModel } from '../routing/model.ts';

/** Inflows of varied runs stay below this multiple of the plain ones. */
export const mostInflow = 1.6;
/** A weak pump of a varied run keeps at least this share of the plain flow. */
const leastPump = 0.8;
/** Steps after the last strong inflow; beyond it every level falls, so a highest level has passed. */
const tail = 5;

/**
 * Steps outside which a run of the twins above their on level rests: what comes in stays below what the pump and the
 * inlets take, so before them the basin stands at its on level and the low spot is dry, and after them every level falls.
 * Cutting a run to them changes no highest level.
 * Without a system the whole storm counts.
 */
export function restlessWindow(model: RoutingModel, inflow: StormInflow, most = mostInflow): readonly [number, number] {
  if (model.links.length === 0 && model.basins.length === 0) return [0, inflow.steps];
  const limits = model.ponds.map((_, pond) => pondLimit(model, pond));
  const basinLimit = model.basins.map((basin) => (basin.pump === null ? 0 : leastPump * basin.pump.flow.flow(basin.onLevel)));
  let first = inflow.steps;
  let last = 0;
  for (let i = 0; i < inflow.steps; i += 1) {
    if (!isStrong(model, inflow, i, limits, basinLimit, most)) continue;
    if (i < first) first = i;
    last = i;
  }
  return first > last ? [0, Math.min(1, inflow.steps)] : [first, Math.min(inflow.steps, last + tail)];
}

/** Flow that drains away without ponding, roughly: half of what the grates take under a quarter inch. */
function pondLimit(model: RoutingModel, pond: number): number {
  const links = model.links.filter((link) => link.pond === pond);
  return links.reduce((sum, link) => sum + 0.5 * link.grateWeir * 0.00635 * Math.sqrt(0.00635), 0);
}

function isStrong(model: RoutingModel, inflow: StormInflow, i: number, limits: readonly number[], basinLimit: readonly number[], most: number): boolean {
  for (let pond = 0; pond < limits.length; pond += 1) if (most * inflow.ponds[pond]![i]! > limits[pond]!) return true;
  for (let basin = 0; basin < basinLimit.length; basin += 1) {
    let into = most * inflow.basins[basin]![i]!;
    for (const { pond, basin: end } of model.links) if (end === basin) into += most * inflow.ponds[pond]![i]!;
    if (into > basinLimit[basin]!) return true;
  }
  return false;
}
