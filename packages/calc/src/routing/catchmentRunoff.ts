import { DAY, MINUTE } from '../common/constants.ts';
import type { Catchment, DesignDocument } from '../document/document.ts';
import { depthAt, intensityOf } from '../rain/depthAt.ts';
import { curveNumberExcess } from '../runoff/curveNumber.ts';
import { greenAmptExcess } from '../runoff/greenAmpt.ts';
import { hortonExcess } from '../runoff/horton.ts';
import { kinematicPlane, LEAST_PLANE_SLOPE, planeEquilibriumTime } from '../runoff/kinematicPlane.ts';
import { shallowFlowVelocity } from '../runoff/shallowFlow.ts';
import { LONGEST_SHEET, sheetFlowTime } from '../runoff/sheetFlow.ts';
import { blockFor, LEAST_AREA, unitHydrographStorm } from '../runoff/unitHydrograph.ts';
import { volumetricLoss } from '../runoff/volumetricLoss.ts';

const planeCells = 8;

/** Blocks of rain [mm], their length [s] and how many routing steps one has. */
export interface RainGrid {
  readonly blocks: readonly number[];
  readonly block: number;
  readonly perBlock: number;
}

export interface RunoffOptions {
  /** No storage on the surface and no delay: what the loss method leaves, times the area. */
  readonly instantaneous?: boolean;
}

const hardSurfaces: readonly string[] = ['roof', 'paving', 'pool'];
/** A hard surface that answers within this time is taken as instantaneous. Source: ours. */
const quickResponse = MINUTE;

/**
 * Rain that runs off, block by block [m/s], by the surface's own loss method.
 * Depression storage is filled first; the coefficient belongs to the volumetric method alone.
 */
export function rainExcess(catchment: Catchment, grid: RainGrid, options: RunoffOptions): number[] {
  const { loss } = catchment;
  const storage = options.instantaneous === true ? 0 : catchment.depressionStorage;
  if (loss.method === 'volumetric') return volumetricLoss(grid.blocks, catchment.coefficient, storage).map((depth) => intensityOf(depth, grid.block));
  const wet = volumetricLoss(grid.blocks, 1, storage);
  if (loss.method === 'curveNumber') return curveNumberExcess(wet, loss.curveNumber).map((depth) => intensityOf(depth, grid.block));
  const rain = wet.map((depth) => intensityOf(depth, grid.block));
  if (loss.method === 'greenAmpt') {
    return greenAmptExcess({ conductivity: loss.conductivity, suctionDeficit: loss.suctionHead * loss.moistureDeficit }, rain, grid.block);
  }
  return hortonExcess({ initialRate: loss.initial, finalRate: loss.final, decay: loss.decay }, rain, grid.block);
}

const planeOf = ({ flowLength, slope, roughness }: Catchment): { length: number; slope: number; roughness: number } => ({ length: flowLength, slope, roughness });

function isQuick(catchment: Catchment, peak: number): boolean {
  if (catchment.response === 'instantaneous') return true;
  return hardSurfaces.includes(catchment.surface) && peak > 0 && planeEquilibriumTime(planeOf(catchment), peak) < quickResponse;
}

/** Time of concentration of a large surface [s]: sheet flow over its first 300 ft, shallow flow beyond. Source: TR-55 chapter 3. */
function concentrationTime(document: DesignDocument, catchment: Catchment): number {
  const { table } = document.rain;
  const { durations, returnPeriods } = table;
  const longest = Math.min(DAY, durations[durations.length - 1]!);
  const twoYears = Math.max(2, returnPeriods[0]!);
  const slope = Math.max(catchment.slope, LEAST_PLANE_SLOPE);
  const sheet = Math.min(catchment.flowLength, LONGEST_SHEET);
  const rest = catchment.flowLength - sheet;
  const paved = hardSurfaces.includes(catchment.surface) ? 'paved' : 'unpaved';
  return sheetFlowTime(catchment.roughness, sheet, depthAt(table, longest, twoYears), slope) + (rest > 0 ? rest / shallowFlowVelocity(paved, slope) : 0);
}

/** By the unit hydrograph, on blocks short enough for it; null where the surface is under an acre or answers too quickly for the method. */
function byUnitHydrograph(document: DesignDocument, catchment: Catchment, excess: readonly number[], grid: RainGrid, flows: Float64Array): boolean {
  if (catchment.response !== 'unitHydrograph' || catchment.area < LEAST_AREA) return false;
  const timeOfConcentration = concentrationTime(document, catchment);
  const longest = blockFor(timeOfConcentration);
  const step = grid.block / grid.perBlock;
  if (longest === null || step > longest) return false;
  const depths = Array.from(flows, (_, i) => excess[Math.floor(i / grid.perBlock)]! * step);
  const ordinates = unitHydrographStorm({ area: catchment.area, timeOfConcentration, duration: step, shape: 'curvilinear' }, depths);
  for (let i = 0; i < flows.length; i += 1) flows[i] = ordinates[i]!;
  return true;
}

/** Runoff of one catchment in a storm: mean flow of each routing step [m3/s]. */
export function catchmentRunoff(document: DesignDocument, catchment: Catchment, grid: RainGrid, options: RunoffOptions): Float64Array {
  const { perBlock } = grid;
  const excess = rainExcess(catchment, grid, options);
  const flows = new Float64Array(grid.blocks.length * perBlock);
  const peak = excess.reduce((most, value) => Math.max(most, value), 0);
  if (options.instantaneous === true || catchment.area === 0 || isQuick(catchment, peak)) {
    for (let i = 0; i < flows.length; i += 1) flows[i] = excess[Math.floor(i / perBlock)]! * catchment.area;
    return flows;
  }
  if (byUnitHydrograph(document, catchment, excess, grid, flows)) return flows;
  // Rain stays a mean of its block, but the wave moves on the routing grid: block by block it would lose its crest.
  const perStep = flows.map((_, i) => excess[Math.floor(i / perBlock)]!);
  const { outflow } = kinematicPlane(planeOf(catchment), Array.from(perStep), grid.block / perBlock, planeCells);
  const width = catchment.area / catchment.flowLength;
  for (let i = 0; i < flows.length; i += 1) flows[i] = outflow[i]! * width;
  return flows;
}
