import type { DutyPoint, PumpResult } from '@yardfall/calc';
import type { Point } from '../display.ts';
import { label } from '../labels.ts';
import { clipLine, levelAt } from './ground.ts';
import { box } from './scene.ts';
import type { Scene } from './scene.ts';

const gravity = 9.80665;

/** Water in the basin, the pipe mouth and the channel, drawn under the parts' lines. */
export function drawBasinWater(scene: Scene): void {
  const { layout, options, pen } = scene;
  const placed = layout.chain.find(({ part }) => part.kind === 'basin');
  const level = options.water.basin;
  if (placed === undefined || placed.part.kind !== 'basin' || level === null) return;
  const { floorLevel, rimLevel, id } = placed.part;
  const top = Math.min(level, rimLevel);
  if (top <= floorLevel) return;
  pen.shape(id, 'water', box(placed.from, placed.to, floorLevel, top), 'water', false);
  pen.line(id, 'water', [[placed.from, top], [placed.to, top]], 'bold');
  const at: Point = [placed.from + (placed.to - placed.from) * 0.22, top];
  pen.mark(id, 'water', 'levelMark', at);
  pen.text(id, 'water', [placed.from, top], label('drawing.basinWater', { level: top }), 'left', 2);
}

export function drawChannelWater(scene: Scene): void {
  const { layout, options, pen } = scene;
  const placed = layout.chain[0];
  if (placed === undefined || placed.part.kind !== 'channel') return;
  const { grateLevel, id } = placed.part;
  const bottom = Math.min(placed.part.invertDown, placed.part.invertUp);
  const ponded = options.water.pond !== null && options.water.pond > grateLevel;
  const top = ponded ? grateLevel : Math.min(options.water.basin ?? bottom, grateLevel);
  if (top > bottom) pen.shape(id, 'water', box(placed.from, placed.to, bottom, top), 'water', false);
}

/** The pond against the door; above the sill it stands in the room. */
export function drawPond(scene: Scene): void {
  const { layout, options, ground, pen, frame } = scene;
  const pond = options.water.pond;
  const spot = layout.lowSpot;
  if (pond === null || spot === null) return;
  const lowest = levelAt(ground, spot.station);
  if (pond <= lowest) return;
  const [from, to] = shores(scene, spot.station, pond);
  const bed = clipLine(ground, from, to).map(([x, y]): Point => [x, Math.min(y, pond)]);
  pen.shape(spot.id, 'water', [...bed, [to, pond], [from, pond]], 'water', false);
  const sill = layout.sill;
  const enters = sill !== null && pond > sill.level && from <= 0;
  if (enters) pen.shape(spot.id, 'water', box(frame.extent.x0, 0, sill.level, pond), 'water', false);
  pen.line(spot.id, 'water', [[enters ? frame.extent.x0 : from, pond], [to, pond]], 'bold');
  const at: Point = [spot.station + Math.min((to - spot.station) * 0.5, 40 * frame.mx), pond];
  pen.mark(spot.id, 'water', 'levelMark', at);
  pen.text(spot.id, 'water', at, pondLabel(sill?.level ?? null, pond), 'above', 0.5);
}

function pondLabel(sill: number | null, pond: number): ReturnType<typeof label> {
  if (sill === null) return label('drawing.water', { level: pond });
  return pond > sill
    ? label('drawing.waterOverSill', { depth: pond - sill })
    : label('drawing.waterBelowSill', { level: pond, height: sill - pond });
}

/** Where the water surface meets the ground on both sides; a pond never runs past the crest that holds it. */
function shores(scene: Scene, station: number, pond: number): [from: number, to: number] {
  const { ground, frame, layout } = scene;
  const left = meet([...ground].reverse().filter(([x]) => x <= station), pond) ?? 0;
  const right = ground.filter(([x]) => x >= station);
  const basin = layout.chain.find(({ part }) => part.kind === 'basin');
  const limit = basin?.to ?? station * 2;
  const held = right.filter(([x]) => x <= limit);
  const crest = held.reduce<Point>((best, point) => (point[1] > best[1] ? point : best), [station, -Infinity]);
  return [Math.max(left, 0), meet(held, pond) ?? Math.min(crest[0], frame.to)];
}

