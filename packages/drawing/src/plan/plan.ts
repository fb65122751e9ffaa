import type { Contour, DesignDocument, FlowArrow, PlanCheck, PlanFigure, PlanShape, PlanUse, Position, WaterPolygon } from '@yardfall/calc';
import type { Dash, DisplayList, Extent, Hatch, HitArea, Item, KeyEntry, MarkKind, Point, Role, Side, Weight } from '../display.ts';
import { roundStep } from '../graphs/axis.ts';
import { label } from '../labels.ts';
import type { Label } from '../labels.ts';
import { planExtent } from './view.ts';

/** What the engine made of the spot levels: drawn over the shapes. */
export interface PlanGround {
  readonly contours: readonly Contour[];
  readonly arrows: readonly FlowArrow[];
  /** Water at the level asked for. */
  readonly water: readonly WaterPolygon[];
  readonly lowSpots: readonly { readonly bottom: Position & { readonly level: number }; readonly spillPoint: Position | null; readonly spillLevel: number | null }[];
}

export interface PlanOptions {
  readonly width: number;
  readonly height: number;
  /** The stretch to show; everything by default. */
  readonly extent: Extent | null;
  readonly ground: PlanGround | null;
  readonly figures: readonly PlanFigure[];
  readonly checks: readonly PlanCheck[];
  readonly scaleUnit: 'foot' | 'metre';
  /** A picture lies below: outlines are drawn without filling. */
  readonly over: boolean;
  /** Says below the picture what each line and hatch means: on paper nobody can ask. */
  readonly key: boolean;
}

interface Look {
  readonly role: Role;
  readonly hatch: Hatch;
  readonly weight: Weight;
  readonly dash: Dash;
}

const look = (role: Role, hatch: Hatch = 'none', weight: Weight = 'normal', dash: Dash = 'solid'): Look => ({ role, hatch, weight, dash });

/** Each use by its line and hatch, so that it reads in black and white. */
const looks: Readonly<Record<PlanUse, Look>> = {
  house: look('ink', 'solid', 'bold'), roof: look('ink', 'none', 'thin', 'longDash'), paving: look('slab', 'concrete'), lawn: look('ground', 'none', 'thin', 'dot'), bed: look('ground', 'soil', 'thin'),
  gravel: look('ground', 'stone', 'thin'), permeablePaving: look('slab', 'range', 'thin'), pool: look('water', 'water'), neighbour: look('faint', 'none', 'thin', 'dash'),
  septic: look('sill', 'held', 'normal', 'dash'), lot: look('ink', 'none', 'bold', 'chain'), wall: look('ink', 'none', 'bold'), gutter: look('water', 'none', 'normal', 'longDash'),
  pipe: look('water', 'none', 'bold', 'longDash'), drain: look('water', 'none', 'normal', 'dash'), utility: look('watch', 'none', 'normal', 'chain'), measure: look('faint', 'none', 'thin', 'chain'),
  sill: look('sill'), part: look('water'), tree: look('ground'),
};

/** A scale bar is an eighth to a quarter of the picture. */
const barShare = 0.25;
const foot = 0.3048;

class PlanPen {
  readonly items: Item[] = [];
  readonly hits: HitArea[] = [];

  line(part: string | null, role: Role, points: readonly Point[], weight: Weight = 'normal', dash: Dash = 'solid'): void {
    this.items.push({ kind: 'line', part, role, state: 'plain', points, weight, dash });
  }

  fill(part: string | null, role: Role, points: readonly Point[], hatch: Hatch): void {
    this.items.push({ kind: 'polygon', part, role, state: 'plain', points, hatch, outlined: false });
  }

  text(part: string | null, role: Role, at: Point, words: Label, side: Side, rank: number): void {
    this.items.push({ kind: 'text', part, role, state: 'plain', at, label: words, side, rank, movable: true });
  }

  mark(part: string | null, role: Role, mark: MarkKind, at: Point, value: string | null = null): void {
    this.items.push({ kind: 'mark', part, role, state: 'plain', mark, at, index: 0, value });
  }
}

const pointOf = ({ x, y }: Position): Point => [x, y];

