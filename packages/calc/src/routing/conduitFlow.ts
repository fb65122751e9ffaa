import { GRAVITY } from '../common/constants.ts';
import { circleSection } from '../pipe/circleSection.ts';
import { pow } from '../math/pow.ts';
import { type FlowAt, rootHead, rootSlope } from './flowAt.ts';
import type { Conduit } from './model.ts';

const cells = 64;
const finePoints = 20 * cells;
/** Depth, in diameters, up to which the entrance is tabulated; an orifice beyond. */
const entranceTop = 1.5;
/** Orifice coefficient of a drowned entrance. Source: common practice. */
const entranceOrifice = 0.62;
const fullArea = circleSection(1, 1).area;

/** Conveyance of a part-full circle over that of the full one, never falling. Source: Manning, geometry. */
function conveyanceTable(): Float64Array {
  const full = circleSection(1, 1);
  const table = new Float64Array(cells + 1);
  for (let i = 1; i <= cells; i += 1) {
    const { area, hydraulicRadius } = circleSection(1, i / cells);
    table[i] = Math.max(table[i - 1]!, Math.min(1, (area / full.area) * pow(hydraulicRadius / full.hydraulicRadius, 2 / 3)));
  }
  return table;
}

/** Depth and flow at a critical section in a circle of diameter 1 m, for the energy of each; near the crown that is far beyond any entrance. */
function criticalPoints(): { readonly energy: number; readonly flow: number }[] {
  return Array.from({ length: finePoints }, (_, k) => {
    const depth = (k + 1) / (finePoints + 1);
    const { area, topWidth } = circleSection(1, depth);
    return { energy: depth + area / (2 * topWidth), flow: area * Math.sqrt((GRAVITY * area) / topWidth) };
  });
}

/**
 * Flow into a circle of diameter 1 m from a pool whose depth is given in diameters: critical depth in the mouth, and where
 * that gives less the drowned mouth of a box. Pipes that meet in a joint have no mouth to be drowned.
 */
function entranceTable(points: readonly { readonly energy: number; readonly flow: number }[], drowns: boolean): Float64Array {
  const table = new Float64Array(cells + 1);
  let k = 1;
  for (let i = 1; i <= cells; i += 1) {
    const depth = (i * entranceTop) / cells;
    while (points[k]!.energy < depth) k += 1;
    const a = points[k - 1]!;
    const b = points[k]!;
    const critical = a.flow + ((b.flow - a.flow) * (depth - a.energy)) / (b.energy - a.energy);
    const drowned = drowns && depth > 1 ? entranceOrifice * fullArea * Math.sqrt(2 * GRAVITY * (depth - 0.5)) : Infinity;
    table[i] = Math.max(table[i - 1]!, Math.min(critical, drowned));
  }
  return table;
}

const conveyances = conveyanceTable();
const critical = criticalPoints();
const entrances = { box: entranceTable(critical, true), joint: entranceTable(critical, false) } as const;

let slopeOfLast = 0;
/** Value of a table over 0 to `top`, above 0; its slope is left in `slopeOfLast`. */
function along(table: Float64Array, top: number, x: number): number {
  const place = (x * cells) / top;
  slopeOfLast = 0;
  if (place >= cells) return table[cells]!;
  const i = Math.floor(place);
  const rise = table[i + 1]! - table[i]!;
  slopeOfLast = (rise * cells) / top;
  return table[i]! + rise * (place - i);
}

/**
 * Flow from a junction through its pipe, free, part full, full or backed up: the lesser of what the entrance takes and
 * what friction lets through.
 *
 *   friction  Q = k(y/D) * sqrt((h1 - tail)/R),  tail = greater of h2 and the free end's own depth
 *
 * @param conduit pipe or pipes in series
 * @param from level in the junction [m]
 * @param to   level in the store downstream [m]; ignored at an outlet
 * @param out  flow [m3/s] with its slopes; negative when the store stands higher
 * Limits: quasi-steady; a flat or adverse pipe carries only what its head above the far crown drives
 * Source: energy equation with Manning friction, FHWA HEC-22; critical depth at the entrance, Chow 1959 ch. 4
 */
export function conduitFlowAt(conduit: Conduit, from: number, to: number, out: FlowAt, conveyance = 1 / Math.sqrt(conduit.resistance)): void {
  const tailLevel = conduit.to === null ? conduit.standing : to;
  const depth = from - conduit.invertUp;
  const { diameterUp } = conduit;
  const wet = depth < conduit.diameterDown ? depth : conduit.diameterDown;
  const own = conduit.invertDown + wet;
  const backs = tailLevel > own;
  const drive = from - (backs ? tailLevel : own);
  if (drive <= 0 || depth <= 0) {
    backward(conduit, from, tailLevel, conveyance, out);
    return;
  }
  const root = rootHead(drive);
  const share = along(conveyances, 1, depth / diameterUp);
  const shareSlope = slopeOfLast / diameterUp;
  const friction = share * root * conveyance;
  const full = share * rootSlope(drive, root) * conveyance;
  const entrance = entranceFlow(depth, diameterUp, entrances[conduit.entrance]);
  if (entrance < friction) out.set(entrance, slopeOfLast, 0);
  else if (backs) out.set(friction, full + shareSlope * root * conveyance, -full);
  else out.set(friction, (wet < conduit.diameterDown ? 0 : full) + shareSlope * root * conveyance, 0);
}

/** Flow into a pipe from a depth of water over its invert [m3/s]; its slope is left in `slopeOfLast`. */
function entranceFlow(depth: number, diameter: number, table: Float64Array): number {
  const ratio = depth / diameter;
  const size = diameter * diameter * Math.sqrt(diameter);
  if (ratio < entranceTop) {
    const flow = size * along(table, entranceTop, ratio);
    slopeOfLast *= size / diameter;
    return flow;
  }
  // Beyond the table the flow grows with the root of the head over the middle of the mouth, which is 1 at its end.
  const full = size * table[cells]!;
  const root = Math.sqrt(ratio - 0.5);
  slopeOfLast = (full * 0.5) / (root * diameter);
  return full * root;
}

function backward(conduit: Conduit, from: number, tail: number, conveyance: number, out: FlowAt): void {
  const base = from > conduit.invertUp ? from : conduit.invertUp;
  if (conduit.to === null || tail <= base || tail <= conduit.invertDown) {
    out.set(0, 0, 0);
    return;
  }
  const root = rootHead(tail - base);
  const share = along(conveyances, 1, (tail - conduit.invertDown) / conduit.diameterDown);
  const shareSlope = slopeOfLast / conduit.diameterDown;
  const full = share * rootSlope(tail - base, root) * conveyance;
  out.set(-share * root * conveyance, from > conduit.invertUp ? full : 0, -full - shareSlope * root * conveyance);
}
