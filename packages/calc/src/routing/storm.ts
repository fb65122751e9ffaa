import { intensityOf } from '../rain/depthAt.ts';
import { alternatingBlock } from '../rain/alternatingBlock.ts';
import { kinematicPlane, planeEquilibriumTime } from '../runoff/kinematicPlane.ts';
import { volumetricLoss } from '../runoff/volumetricLoss.ts';
import { MINUTE } from '../common/constants.ts';
import type { Catchment, DesignDocument } from '../document/document.ts';

/** Grid of the routing [s]. Source: the trade routes at one minute or finer. */
export const routingStep = MINUTE;
const planeCells = 8;

/** The rain of one storm on the routing grid, and what each surface makes of it. */
export interface StormRunoff {
  readonly returnPeriod: number;
  readonly step: number;
  readonly steps: number;
  /** Rain intensity of each step [m/s]. */
  readonly intensity: Float64Array;
  /** Runoff of each catchment, in the order of the document: mean flow of each step [m3/s]. */
  readonly runoff: readonly Float64Array[];
}

export interface RunoffOptions {
  /** No storage on the surface and no delay: coefficient times intensity times area. */
  readonly instantaneous?: boolean;
}

const hardSurfaces: readonly string[] = ['roof', 'paving', 'pool'];
/** A hard surface that answers within this time is taken as instantaneous. Source: CALC decision, ours. */
const quickResponse = MINUTE;

function isQuick(catchment: Catchment, peakIntensity: number): boolean {
  if (!hardSurfaces.includes(catchment.surface) || peakIntensity <= 0) return false;
  const plane = { length: catchment.flowLength, slope: catchment.slope, roughness: catchment.roughness };
  return planeEquilibriumTime(plane, peakIntensity) < quickResponse;
}

function runoffOf(catchment: Catchment, blocks: readonly number[], block: number, perBlock: number, options: RunoffOptions): Float64Array {
  const storage = options.instantaneous === true ? 0 : catchment.depressionStorage;
  const excess = volumetricLoss(blocks, catchment.coefficient, storage).map((depth) => intensityOf(depth, block));
  const flows = new Float64Array(blocks.length * perBlock);
  const peak = excess.reduce((most, value) => Math.max(most, value), 0);
  if (options.instantaneous === true || catchment.area === 0 || isQuick(catchment, peak)) {
    for (let i = 0; i < flows.length; i += 1) flows[i] = excess[Math.floor(i / perBlock)]! * catchment.area;
    return flows;
  }
  // Rain stays a mean of its block, but the wave moves on the routing grid: block by block it would lose its crest.
  const plane = { length: catchment.flowLength, slope: catchment.slope, roughness: catchment.roughness };
  const perStep = flows.map((_, i) => excess[Math.floor(i / perBlock)]!);
  const { outflow } = kinematicPlane(plane, Array.from(perStep), block / perBlock, planeCells);
  const width = catchment.area / catchment.flowLength;
  for (let i = 0; i < flows.length; i += 1) flows[i] = outflow[i]! * width;
  return flows;
}

/**
 * Runoff of every catchment in the design storm of a return period.
 * Rain stays averaged over its blocks; the surfaces alone delay it, as kinematic planes or not at all.
 */
export function stormRunoff(document: DesignDocument, returnPeriod: number, options: RunoffOptions = {}): StormRunoff {
  const { table, storm, allowance } = document.rain;
  const blocks = alternatingBlock(table, returnPeriod, storm.duration, storm.block, allowance);
  const perBlock = Math.max(1, Math.floor(storm.block / routingStep + 0.5));
  const intensity = new Float64Array(blocks.length * perBlock);
  for (let i = 0; i < intensity.length; i += 1) intensity[i] = intensityOf(blocks[Math.floor(i / perBlock)]!, storm.block);
  return {
    returnPeriod, step: storm.block / perBlock, steps: intensity.length, intensity,
    runoff: document.site.catchments.map((catchment) => runoffOf(catchment, blocks, storm.block, perBlock, options)),
  };
}

