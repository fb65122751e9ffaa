import { FlowAt, rootHead, rootSlope } from './flowAt.ts';
import type { Link } from './model.ts';

const scratch = new FlowAt();

/**
 * Flow from a pond through grate, mouth and full pipe [m3/s]: the least of the three. Never falls as the pond rises
 * and never rises as the water downstream rises, which keeps the routing in order (more water, no lower level).
 *
 * @param pondLevel water level in the low spot [m]
 * @param tailLevel water level in the store downstream, or anything below `freeLevel` for a free end [m]
 * @returns positive into the pipe; negative when the store stands above both the pond and the grate
 * Source: grate as the lesser of weir and orifice, FHWA HEC-22; pipe by the energy equation with its end losses
 */
export function linkFlow(link: Link, pondLevel: number, tailLevel: number): number {
  linkFlowAt(link, pondLevel, tailLevel, scratch);
  return scratch.flow;
}

/** The same with its slopes. `conveyance` of the full path is told by those who ask often [m2.5/s]. */
export function linkFlowAt(link: Link, pondLevel: number, tailLevel: number, out: FlowAt, conveyance = 1 / Math.sqrt(link.resistance)): void {
  const backs = tailLevel > link.freeLevel;
  const tail = backs ? tailLevel : link.freeLevel;
  const upstream = pondLevel > link.grateLevel ? pondLevel : link.grateLevel;
  if (tail >= upstream) {
    backward(link, pondLevel, upstream, backs ? tail : Infinity, conveyance, out);
    return;
  }
  const head = pondLevel - link.grateLevel;
  if (head <= 0) {
    out.set(0, 0, 0);
    return;
  }
  const root = Math.sqrt(head);
  let flow = link.grateWeir * head * root;
  let slope = 1.5 * link.grateWeir * root;
  const orificeRoot = rootHead(head);
  if (link.grateOrifice * orificeRoot < flow) {
    flow = link.grateOrifice * orificeRoot;
    slope = link.grateOrifice * rootSlope(head, orificeRoot);
  }
  const mouth = link.mouthOrifice;
  if (mouth !== null) {
    const above = pondLevel - link.mouthLevel;
    const mouthRoot = above > 0 ? rootHead(above) : 0;
    if (mouth * mouthRoot < flow) {
      flow = mouth * mouthRoot;
      slope = above > 0 ? mouth * rootSlope(above, mouthRoot) : 0;
    }
  }
  const drive = pondLevel - tail;
  const fullRoot = rootHead(drive);
  if (fullRoot * conveyance < flow) {
    const full = rootSlope(drive, fullRoot) * conveyance;
    out.set(fullRoot * conveyance, full, backs ? -full : 0);
  } else out.set(flow, slope, 0);
}

/** A store that stands above pond, grate and the far end of the pipe pushes water back; the free end of an adverse pipe does not. */
/** @param tail level of the store that pushes, Infinity where none does */
function backward(link: Link, pondLevel: number, upstream: number, tail: number, conveyance: number, out: FlowAt): void {
  if (tail === Infinity) {
    out.set(0, 0, 0);
    return;
  }
  const base = upstream > link.freeLevel ? upstream : link.freeLevel;
  const root = rootHead(base - tail);
  const slope = rootSlope(base - tail, root) * conveyance;
  out.set(root * conveyance, pondLevel >= base ? slope : 0, -slope);
}
