import { type FlowAt, rootHead, rootSlope } from './flowAt.ts';

/** Head downstream, as a share of the head upstream, from which a weir is drowned. Source: broad-crested weir, critical depth 2/3 H. */
const drownedFrom = 2 / 3;
/** Joins the drowned form to the free one at that share: sqrt(27)/2. */
const drownedFactor = 2.598076211353316;

/**
 * Flow over a crest between two levels, free or drowned, in either direction.
 *
 *   free     Q = C*L*H1^1.5                     H2 <= 2/3 H1
 *   drowned  Q = sqrt(27)/2 * C*L*H2*sqrt(H1-H2)
 *
 * @param coefficient C*L [m1.5/s]
 * @param crest level [m]
 * @param from, to water levels on both sides [m]; -Infinity for a fall into the open
 * @param out flow [m3/s], positive from `from`, with its slopes
 * Limits: rises with `from` and falls with `to`, so that routing keeps its order
 * Source: free form FHWA HEC-22, 3.0 in US units; drowned broad-crested weir from critical depth, handbooks of canal structures (from memory)
 */
export function weirFlowAt(coefficient: number, crest: number, from: number, to: number, out: FlowAt): void {
  const up = from - crest;
  const down = to - crest;
  if (up <= 0 && down <= 0) out.set(0, 0, 0);
  else if (up >= down) overCrest(coefficient, up, down, out);
  else {
    overCrest(coefficient, down, up, out);
    out.set(-out.flow, -out.to, -out.from);
  }
}

function overCrest(coefficient: number, up: number, down: number, out: FlowAt): void {
  if (down <= drownedFrom * up) {
    const root = Math.sqrt(up);
    out.set(coefficient * up * root, 1.5 * coefficient * root, 0);
    return;
  }
  const factor = drownedFactor * coefficient;
  const root = rootHead(up - down);
  const slope = rootSlope(up - down, root);
  out.set(factor * down * root, factor * down * slope, factor * (root - down * slope));
}
