import type { Dash, EditHandle, Hatch, HitArea, Item, KeyEntry, MarkKind, PartState, Point, Role, Side, Weight } from '../display.ts';
import { label as labelOf } from '../labels.ts';
import type { Label, LabelCode } from '../labels.ts';
import { drawnX, isCut, mapLine } from './cuts.ts';
import type { Frame } from './frame.ts';

/** Collects what is drawn, in true stations and levels, and turns it into drawn metres. */
export class Pen {
  readonly items: Item[] = [];
  readonly hits: HitArea[] = [];
  readonly #key = new Map<LabelCode, KeyEntry>();
  readonly handles: EditHandle[] = [];
  readonly #anchors = new Map<string, Point>();

  constructor(
    readonly frame: Frame,
    private readonly states: Readonly<Record<string, PartState>>,
    private readonly mini: boolean,
  ) {}

  line(part: string | null, role: Role, points: readonly Point[], weight: Weight = 'normal', dash: Dash = 'solid', of: LabelCode | null = null): void {
    const drawn = this.#trim(mapLine(this.frame.map, points), false);
    if (drawn.length > 1) this.items.push({ kind: 'line', part, role, state: this.stateOf(part), points: drawn, weight, dash, of });
  }

  shape(part: string | null, role: Role, points: readonly Point[], hatch: Hatch, outlined = true): void {
    this.items.push({ kind: 'polygon', part, role, state: this.stateOf(part), points: this.#closed(points), hatch, outlined });
  }

  /** The outline of a part: what is tapped, and what the crew sees as built or held. */
  body(part: string, role: Role, points: readonly Point[], hatch: Hatch = 'paper'): void {
    const state = this.stateOf(part);
    this.shape(part, role, points, state === 'built' && hatch === 'paper' ? 'solid' : hatch);
    if (state === 'held') this.items.push({ kind: 'polygon', part, role: 'sill', state, points: this.#closed(points), hatch: 'held', outlined: false });
    this.#tellState(state);
    this.hit(part, points);
  }

  hit(part: string, points: readonly Point[]): void {
    this.hits.push({ part, points: this.#closed(points) });
  }

  text(part: string | null, role: Role, at: Point, label: Label, side: Side, rank: number): void {
    if (this.mini || isCut(this.frame.map, at[0]) || at[0] > this.frame.to + 120 * this.frame.mx) return;
    const crowded = this.frame.crowded && rank >= 1 ? rank + 1 : rank;
    this.items.push({ kind: 'text', part, role, state: this.stateOf(part), at: this.onSheet(at), label, side, rank: crowded, movable: true });
  }

  mark(part: string | null, role: Role, mark: MarkKind, at: Point, index = 0, value: string | null = null): void {
    if (mark !== 'break' && isCut(this.frame.map, at[0])) return;
    this.items.push({ kind: 'mark', part, role, state: this.stateOf(part), mark, at: this.onSheet(at), index, value });
  }

  /** A level that stands at its part: mark, figure, and the handle by which it is dragged. */
  level(part: string, role: Role, at: Point, label: Label, side: Side, rank: number, field: string | null = null): void {
    if (!this.mini) {
      this.mark(part, role, 'levelMark', at);
      this.legend('drawing.key.level', { kind: 'mark', mark: 'levelMark', role: 'ink' });
    }
    this.text(part, role, at, label, side, rank);
    if (field !== null) this.handle(part, field, at);
  }

  handle(part: string, field: string, at: Point): void {
    this.handles.push({ part, field, at: this.onSheet(at), level: at[1] });
  }

  /** Says once what a mark, line or hatch means. */
  legend(code: LabelCode, symbol: KeyEntry['symbol']): void {
    if (!this.mini) this.#key.set(code, { label: labelOf(code), symbol });
  }

  get key(): readonly KeyEntry[] {
    return [...this.#key.values()];
  }

  /** Where findings, photos and measured levels of this part stand. */
  anchor(id: string, at: Point): void {
    if (!this.#anchors.has(id)) this.#anchors.set(id, at);
  }

  anchorOf(id: string): Point | null {
    return this.#anchors.get(id) ?? null;
  }

  #tellState(state: PartState): void {
    if (state === 'plain') return;
    const symbol = { built: { kind: 'hatch', role: 'ink', hatch: 'solid' }, held: { kind: 'hatch', role: 'sill', hatch: 'held' } } as const;
    this.legend(`drawing.key.${state}`, state === 'built' || state === 'held' ? symbol[state] : { kind: 'line', role: 'ink', weight: 'normal', dash: 'solid', state });
  }

  stateOf(part: string | null): PartState {
    return (part === null ? undefined : this.states[part]) ?? 'plain';
  }

  /** A true point as it is drawn; what lies past the window stands at its edge. */
  onSheet([x, y]: Point): Point {
    const { extent, map } = this.frame;
    return [clamp(drawnX(map, x), extent.x0, extent.x1), clamp(y, extent.y0, extent.y1)];
  }

  #closed(points: readonly Point[]): Point[] {
    const first = points[0];
    if (first === undefined) throw new RangeError('a shape needs points');
    return this.#trim(mapLine(this.frame.map, [...points, first]).slice(0, -1), true);
  }

  /** Keeps everything on the sheet: what runs past the window ends at its edge, at its true slope. */
  #trim(points: readonly Point[], closed: boolean): Point[] {
    const { x0, x1, y0, y1 } = this.frame.extent;
    const onSheet = ([x, y]: Point): boolean => x >= x0 && x <= x1 && y >= y0 && y <= y1;
    if (points.every(onSheet)) return [...points];
    return clipAxis(clipAxis(points, 0, x0, x1, closed), 1, y0, y1, closed);
  }
}

const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

/** A shape is closed along the edge of the sheet; a line just ends there. */
function clipAxis(points: readonly Point[], axis: 0 | 1, low: number, high: number, closed: boolean): Point[] {
  const result: Point[] = [];
  points.forEach((point, index) => {
    const before = points[index - 1];
    if (before !== undefined) {
      const limits = before[axis] < point[axis] ? [low, high] : [high, low];
      for (const limit of limits) {
        if ((before[axis] - limit) * (point[axis] - limit) < 0) result.push(cross(before, point, axis, limit));
      }
    }
    const held = clamp(point[axis], low, high);
    if (!closed && held !== point[axis]) return;
    result.push(axis === 0 ? [held, point[1]] : [point[0], held]);
  });
  return result;
}

function cross(a: Point, b: Point, axis: 0 | 1, limit: number): Point {
  const share = (limit - a[axis]) / (b[axis] - a[axis]);
  return axis === 0 ? [limit, a[1] + share * (b[1] - a[1])] : [a[0] + share * (b[0] - a[0]), limit];
}
