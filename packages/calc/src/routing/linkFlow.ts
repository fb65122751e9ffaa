import type { Link } from './model.ts';

/** Below this head [m] a square-root law is replaced by its chord, so that flow is steep and not infinite at rest. */
const chordHead = 0.002;

function rootHead(head: number): number {
  if (head >= chordHead) return Math.sqrt(head);
  if (head <= -chordHead) return -Math.sqrt(-head);
  return head / Math.sqrt(chordHead);
}

/**
 * Flow from a pond through grate, mouth and full pipe [m3/s]: the least of the three. Never falls as the pond rises
 * and never rises as the water downstream rises, which keeps the routing in order (more water, no lower level).
 *
 * @param pondLevel water level in the low spot [m]
 * @param tailLevel water level in the basin, or anything below `freeLevel` for a free end [m]
 * @returns positive into the pipe; negative when the basin stands above both the pond and the grate
 * Source: grate as the lesser of weir and orifice, FHWA HEC-22; pipe by the energy equation with its end losses
 */
export function linkFlow(link: Link, pondLevel: number, tailLevel: number): number {
  const tail = tailLevel > link.freeLevel ? tailLevel : link.freeLevel;
  const upstream = pondLevel > link.grateLevel ? pondLevel : link.grateLevel;
  if (tail > upstream) return rootHead(upstream - tail) / Math.sqrt(link.resistance);
  const head = pondLevel - link.grateLevel;
  if (head <= 0) return 0;
  let flow = link.grateWeir * head * Math.sqrt(head);
  const orifice = link.grateOrifice * rootHead(head);
  if (orifice < flow) flow = orifice;
  if (link.mouthOrifice !== null) {
    const mouth = link.mouthOrifice * rootHead(pondLevel - link.mouthLevel);
    if (mouth < flow) flow = mouth;
  }
  const full = rootHead(pondLevel - tail) / Math.sqrt(link.resistance);
  return full < flow ? full : flow;
}
