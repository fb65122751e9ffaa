import type { Basin, CheckValve, DischargeLine, Outlet, Part, Pump, WeepHole } from '@yardfall/calc';
import type { Point } from '../display.ts';
import { label } from '../labels.ts';
import type { Label } from '../labels.ts';
import { seenStation } from './breaks.ts';
import { levelAt } from './ground.ts';
import type { Placed } from './follow.ts';
import { risesToLid, tellsWater, waterOf } from './lids.ts';
import { box } from './scene.ts';
import { roofLineDepth } from './site.ts';
import type { Scene } from './scene.ts';

/** Size of a pump on the drawing [m], ours: the document holds its curve and not its case. */
const pumpHeight = 0.28;
const pumpWidth = 0.2;

interface Plant {
  readonly basin: Basin;
  readonly placed: Placed;
  readonly line: DischargeLine | null;
  readonly center: number;
  readonly lineLevel: number;
}

function plantOf(scene: Scene): Plant | null {
  const placed = scene.layout.chain.find(({ part }) => part.kind === 'basin');
  if (placed === undefined || placed.part.kind !== 'basin') return null;
  const line = scene.layout.chain.map(({ part }) => part).find((part) => part.kind === 'dischargeLine') ?? null;
  const basin = placed.part;
  const cover = line?.coverMin ?? 0.3;
  const lineLevel = Math.min(levelAt(scene.ground, placed.to + 0.3), basin.rimLevel) - cover - (line?.innerDiameter ?? 0);
  return { basin, placed, line, center: (placed.from + placed.to) / 2, lineLevel };
}

export function drawPumps(scene: Scene): void {
  const plant = plantOf(scene);
  if (plant === null) return;
  const { parts } = scene.document.system;
  const pumps = parts.filter((part): part is Pump => part.kind === 'pump' && part.basin === plant.basin.id);
  pumps.forEach((pump, index) => drawPump(scene, plant, pump, index));
  const duty = pumps[0];
  if (duty === undefined) return;
  const valve = scene.layout.chain.map(({ part }) => part).find((part): part is CheckValve => part.kind === 'checkValve');
  if (valve !== undefined) drawValve(scene, plant, valve);
  const weep = parts.find((part): part is WeepHole => part.kind === 'weepHole' && part.pump === duty.id);
  if (weep !== undefined) drawWeep(scene, plant, weep);
}

function drawPump(scene: Scene, plant: Plant, pump: Pump, index: number): void {
  const { pen, frame } = scene;
  const { floorLevel } = plant.basin;
  const width = Math.min(pumpWidth, plant.basin.diameter * 0.3);
  const middle = plant.center - index * width * 1.4;
  const half = width / 2;
  const top = floorLevel + pumpHeight;
  pen.body(pump.id, 'ink', [
    [middle - half, floorLevel + 0.03], [middle + half, floorLevel + 0.03], [middle + half, top - 0.08],
    [middle + half * 0.5, top], [middle - half * 0.5, top], [middle - half, top - 0.08],
  ]);
  for (const foot of [-0.8, 0.8]) pen.line(pump.id, 'ink', [[middle + foot * half, floorLevel], [middle + foot * half, floorLevel + 0.03]], 'thin');
  if (index === 0) {
    const bore = (plant.line?.innerDiameter ?? 0.04) / 2;
    pen.shape(pump.id, 'ink', box(middle - bore, middle + bore, top, plant.lineLevel + 2 * bore), 'paper');
  }
  const code = pump.role === 'duty' ? 'drawing.pump' : 'drawing.standbyPump';
  callOut(scene, plant, pump.id, [middle - half, floorLevel + pumpHeight / 2], label(code, { name: pump.name }), 2);
  pen.anchor(pump.id, [middle, floorLevel + pumpHeight / 2 - 2 * frame.my]);
}

function riserShare(plant: Plant, share: number): number {
  const low = plant.basin.floorLevel + pumpHeight;
  return low + share * (plant.lineLevel - low);
}