function meet(line: readonly Point[], level: number): number | null {
  for (const [index, point] of line.entries()) {
    const before = line[index - 1];
    if (before !== undefined && before[1] < level && point[1] >= level) {
      return before[0] + ((level - before[1]) / (point[1] - before[1])) * (point[0] - before[0]);
    }
  }
  return null;
}

export function drawWaterTable(scene: Scene): void {
  const level = scene.document.site.soil.seasonalHighWaterTable;
  const { frame, pen, layout } = scene;
  if (level === null) return;
  const from = layout.sill === null ? frame.extent.x0 : 0;
  const edge = frame.to + frame.mx * 60;
  pen.line(null, 'water', [[from, level], [edge, level]], 'thin', 'longDash');
  const basin = layout.chain.find(({ part }) => part.kind === 'basin');
  const station = basin === undefined ? frame.to * 0.3 : Math.max(basin.from * 0.45, 0.5);
  if (scene.options.detail === 'full') pen.mark(null, 'water', 'levelMark', [station, level]);
  pen.text(null, 'water', [station, level], label('drawing.waterTable', { level }), 'below', 2);
}

/** Energy line: from pond to basin when the pipe runs full, and along the pumped line back from its outlet. */
export function drawEnergyLines(scene: Scene): void {
  const { layout, options, pen } = scene;
  const pipe = layout.chain.find(({ part }) => part.kind === 'pipe');
  const { pond, basin } = options.water;
  if (pipe !== undefined && pipe.part.kind === 'pipe' && pond !== null && basin !== null) {
    const low = Math.max(basin, pipe.part.invertDown + pipe.part.diameter);
    const full = pond > pipe.part.invertUp + pipe.part.diameter && pond > low;
    if (full) {
      pen.line(pipe.part.id, 'ink', [[pipe.from, pond], [pipe.to, low]], 'normal', 'dot');
      pen.legend('drawing.key.energy', { kind: 'line', role: 'ink', weight: 'normal', dash: 'dot' });
    }
  }
  const pump = scene.evaluation?.results.pumps[0];
  if (pump !== undefined && options.detail === 'full') drawPumpedEnergy(scene, pump);
}

function drawPumpedEnergy(scene: Scene, pump: PumpResult): void {
  const { layout, frame, pen } = scene;
  const line = layout.chain.find(({ part }) => part.id === pump.line);
  const outlet = layout.chain.find(({ part }) => part.id === pump.outlet);
  if (line === undefined || outlet === undefined || outlet.part.kind !== 'outlet') return;
  const duty: DutyPoint = pump.dutyAtOff;
  const velocityHead = (duty.velocity * duty.velocity) / (2 * gravity);
  const start: Point = [line.from, duty.basinLevel + duty.head];
  const end: Point = [line.to, outlet.part.waterLevel + velocityHead];
  const top = frame.extent.y1 - 16 * frame.my;
  if (end[1] >= top || line.to > frame.to) return;
  const levelOf = (station: number): number => start[1] + ((station - start[0]) / (end[0] - start[0])) * (end[1] - start[1]);
  const share = start[1] > top ? (start[1] - top) / (start[1] - end[1]) : 0;
  const leaves = start[0] + share * (end[0] - start[0]);
  const first = frame.map.cuts.find(({ from, to }) => leaves > from && leaves < to)?.to ?? leaves;
  const seen: Point = [first, levelOf(first)];
  pen.line(line.part.id, 'ink', [seen, end], 'normal', 'dot');
  pen.legend('drawing.key.energy', { kind: 'line', role: 'ink', weight: 'normal', dash: 'dot' });
  // What rises above the sheet ends with a mark, and its lettering says how far it rises.
  if (share > 0) pen.mark(line.part.id, 'ink', 'continues', seen);
  pen.text(line.part.id, 'ink', seen, label('drawing.energyLine', { level: start[1] }), 'right', 4);
}