/** The middle of a line by its length, or the mean of an outline's corners: where its name stands. */
function middleOf({ kind, points }: PlanShape): Point {
  if (kind !== 'line') return [points.reduce((sum, { x }) => sum + x, 0) / points.length, points.reduce((sum, { y }) => sum + y, 0) / points.length];
  const lengths = points.slice(1).map((point, i) => Math.hypot(point.x - (points[i]?.x ?? 0), point.y - (points[i]?.y ?? 0)));
  let left = lengths.reduce((sum, length) => sum + length, 0) / 2;
  for (const [i, length] of lengths.entries()) {
    const [from, to] = [points[i], points[i + 1]];
    if (left <= length && from !== undefined && to !== undefined) {
      const share = length === 0 ? 0 : left / length;
      return [from.x + share * (to.x - from.x), from.y + share * (to.y - from.y)];
    }
    left -= length;
  }
  return pointOf(points[0] ?? { x: 0, y: 0 });
}

/** A band about a run: what is tapped, and the hand-dig strip of a utility. Corners are left open; it is no measure. */
export function bandAbout(points: readonly Position[], half: number): Point[] {
  const sides = points.slice(1).map((to, i) => [points[i] ?? to, to] as const);
  const offset = (from: Position, to: Position): Point => {
    const long = Math.hypot(to.x - from.x, to.y - from.y) || 1;
    return [(-(to.y - from.y) / long) * half, ((to.x - from.x) / long) * half];
  };
  const left = sides.flatMap(([from, to]): Point[] => { const [ox, oy] = offset(from, to); return [[from.x + ox, from.y + oy], [to.x + ox, to.y + oy]]; });
  const right = sides.flatMap(([from, to]): Point[] => { const [ox, oy] = offset(from, to); return [[from.x - ox, from.y - oy], [to.x - ox, to.y - oy]]; });
  return [...left, ...right.reverse()];
}

function circle({ x, y }: Position, radius: number): Point[] {
  return Array.from({ length: 16 }, (_, i): Point => [x + radius * Math.cos((i * Math.PI) / 8), y + radius * Math.sin((i * Math.PI) / 8)]);
}

function words(shape: PlanShape, figure: PlanFigure | undefined): Label {
  if (figure === undefined) return label('drawing.value.name', { value: shape.name });
  return label(figure.quantity === 'area' ? 'drawing.plan.area' : 'drawing.plan.length', { name: shape.name, value: figure.drawn });
}

function drawShape(pen: PlanPen, shape: PlanShape, options: PlanOptions, perPixel: number, tolerance: number): void {
  const { role, hatch, weight, dash } = looks[shape.use];
  const points = shape.points.map(pointOf);
  const [place] = shape.points;
  if (place === undefined) return;
  const first = pointOf(place);
  const figure = options.figures.find((entry) => entry.shape === shape.id);
  const reach = 9 * perPixel;
  if (shape.kind === 'area') {
    if (hatch !== 'none' && !options.over) pen.fill(shape.id, role, points, hatch);
    pen.line(shape.id, role, [...points, first], weight, dash);
    pen.hits.push({ part: shape.id, points });
  } else if (shape.kind === 'line') {
    if (shape.use === 'utility' && tolerance > 0) pen.fill(shape.id, 'watch', bandAbout(shape.points, tolerance), 'range');
    pen.line(shape.id, role, points, weight, dash);
    pen.hits.push({ part: shape.id, points: bandAbout(shape.points, reach) });
  } else if (shape.use === 'tree') {
    pen.line(shape.id, role, [...circle(place, 14 * perPixel), [first[0] + 14 * perPixel, first[1]]], 'thin', 'dot');
    pen.hits.push({ part: shape.id, points: circle(place, 14 * perPixel) });
  } else {
    pen.mark(shape.id, role, shape.use === 'sill' ? 'levelMark' : 'dutyPoint', first);
    pen.hits.push({ part: shape.id, points: circle(place, 12 * perPixel) });
  }
  pen.text(shape.id, role === 'ground' ? 'ink' : role, middleOf(shape), words(shape, figure), shape.kind === 'area' ? 'above' : 'right', figure === undefined ? 2 : 1);
}