function drawValve(scene: Scene, plant: Plant, valve: CheckValve): void {
  const at: Point = [plant.center, riserShare(plant, 0.72)];
  if (valve.present) scene.pen.mark(valve.id, 'ink', 'checkValve', at);
  scene.pen.hit(valve.id, square(scene, at, 14));
  callOut(scene, plant, valve.id, at, label(valve.present ? 'drawing.checkValve' : 'drawing.checkValveMissing'), 4);
  scene.pen.anchor(valve.id, [at[0] + 14 * scene.frame.mx, at[1]]);
}

function drawWeep(scene: Scene, plant: Plant, weep: WeepHole): void {
  const at: Point = [plant.center, riserShare(plant, 0.3)];
  scene.pen.mark(weep.id, 'water', 'weepHole', at);
  scene.pen.hit(weep.id, square(scene, at, 12));
  callOut(scene, plant, weep.id, at, label('drawing.weepHole', { diameter: weep.diameter }), 5);
  scene.pen.anchor(weep.id, [at[0] + 14 * scene.frame.mx, at[1]]);
}

/** Letters a thing inside the basin outside its wall, with a line to it. */
function callOut(scene: Scene, plant: Plant, part: string, at: Point, text: Label, rank: number): void {
  const { pen, frame, options } = scene;
  if (options.detail === 'mini' || rank > (options.width < 600 ? 2 : 6)) return;
  if (frame.crowded) return pen.text(part, 'ink', at, text, 'left', rank);
  const outside: Point = [plant.placed.from - 8 * frame.mx, at[1]];
  pen.line(part, 'ink', [[at[0] - 6 * frame.mx, at[1]], outside], 'thin', 'solid', text.code);
  pen.text(part, 'ink', outside, text, 'left', rank);
}

function square(scene: Scene, [x, y]: Point, half: number): Point[] {
  const { mx, my } = scene.frame;
  return box(x - half * mx, x + half * mx, y - half * my, y + half * my);
}

export function drawDischargeLine(scene: Scene, line: DischargeLine, { from, to }: Placed, outlet: Outlet | null): void {
  const plant = plantOf(scene);
  const { pen, frame } = scene;
  const bore = line.innerDiameter;
  const start = plant?.lineLevel ?? levelAt(scene.ground, from) - line.coverMin;
  const end = endLevel(scene, line, to, outlet);
  const high = line.highPoint;
  const path: Point[] = high === null ? [[from, start], [to, end]] : [[from, start], [crestStation(scene, from, to), high], [to, end]];
  pen.body(line.id, 'ink', [...path, ...path.map(([x, y]): Point => [x, y + bore]).reverse()]);
  pen.hit(line.id, [...path.map(([x, y]): Point => [x, y - 12 * frame.my]), ...path.map(([x, y]): Point => [x, y + bore + 12 * frame.my]).reverse()]);
  const near = seenStation(frame.map, from + Math.min((to - from) * 0.12, Math.max(frame.to - from, 0) * 0.8), from, to);
  pen.text(line.id, 'ink', [near, levelAt(path, near)], label('drawing.line', { size: line.nominal, length: line.length }), 'below', 1);
  const crest = path[1];
  if (high !== null && crest !== undefined) pen.level(line.id, 'ink', crest, label('drawing.highPoint', { level: high }), 'above', 3, 'highPoint');
  pen.anchor(line.id, [near, levelAt(path, near) + bore]);
}

/** Level at which the line arrives under its outlet: covered, unless the outlet itself lies lower. */
function endLevel(scene: Scene, line: DischargeLine, to: number, outlet: Outlet | null): number {
  const covered = levelAt(scene.ground, to) - line.coverMin - line.innerDiameter;
  if (outlet === null) return covered;
  return risesToLid(outlet) ? Math.min(covered, outlet.level - 0.1) : outlet.level;
}

/** The document gives the height of the high point and not its place: it is put under the highest ground. */
function crestStation(scene: Scene, from: number, to: number): number {
  const along = scene.ground.filter(([x]) => x > from && x < to);
  const top = along.reduce<Point | null>((best, point) => (best === null || point[1] > best[1] ? point : best), null);
  return top?.[0] ?? (from + to) / 2;
}

