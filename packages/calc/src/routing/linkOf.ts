import { GRAVITY } from '../common/constants.ts';
import type { CatchBasin, Channel, DesignDocument, Part, Pipe } from '../document/document.ts';
import { GRATE_ORIFICE } from '../inlet/sagGrate.ts';
import { GRATE_WEIR } from '../inlet/weir.ts';
import { PI } from '../math/constants.ts';
import { pow } from '../math/pow.ts';
import type { Link } from './model.ts';

/** Loss coefficients, in velocity heads of the pipe. Source: common handbook values, from memory (FHWA HEC-22 ch. 7). */
export const entranceLoss = 0.5;
export const exitLoss = 1;
export const bendLoss = { long90: 0.3, hard90: 0.9, bend45: 0.2 } as const;
/** Orifice coefficient of a channel or box outlet. Source: C4 of the trade's checks, common practice. */
const mouthCoefficient = 0.62;
const circleArea = (diameter: number): number => 0.25 * PI * diameter * diameter;

/** Head loss of one full pipe for a unit flow squared [s2/m5]: Manning friction and bends. Source: FHWA HEC-22, full flow. */
export function pipeResistance(pipe: Pipe): number {
  const area = circleArea(pipe.diameter);
  const friction = (pipe.roughness * pipe.roughness * pipe.length) / pow(pipe.diameter / 4, 4 / 3);
  const bends = pipe.bends90 * (pipe.longSweep ? bendLoss.long90 : bendLoss.hard90) + pipe.bends45 * bendLoss.bend45;
  return (friction + bends / (2 * GRAVITY)) / (area * area);
}

/** Losses where water enters the path and where it comes to rest, on the area of the pipe there. */
const endLoss = (coefficient: number, diameter: number): number => {
  const area = circleArea(diameter);
  return coefficient / (2 * GRAVITY * area * area);
};

export interface Inlet {
  readonly part: Channel | CatchBasin;
  readonly path: readonly Part[];
}

/** How many inlets use each part: a shared pipe is charged as if each of them carried as much as this one. */
export function sharedBy(inlets: readonly Inlet[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const inlet of inlets) for (const part of inlet.path) counts.set(part.id, (counts.get(part.id) ?? 0) + 1);
  return counts;
}

function mouthDiameter(inlet: Inlet): number | null {
  const { part, path } = inlet;
  const firstPipe = path.find((item): item is Pipe => item.kind === 'pipe');
  if (part.kind === 'channel') return part.outletDiameter;
  return firstPipe?.diameter ?? null;
}

function resistanceOf(inlet: Inlet, shared: ReadonlyMap<string, number>): number {
  let resistance = 0;
  let diameter = mouthDiameter(inlet) ?? 0.1;
  let first = true;
  for (const part of inlet.path) {
    if (part.kind !== 'pipe') continue;
    const users = shared.get(part.id) ?? 1;
    resistance += users * users * (pipeResistance(part) + (first ? endLoss(entranceLoss, part.diameter) : 0));
    first = false;
    diameter = part.diameter;
  }
  if (first) resistance += endLoss(entranceLoss, diameter);
  return resistance + endLoss(exitLoss, diameter);
}

/** Level at the free end of the path: the crown of its last pipe, which a full pipe keeps wet. */
function freeEnd(inlet: Inlet): number {
  const pipes = inlet.path.filter((part): part is Pipe => part.kind === 'pipe');
  const last = pipes[pipes.length - 1];
  if (last !== undefined) return last.invertDown + last.diameter;
  const { part } = inlet;
  return part.kind === 'channel' ? part.invertDown + (part.outletDiameter ?? part.depth / 2) : part.invertOut;
}

function grateOf(part: Channel | CatchBasin): { readonly edge: number; readonly area: number; readonly clogging: number } {
  if (part.kind === 'catchBasin') return { edge: part.gratePerimeter, area: part.grateOpenArea, clogging: part.clogging };
  return { edge: 2 * (part.length + part.width), area: part.length * part.width * part.grate.openAreaRatio, clogging: part.grate.clogging };
}

/** The sealed path of one inlet as a link of the router. `standing` is the outlet's water level, or null at a basin. */
export function linkOf(
  document: DesignDocument, inlet: Inlet, pond: number, basin: number, standing: number | null, shared: ReadonlyMap<string, number>,
): Link {
  const { part } = inlet;
  const grate = grateOf(part);
  const root2g = Math.sqrt(2 * GRAVITY);
  const mouth = mouthDiameter(inlet);
  const mouthInvert = part.kind === 'channel' ? part.invertDown : part.invertOut;
  const lowest = document.site.lowSpots[pond]!.stageArea[0]!.level;
  const free = freeEnd(inlet);
  return {
    id: part.id, pond, basin,
    grateLevel: Math.max(part.grateLevel, lowest - 0.05),
    grateWeir: grate.clogging * GRATE_WEIR * grate.edge,
    grateOrifice: grate.clogging * GRATE_ORIFICE * grate.area * root2g,
    mouthLevel: mouthInvert + (mouth ?? 0) / 2,
    mouthOrifice: mouth === null ? null : mouthCoefficient * circleArea(mouth) * root2g,
    resistance: resistanceOf(inlet, shared),
    freeLevel: standing !== null && standing > free ? standing : free,
  };
}