function drawGround(pen: PlanPen, ground: PlanGround, perPixel: number): void {
  for (const { points, closed, level } of ground.contours) {
    const line = points.map(pointOf);
    pen.line(null, 'ground', closed ? [...line, ...line.slice(0, 1)] : line, 'thin', 'solid');
    const middle = line[Math.floor(line.length / 2)];
    if (middle !== undefined) pen.text(null, 'ground', middle, label('drawing.plan.level', { level }), 'above', 4);
  }
  for (const { outer, holes } of ground.water) {
    pen.fill(null, 'water', outer.map(pointOf), 'water');
    for (const ring of [outer, ...holes]) pen.line(null, 'water', [...ring, ...ring.slice(0, 1)].map(pointOf), 'normal');
  }
  for (const arrow of ground.arrows) drawArrow(pen, arrow, perPixel);
  for (const { bottom, spillPoint, spillLevel } of ground.lowSpots) {
    pen.mark(null, 'water', 'levelMark', pointOf(bottom));
    pen.text(null, 'water', pointOf(bottom), label('drawing.plan.lowest', { level: bottom.level }), 'right', 0);
    if (spillPoint !== null && spillLevel !== null) pen.text(null, 'ink', pointOf(spillPoint), label('drawing.plan.spill', { level: spillLevel }), 'right', 1);
  }
}

/** The way down, sixteen pixels long at any scale. */
function drawArrow(pen: PlanPen, { from, direction }: FlowArrow, perPixel: number): void {
  const long = 16 * perPixel;
  const tip: Point = [from.x + direction.x * long * 0.5, from.y + direction.y * long * 0.5];
  const tail: Point = [from.x - direction.x * long * 0.5, from.y - direction.y * long * 0.5];
  const barb = (side: 1 | -1): Point => [tip[0] - long * 0.3 * (direction.x + side * 0.6 * direction.y), tip[1] - long * 0.3 * (direction.y - side * 0.6 * direction.x)];
  pen.line(null, 'water', [tail, tip], 'thin');
  pen.line(null, 'water', [barb(1), tip, barb(-1)], 'thin');
}

/** Bar of a round length, and the way north, in the lower corners of the sheet. */
function drawScale(pen: PlanPen, extent: Extent, perPixel: number, unit: PlanOptions['scaleUnit'], north: number | null): void {
  const size = unit === 'foot' ? foot : 1;
  const length = roundStep(((extent.x1 - extent.x0) * barShare) / size, 2) * size;
  const [x, y] = [extent.x0 + 12 * perPixel, extent.y0 + 14 * perPixel];
  pen.line(null, 'ink', [[x, y + 4 * perPixel], [x, y], [x + length, y], [x + length, y + 4 * perPixel]], 'thin');
  pen.text(null, 'ink', [x + length, y], label('drawing.scaleBar', { length }), 'right', 0);
  if (north === null) return;
  const angle = (north * Math.PI) / 180;
  const foot0: Point = [extent.x1 - 28 * perPixel, extent.y0 + 30 * perPixel];
  const at = (forward: number, aside: number): Point => [
    foot0[0] + perPixel * (forward * Math.sin(angle) + aside * Math.cos(angle)), foot0[1] + perPixel * (forward * Math.cos(angle) - aside * Math.sin(angle)),
  ];
  pen.line(null, 'ink', [at(-18, 0), at(18, 0)], 'normal');
  pen.line(null, 'ink', [at(8, -5), at(18, 0), at(8, 5)], 'normal');
  pen.text(null, 'ink', at(18, 0), label('drawing.plan.north', {}), 'above', 0);
}

