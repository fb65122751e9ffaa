/**
 * Volume against water level on an even grid of levels, both ways by straight lines,
 * so that level and volume stay exact inverses of each other.
 */
export class LevelTable {
  readonly bottom: number;
  readonly top: number;
  /** Water-surface area at the level of the last `look` [m2]. */
  lastArea = 0;
  private readonly cells: number;
  private readonly step: number;
  private readonly perStep: number;
  private readonly volumes: Float64Array;
  private readonly topArea: number;

  private constructor(bottom: number, top: number, volumes: Float64Array) {
    this.bottom = bottom;
    this.top = top;
    this.volumes = volumes;
    this.cells = volumes.length - 1;
    this.step = (top - bottom) / this.cells;
    this.perStep = 1 / this.step;
    this.topArea = (volumes[this.cells]! - volumes[this.cells - 1]!) * this.perStep;
  }

  /** @param volumeAt volume below a level [m3], 0 at `bottom` and rising */
  static tabulate(bottom: number, top: number, cells: number, volumeAt: (level: number) => number): LevelTable {
    const volumes = new Float64Array(cells + 1);
    for (let i = 1; i <= cells; i += 1) volumes[i] = volumeAt(bottom + (i * (top - bottom)) / cells);
    return new LevelTable(bottom, top, volumes);
  }

  /** Volume below a level [m3]; grows with the last area above the grid, 0 below it. The area is left in `lastArea`. */
  look(level: number): number {
    const x = (level - this.bottom) * this.perStep;
    if (x >= this.cells) {
      this.lastArea = this.topArea;
      return this.volumes[this.cells]! + (level - this.top) * this.topArea;
    }
    const i = x > 0 ? Math.floor(x) : 0;
    const low = this.volumes[i]!;
    const rise = this.volumes[i + 1]! - low;
    this.lastArea = rise * this.perStep;
    return x > 0 ? low + rise * (x - i) : 0;
  }

  volume(level: number): number {
    return this.look(level);
  }

  /** Water-surface area of the cell that holds a level [m2]. */
  area(level: number): number {
    this.look(level);
    return this.lastArea;
  }

  /** Level at which this volume stands [m]. */
  level(volume: number): number {
    if (volume <= 0) return this.bottom;
    const { volumes, cells } = this;
    if (volume >= volumes[cells]!) return this.top + (volume - volumes[cells]!) / this.topArea;
    let low = 0;
    let high = cells;
    while (high - low > 1) {
      const middle = Math.floor((low + high) / 2);
      if (volumes[middle]! <= volume) low = middle;
      else high = middle;
    }
    const base = volumes[low]!;
    return this.bottom + this.step * (low + (volume - base) / (volumes[low + 1]! - base));
  }

  /** The same table with every volume multiplied. */
  scaled(factor: number): LevelTable {
    return new LevelTable(this.bottom, this.top, this.volumes.map((volume) => volume * factor));
  }
}

/** A flow against a level or a head on an even grid, by straight lines; constant beyond both ends. */
export class FlowTable {
  readonly bottom: number;
  readonly top: number;
  /** Slope at the place of the last `flow` [m2/s]. */
  lastSlope = 0;
  private readonly cells: number;
  private readonly perStep: number;
  private readonly flows: Float64Array;

  private constructor(bottom: number, top: number, flows: Float64Array) {
    this.bottom = bottom;
    this.top = top;
    this.flows = flows;
    this.cells = flows.length - 1;
    this.perStep = this.cells / (top - bottom);
  }

  static tabulate(bottom: number, top: number, cells: number, flowAt: (level: number) => number): FlowTable {
    const flows = new Float64Array(cells + 1);
    for (let i = 0; i <= cells; i += 1) flows[i] = flowAt(bottom + (i * (top - bottom)) / cells);
    return new FlowTable(bottom, top, flows);
  }

  /** Between this table and another of the same grid, by a share from 0 to 1, times a factor. */
  mixed(other: FlowTable, share: number, factor: number): FlowTable {
    return new FlowTable(this.bottom, this.top, this.flows.map((flow, i) => factor * (flow + share * (other.flows[i]! - flow))));
  }

  /** The greater of two tables of the same grid. */
  greater(other: FlowTable): FlowTable {
    return new FlowTable(this.bottom, this.top, this.flows.map((flow, i) => Math.max(flow, other.flows[i]!)));
  }

  /** Whether this table is at no place of the same grid above another. */
  isNowhereAbove(other: FlowTable): boolean {
    return this.flows.every((flow, i) => flow <= other.flows[i]!);
  }

  /** Sum of two tables of the same grid. */
  plus(other: FlowTable): FlowTable {
    return new FlowTable(this.bottom, this.top, this.flows.map((flow, i) => flow + other.flows[i]!));
  }

  /** The table of a head as a table of the level that the head is counted down from: x becomes `from` - x. */
  mirrored(from: number): FlowTable {
    return new FlowTable(from - this.top, from - this.bottom, Float64Array.from(this.flows).reverse());
  }

  flow(level: number): number {
    const x = (level - this.bottom) * this.perStep;
    this.lastSlope = 0;
    if (x <= 0) return this.flows[0]!;
    if (x >= this.cells) return this.flows[this.cells]!;
    const i = Math.floor(x);
    const low = this.flows[i]!;
    const rise = this.flows[i + 1]! - low;
    this.lastSlope = rise * this.perStep;
    return low + rise * (x - i);
  }
}
