import { steepestOf } from './neighbors.ts';
import type { Neighbors } from './neighbors.ts';
import type { Ground } from './surface.ts';

/** A hollow while the water rises, and how it ended. */
export interface Hollow {
  /** Its lowest vertex. */
  readonly pit: number;
  readonly children: readonly number[];
  parent: number | null;
  /** Vertex over which it spills, null for one that nothing leaves. */
  saddle: number | null;
  /** Neighbor of the saddle down which the water then goes; null off the ground. */
  over: number | null;
  /** A hollow too shallow to count became part of this one, or of the open ground (-1). */
  partOf: number | null;
}

export interface Flood {
  /** Place of each vertex in the order of flooding: rising level, then number. */
  readonly rank: Int32Array;
  /** Steepest way down along the edges; -1 at a lowest vertex. */
  readonly down: Int32Array;
  readonly hollows: readonly Hollow[];
  /** The hollow that each vertex was flooded with; -1 for open ground. */
  readonly hollowOf: Int32Array;
}

const OUTSIDE = -1;

class Rising {
  readonly rank: Int32Array;
  readonly hollows: Hollow[] = [];
  readonly hollowOf: Int32Array;
  private readonly surface: Ground;
  private readonly neighbors: Neighbors;
  private readonly least: number;
  private readonly above: Int32Array;
  /** Hollow of each root of the joined water, OUTSIDE for water that has found a way out. */
  private readonly waterOf: Int32Array;

  constructor(surface: Ground, neighbors: Neighbors, least: number) {
    const count = surface.x.length;
    this.surface = surface;
    this.neighbors = neighbors;
    this.least = least;
    this.rank = new Int32Array(count);
    this.hollowOf = new Int32Array(count).fill(OUTSIDE);
    this.above = Int32Array.from({ length: count }, (_, i) => i);
    this.waterOf = new Int32Array(count).fill(OUTSIDE);
  }

  rise(): void {
    const { level } = this.surface;
    const order = level.map((_, i) => i).sort((p, q) => level[p]! - level[q]!); // a sort keeps equals in their order
    order.forEach((vertex, i) => { this.rank[vertex] = i; });
    for (const vertex of order) this.flood(vertex);
  }

  private root(vertex: number): number {
    let top = vertex;
    while (this.above[top] !== top) top = this.above[top]!;
    for (let v = vertex; v !== top; ) {
      const up = this.above[v]!;
      this.above[v] = top;
      v = up;
    }
    return top;
  }

  private open(pit: number, children: readonly number[]): number {
    this.hollows.push({ pit, children, parent: null, saddle: null, over: null, partOf: null });
    const made = this.hollows.length - 1;
    for (const child of children) this.hollows[child]!.parent = made;
    return made;
  }

  private flood(vertex: number): void {
    const lower = this.neighbors.of[vertex]!.filter((n) => this.rank[n]! < this.rank[vertex]!);
    const roots = [...new Set(lower.map((n) => this.root(n)))];
    const waters = [...new Set(roots.map((r) => this.waterOf[r]!))];
    const free = this.neighbors.open[vertex] === 1 || waters.includes(OUTSIDE);
    const inner = waters.filter((w) => w !== OUTSIDE);
    let water = OUTSIDE;
    if (!free && inner.length === 0) water = this.open(vertex, []);
    else if (inner.length > 0) water = this.meet(vertex, lower, inner, free);
    for (const r of roots) this.above[r] = vertex;
    this.waterOf[vertex] = water;
    this.hollowOf[vertex] = water;
  }

  /** Several waters meet at a vertex, or one finds its way out there. */
  private meet(vertex: number, lower: readonly number[], inner: readonly number[], free: boolean): number {
    const { level } = this.surface;
    const depth = (w: number): number => level[vertex]! - level[this.hollows[w]!.pit]!;
    let standing = inner.filter((w) => depth(w) > 0 && depth(w) >= this.least);
    const lowest = inner.reduce((best, w) => (this.rank[this.hollows[w]!.pit]! < this.rank[this.hollows[best]!.pit]! ? w : best));
    if (!free && standing.length === 0) standing = [lowest];
    const ends = free || standing.length > 1;
    const result = free ? OUTSIDE : standing.length === 1 ? standing[0]! : this.open(this.hollows[lowest]!.pit, standing);
    for (const w of inner) {
      const stands = standing.includes(w);
      if (stands && !ends) continue;
      const hollow = this.hollows[w]!;
      const targets = free ? [OUTSIDE] : standing.filter((other) => other !== w);
      const ways = lower.filter((n) => targets.includes(this.waterOf[this.root(n)]!));
      const over = steepestOf(this.surface, this.rank, vertex, ways);
      hollow.saddle = vertex;
      hollow.over = over < 0 ? null : over;
      if (!stands) hollow.partOf = result;
    }
    return result;
  }
}

/**
 * Floods the ground from below: vertices in rising order join the waters next to them; where two waters meet, or one
 * reaches the open edge, the hollows in them are full.
 *
 * @param least hollows less deep than this [m] do not count
 * Source: order of flooding by Barnes, Lehman and Mulla 2014, Priority-flood, Computers and Geosciences 62;
 * nesting by Barnes, Callaghan and Wickert 2020, Earth Surface Dynamics 8 (from memory)
 */
export function flood(surface: Ground, neighbors: Neighbors, least: number): Flood {
  const rising = new Rising(surface, neighbors, least);
  rising.rise();
  const down = Int32Array.from(surface.x, (_, v) => steepestOf(surface, rising.rank, v, neighbors.of[v]!));
  return { rank: rising.rank, down, hollows: rising.hollows, hollowOf: rising.hollowOf };
}