/** The plan of a site: outlines, runs, spot levels, the ground that they make, and what is wrong where it is wrong. */
export function plan(document: DesignDocument, given: Partial<PlanOptions> & Pick<PlanOptions, 'width' | 'height'>): DisplayList {
  const options: PlanOptions = { extent: null, ground: null, figures: [], checks: [], scaleUnit: 'foot', over: false, key: false, ...given };
  const { site } = document;
  const extent = options.extent ?? planExtent(site, options.width, options.height);
  const perPixel = (extent.x1 - extent.x0) / options.width;
  const pen = new PlanPen();
  const order = { area: 0, line: 1, place: 2 } as const;
  const shapes = [...(site.plan?.shapes ?? [])].sort((a, b) => order[a.kind] - order[b.kind]);
  const toleranceOf = (shape: PlanShape): number => site.utilities.find(({ id }) => id === shape.of)?.tolerance ?? 0;
  for (const shape of shapes.filter(({ kind }) => kind === 'area')) drawShape(pen, shape, options, perPixel, 0);
  if (options.ground !== null) drawGround(pen, options.ground, perPixel);
  for (const shape of shapes.filter(({ kind }) => kind !== 'area')) drawShape(pen, shape, options, perPixel, toleranceOf(shape));
  for (const wall of site.walls) pen.line(wall.id, 'ink', wall.points.map(pointOf), 'bold');
  for (const line of site.breaklines) pen.line(line.id, 'ground', line.points.map(pointOf), 'thin', 'dash');
  for (const { id, level, position } of site.spotLevels) {
    if (position === null) continue;
    pen.mark(id, 'ground', 'levelMark', pointOf(position));
    pen.text(id, 'ink', pointOf(position), label('drawing.plan.level', { level }), 'right', 3);
  }
  for (const { code, place } of options.checks) pen.mark(null, 'sill', 'findingCaution', pointOf(place), code);
  drawScale(pen, extent, perPixel, options.scaleUnit, site.plan?.north ?? null);
  return { name: 'plan', extent, exaggeration: 1, breaks: [], items: pen.items, ...(options.key ? { key: keyOf(document, options) } : {}), hits: pen.hits, handles: [] };
}

/** What the lines, hatches and marks of this plan mean, each once. */
function keyOf({ site }: DesignDocument, { ground, checks }: PlanOptions): KeyEntry[] {
  const used = new Set((site.plan?.shapes ?? []).map(({ use }) => use));
  const uses = (Object.keys(looks) as PlanUse[]).filter((use) => used.has(use)).map((use): KeyEntry => ({ label: label(`plan.use.${use}`), symbol: symbolOf(use) }));
  const line = (code: Label['code'], role: Role, weight: Weight, dash: Dash): KeyEntry => ({ label: label(code), symbol: { kind: 'line', role, weight, dash } });
  const mark = (code: Label['code'], role: Role, kind: MarkKind): KeyEntry => ({ label: label(code), symbol: { kind: 'mark', role, mark: kind } });
  const hand = site.utilities.some(({ id, tolerance }) => tolerance > 0 && site.plan?.shapes.some(({ use, of }) => use === 'utility' && of === id));
  return [
    ...uses,
    ...(site.walls.length > 0 ? [line('drawing.key.wall', 'ink', 'bold', 'solid')] : []),
    ...(site.breaklines.length > 0 ? [line('drawing.key.breakline', 'ground', 'thin', 'dash')] : []),
    ...(hand ? [{ label: label('drawing.key.handDig'), symbol: { kind: 'hatch', role: 'watch', hatch: 'range' } } as const] : []),
    ...(ground === null ? [] : [line('drawing.key.contour', 'ground', 'thin', 'solid'), { label: label('drawing.key.arrow'), symbol: { kind: 'arrow', role: 'water' } } as const]),
    ...((ground?.water.length ?? 0) > 0 ? [{ label: label('drawing.key.extent'), symbol: { kind: 'hatch', role: 'water', hatch: 'water' } } as const] : []),
    ...(site.spotLevels.some(({ position }) => position !== null) ? [mark('drawing.key.spot', 'ground', 'levelMark')] : []),
    ...(checks.length > 0 ? [mark('drawing.key.check', 'sill', 'findingCaution')] : []),
  ];
}

function symbolOf(use: PlanUse): KeyEntry['symbol'] {
  const { role, hatch, weight, dash } = looks[use];
  if (use === 'sill') return { kind: 'mark', role, mark: 'levelMark' };
  if (use === 'part') return { kind: 'mark', role, mark: 'dutyPoint' };
  if (use === 'tree') return { kind: 'line', role, weight: 'thin', dash: 'dot' };
  return hatch === 'none' ? { kind: 'line', role, weight, dash } : { kind: 'hatch', role, hatch };
}
