import { GRAVITY } from '../common/constants.ts';
import type { CatchBasin, Channel, DesignDocument, Part, Pipe } from '../document/document.ts';
import { GRATE_ORIFICE } from '../inlet/sagGrate.ts';
import { GRATE_WEIR } from '../inlet/weir.ts';
import { PI } from '../math/constants.ts';
import { pow } from '../math/pow.ts';
import type { Conduit, Link, Returns, StorePlace } from './model.ts';

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

/** How the path of an inlet goes on: the store it ends in, and the standing water of an open end. */
export interface LinkEnd {
  readonly to: StorePlace | null;
  readonly returns: Returns | null;
  /** Water level at an outlet; -Infinity where a store stands at the end. */
  readonly standing: number;
}

/** Losses of pipes in series, from the entrance into the first to rest behind the last [s2/m5]; `mouth` is the opening when there is no pipe. */
export function pathResistance(parts: readonly Part[], mouth: number): number {
  const pipes = parts.filter((part): part is Pipe => part.kind === 'pipe');
  const first = pipes[0]?.diameter ?? mouth;
  const last = pipes[pipes.length - 1]?.diameter ?? mouth;
  return endLoss(entranceLoss, first) + pipes.reduce((sum, pipe) => sum + pipeResistance(pipe), 0) + endLoss(exitLoss, last);
}

function mouthDiameter(part: Channel | CatchBasin, parts: readonly Part[]): number | null {
  if (part.kind === 'channel') return part.outletDiameter;
  return parts.find((item): item is Pipe => item.kind === 'pipe')?.diameter ?? null;
}

/** The pipe that holds the water of a path back: its last, or one that was laid climbing to a higher hump. */
function holdingPipe(pipes: readonly Pipe[]): Pipe | undefined {
  return pipes.reduce<Pipe | undefined>((held, pipe) => (held !== undefined && pipe.invertDown > pipe.invertUp && pipe.invertDown > held.invertDown ? pipe : held), pipes[pipes.length - 1]);
}

/** Level over which a path runs freely: the crown of its last pipe, which a full pipe keeps wet, or of a hump before it. */
function freeEnd(part: Channel | CatchBasin, parts: readonly Part[]): number {
  const held = holdingPipe(parts.filter((item): item is Pipe => item.kind === 'pipe'));
  if (held !== undefined) return held.invertDown + held.diameter;
  return part.kind === 'channel' ? part.invertDown + (part.outletDiameter ?? part.depth / 2) : part.invertOut;
}

interface Grating {
  readonly edge: number;
  readonly area: number;
  readonly clogging: number;
}

function grateOf(part: Channel | CatchBasin): Grating {
  if (part.kind === 'catchBasin') return { edge: part.gratePerimeter, area: part.grateOpenArea, clogging: part.clogging };
  return { edge: 2 * (part.length + part.width), area: part.length * part.width * part.grate.openAreaRatio, clogging: part.grate.clogging };
}

/**
 * The sealed path of one inlet as a link of the router.
 * @param parts the inlet and the pipes down to the first store; a catch basin that is a store of its own has none: its grate alone is the link
 */
export function linkOf(document: DesignDocument, part: Channel | CatchBasin, parts: readonly Part[], pond: number, end: LinkEnd): Link {
  const grate = grateOf(part);
  const root2g = Math.sqrt(2 * GRAVITY);
  const lowest = document.site.lowSpots[pond]!.stageArea[0]!.level;
  const grateOrifice = grate.clogging * GRATE_ORIFICE * grate.area * root2g;
  const shared = {
    id: part.id, pond, basin: end.to?.kind === 'basin' ? end.to.index : -1, to: end.to, returns: end.returns,
    grateLevel: Math.max(part.grateLevel, lowest - 0.05), grateWeir: grate.clogging * GRATE_WEIR * grate.edge, grateOrifice,
  };
  if (parts.length === 0 && part.kind === 'catchBasin') {
    const resistance = grateOrifice > 0 ? 1 / (grateOrifice * grateOrifice) : endLoss(exitLoss, 0.01);
    return { ...shared, mouthLevel: part.invertOut, mouthOrifice: null, resistance, freeLevel: part.invertOut };
  }
  const mouth = mouthDiameter(part, parts);
  const mouthInvert = part.kind === 'channel' ? part.invertDown : part.invertOut;
  return {
    ...shared, mouthLevel: mouthInvert + (mouth ?? 0) / 2, mouthOrifice: mouth === null ? null : mouthCoefficient * circleArea(mouth) * root2g,
    resistance: pathResistance(parts, mouth ?? 0.1), freeLevel: Math.max(end.standing, freeEnd(part, parts)),
  };
}

/** The pipes from a junction on as a conduit. `base` is the level of the junction's floor. */
export function conduitOf(junction: Part, index: number, parts: readonly Part[], base: number, end: LinkEnd): Conduit {
  const pipes = parts.filter((item): item is Pipe => item.kind === 'pipe');
  const first = pipes[0];
  const held = holdingPipe(pipes);
  const opening = first?.diameter ?? 0.1;
  return {
    id: junction.id, junction: index, entrance: junction.kind === 'catchBasin' ? 'box' : 'joint', to: end.to, returns: end.returns, diameterUp: opening, invertUp: base,
    diameterDown: held?.diameter ?? opening, invertDown: held?.invertDown ?? base, resistance: pathResistance(pipes, opening), standing: end.standing,
  };
}
