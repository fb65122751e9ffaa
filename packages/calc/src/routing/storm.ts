import { DAY, MINUTE } from '../common/constants.ts';
import type { DesignDocument } from '../document/document.ts';
import { alternatingBlock } from '../rain/alternatingBlock.ts';
import { depthAt, intensityOf } from '../rain/depthAt.ts';
import { scsFraction, type ScsType } from '../rain/scsDistribution.ts';
import { catchmentRunoff, type RunoffOptions } from './catchmentRunoff.ts';

export type { RunoffOptions } from './catchmentRunoff.ts';

/** Grid of the routing [s]. Source: the trade routes at one minute or finer. */
export const routingStep = MINUTE;
/** A long record of coarse readings is routed on a coarser grid: no more steps than these. Source: ours. */
const mostSteps = 50_000;

/** The rain of one storm on the routing grid, and what each surface makes of it. */
export interface StormRunoff {
  /** [years], 0 for a recorded storm. */
  readonly returnPeriod: number;
  readonly step: number;
  readonly steps: number;
  /** Rain intensity of each step [m/s]. */
  readonly intensity: Float64Array;
  /** Runoff of each catchment, in the order of the document: mean flow of each step [m3/s]. */
  readonly runoff: readonly Float64Array[];
}

/** Depth of each block of an NRCS day [mm]. */
function nrcsBlocks(document: DesignDocument, type: ScsType, returnPeriod: number): number[] {
  const { table, storm, allowance } = document.rain;
  const depth = depthAt(table, DAY, returnPeriod) * (1 + allowance);
  const count = Math.floor(DAY / storm.block + 0.5);
  return Array.from({ length: count }, (_, i) => depth * (scsFraction(type, Math.min(DAY, (i + 1) * storm.block)) - scsFraction(type, i * storm.block)));
}

/** Depth of each block of the designed storm [mm]: nested from the table, or an NRCS type. */
export function designBlocks(document: DesignDocument, returnPeriod: number): number[] {
  const { table, storm, allowance } = document.rain;
  switch (storm.method) {
    case 'alternatingBlock': return alternatingBlock(table, returnPeriod, storm.duration, storm.block, allowance);
    case 'nrcsI': return nrcsBlocks(document, 'I', returnPeriod);
    case 'nrcsIA': return nrcsBlocks(document, 'IA', returnPeriod);
    case 'nrcsII': return nrcsBlocks(document, 'II', returnPeriod);
    case 'nrcsIII': return nrcsBlocks(document, 'III', returnPeriod);
  }
}

/** Runoff of a storm given by the depth of each of its blocks [mm]; rain stays averaged over its blocks. */
export function runoffOfBlocks(document: DesignDocument, returnPeriod: number, blocks: readonly number[], block: number, options: RunoffOptions = {}): StormRunoff {
  const perBlock = Math.max(1, Math.min(Math.floor(block / routingStep + 0.5), Math.floor(mostSteps / blocks.length)));
  const steps = blocks.length * perBlock;
  const intensity = new Float64Array(steps);
  for (let i = 0; i < steps; i += 1) intensity[i] = intensityOf(blocks[Math.floor(i / perBlock)]!, block);
  const grid = { blocks, block, perBlock };
  // Two halves of one roof answer alike; nobody writes into a runoff.
  const known = new Map<string, Float64Array>();
  const runoff = document.site.catchments.map((catchment) => {
    const { surface, area, coefficient, depressionStorage, flowLength, slope, roughness, loss, response } = catchment;
    const key = JSON.stringify([surface, area, coefficient, depressionStorage, flowLength, slope, roughness, loss, response]);
    const made = known.get(key) ?? catchmentRunoff(document, catchment, grid, options);
    known.set(key, made);
    return made;
  });
  return { returnPeriod, step: block / perBlock, steps, intensity, runoff };
}

/**
 * Runoff of every catchment in the design storm of a return period.
 * Rain stays averaged over its blocks; the surfaces alone delay it, each by its own loss and response.
 */
export function stormRunoff(document: DesignDocument, returnPeriod: number, options: RunoffOptions = {}): StormRunoff {
  return runoffOfBlocks(document, returnPeriod, designBlocks(document, returnPeriod), document.rain.storm.block, options);
}

/** Runoff of the recorded storm; null without one. */
export function recordedRunoff(document: DesignDocument): StormRunoff | null {
  const { recorded } = document.rain;
  return recorded === null ? null : runoffOfBlocks(document, 0, recorded.depths, recorded.step);
}
