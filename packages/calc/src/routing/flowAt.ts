/**
 * A flow and how it answers to the two levels that it depends on. Written in place: the routing loop allocates nothing.
 * `from` is its slope against the level it leaves, never below 0; `to` that against the level it enters, never above 0.
 */
export class FlowAt {
  flow = 0;
  from = 0;
  to = 0;

  set(flow: number, from: number, to: number): void {
    this.flow = flow;
    this.from = from;
    this.to = to;
  }
}

/** Below this head [m] a square-root law is replaced by its chord, so that flow is steep and not infinite at rest. Source: ours. */
export const chordHead = 0.0001;
const chordSlope = 1 / Math.sqrt(chordHead);

/** sqrt(h), its chord under `chordHead`, and the same with the other sign. */
export function rootHead(head: number): number {
  if (head >= chordHead) return Math.sqrt(head);
  if (head <= -chordHead) return -Math.sqrt(-head);
  return head * chordSlope;
}

/** Slope of `rootHead` where its value is `root`. */
export function rootSlope(head: number, root: number): number {
  if (head >= chordHead) return 0.5 / root;
  return head <= -chordHead ? -0.5 / root : chordSlope;
}