export function drawOutlet(scene: Scene, outlet: Outlet, { from, to }: Placed, feeder: Part | null): void {
  const { pen, frame } = scene;
  const { id, level } = outlet;
  if (outlet.pit !== null) drawPit(scene, outlet, (from + to) / 2);
  if (outlet.dryWell !== null) drawStore(scene, outlet, outlet.dryWell, (from + to) / 2);
  if (risesToLid(outlet)) {
    const bottom = feeder?.kind === 'dischargeLine' ? endLevel(scene, feeder, from, outlet) : Math.min(levelAt(scene.ground, from), level) - (feeder?.kind === 'roofLine' ? roofLineDepth(scene) : 0.3);
    pen.body(id, 'ink', box(from, to, bottom, level));
    pen.line(id, 'ink', [[from - 4 * frame.mx, level], [to + 4 * frame.mx, level]], 'bold');
  } else drawOpenEnd(scene, outlet, from, to);
  pen.hit(id, square(scene, [(from + to) / 2, level], 18));
  const at: Point = [(from + to) / 2, level];
  pen.level(id, 'ink', at, outletLabel(scene, outlet), 'above', feeder?.kind === 'roofLine' ? 4 : 1, 'level');
  if (outlet.waterLevel > level) {
    pen.line(id, 'water', [[from - 24 * frame.mx, outlet.waterLevel], [to + 24 * frame.mx, outlet.waterLevel]], 'thin', 'solid', 'drawing.tailwater');
    if (!risesToLid(outlet)) pen.text(id, 'water', [to + 20 * frame.mx, outlet.waterLevel], label('drawing.tailwater', { level: outlet.waterLevel }), 'above', 4);
  }
  pen.handle(id, 'waterLevel', [(from + to) / 2, outlet.waterLevel]);
  pen.anchor(id, [to + 16 * frame.mx, level - 14 * frame.my]);
}

function outletLabel({ document }: Scene, { id, level, outletKind }: Outlet): Label {
  const { parts } = document.system;
  return tellsWater(parts) ? label(`drawing.out.${waterOf(parts, id)}`, { level }) : label(`drawing.outlet.${outletKind}`, { level });
}

function drawOpenEnd(scene: Scene, outlet: Outlet, from: number, to: number): void {
  const { pen, frame } = scene;
  const { id, level } = outlet;
  if (outlet.outletKind === 'curb') {
    pen.shape(id, 'slab', box(from, to, level - 0.15, level + 0.15), 'concrete');
    pen.line(id, 'ink', [[to, level], [to + 40 * frame.mx, level + 0.02]], 'normal');
    return;
  }
  const wall = 4 * frame.mx;
  pen.body(id, 'ink', box(from, from + wall, level - 0.1, Math.max(outlet.groundLevel, level + 0.15)));
  pen.line(id, 'ground', [[from + wall, level - 0.02], [to + 30 * frame.mx, level - 0.04]], 'normal');
}

function drawPit(scene: Scene, outlet: Outlet, middle: number): void {
  const { pit, id } = outlet;
  if (pit === null) return;
  const half = Math.sqrt(pit.area) / 2;
  scene.pen.body(id, 'ground', box(middle - half, middle + half, pit.bottomLevel, pit.bottomLevel + pit.depth), 'stone');
  scene.pen.text(id, 'ground', [middle, pit.bottomLevel], label('drawing.pit', { level: pit.bottomLevel }), 'below', 3);
}

/** The store of a dry well, to its depth; its plan area is drawn as a square. */
function drawStore(scene: Scene, outlet: Outlet, well: NonNullable<Outlet['dryWell']>, middle: number): void {
  const half = Math.sqrt(well.area) / 2;
  scene.pen.body(outlet.id, 'ground', box(middle - half, middle + half, well.bottomLevel, well.bottomLevel + well.depth), 'stone');
  scene.pen.text(outlet.id, 'ground', [middle, well.bottomLevel], label('drawing.store', { level: well.bottomLevel }), 'below', 3);
}
