import type { Basin, CatchBasin, Channel, Pipe, Underdrain } from '@yardfall/calc';
import { label } from '../labels.ts';
import { seenStation } from './breaks.ts';
import { levelAt } from './ground.ts';
import type { Placed } from './follow.ts';
import { box } from './scene.ts';
import type { Scene } from './scene.ts';

export function drawChannel(scene: Scene, channel: Channel, { from, to }: Placed): void {
  const { pen, frame } = scene;
  const { id, grateLevel, surround } = channel;
  const invert = Math.min(channel.invertDown, channel.invertUp);
  pen.shape(id, 'slab', box(from - surround, to + surround, invert - surround, grateLevel), 'concrete');
  pen.body(id, 'ink', box(from, to, invert, grateLevel));
  if (channel.invertUp !== channel.invertDown) pen.line(id, 'ink', [[from, channel.invertUp], [to, channel.invertUp]], 'thin', 'dash');
  pen.line(id, 'ink', [[from, grateLevel], [to, grateLevel]], 'bold');
  pen.hit(id, box(from - 14 * frame.mx, to + 14 * frame.mx, invert - surround, grateLevel + 6 * frame.my));
  const middle = (from + to) / 2;
  pen.level(id, 'ink', [middle, grateLevel], label('drawing.grate', { level: grateLevel }), 'above', 3, 'grateLevel');
  pen.text(id, 'ink', [middle, invert - surround], label('drawing.channel', { width: channel.width, depth: channel.depth }), 'below', 2);
  pen.handle(id, 'invertDown', [middle, invert]);
  pen.anchor(id, [from - 16 * frame.mx, (invert + grateLevel) / 2]);
}

export function drawCatchBasin(scene: Scene, basin: CatchBasin, { from, to }: Placed): void {
  const { pen, frame } = scene;
  const bottom = basin.invertOut - basin.sumpDepth;
  pen.body(basin.id, 'ink', box(from, to, bottom, basin.grateLevel));
  pen.line(basin.id, 'ink', [[from, basin.grateLevel], [to, basin.grateLevel]], 'bold');
  const middle = (from + to) / 2;
  pen.level(basin.id, 'ink', [middle, basin.grateLevel], label('drawing.grate', { level: basin.grateLevel }), 'above', 3, 'grateLevel');
  pen.text(basin.id, 'ink', [middle, bottom], label('drawing.catchBasin', { name: basin.name }), 'below', 2);
  pen.handle(basin.id, 'invertOut', [middle, basin.invertOut]);
  pen.anchor(basin.id, [from - 12 * frame.mx, (bottom + basin.grateLevel) / 2]);
}

export function drawPipe(scene: Scene, pipe: Pipe | Underdrain, { from, to }: Placed): void {
  const { pen, frame } = scene;
  const { id, diameter, invertUp, invertDown, length } = pipe;
  pen.body(id, 'ink', [[from, invertUp], [to, invertDown], [to, invertDown + diameter], [from, invertUp + diameter]]);
  if (pipe.kind === 'underdrain' || pipe.material === 'perforated') {
    pen.line(id, 'ink', [[from, invertUp + diameter / 2], [to, invertDown + diameter / 2]], 'bold', 'dot');
  }
  const middle = seenStation(frame.map, (from + to) / 2, from, to);
  const bottom = invertUp + ((middle - from) / Math.max(to - from, 1e-9)) * (invertDown - invertUp);
  const slope = length > 0 ? (invertUp - invertDown) / length : 0;
  const code = pipe.kind === 'pipe' ? 'drawing.pipe' : 'drawing.underdrain';
  pen.text(id, 'ink', [middle, bottom], label(code, { diameter, length, slope }), 'below', 1);
  pen.level(id, 'ink', [from + 6 * frame.mx, invertUp], label('drawing.invert', { level: invertUp }), 'below', 3, 'invertUp');
  const next = scene.document.system.parts.find((part) => part.id === pipe.drainsTo);
  // An open end at the level of the invert says that level itself.
  if (next?.kind === 'outlet' && Math.abs(next.level - invertDown) < 0.005) pen.handle(id, 'invertDown', [to - 6 * frame.mx, invertDown]);
  else pen.level(id, 'ink', [to - 6 * frame.mx, invertDown], label('drawing.invert', { level: invertDown }), 'below', 3, 'invertDown');
  pen.anchor(id, [middle, bottom + diameter / 2]);
}

/** A pipe that comes from outside the section plane is seen on its end. */
export function drawJoining(scene: Scene, { part, from }: Placed): void {
  if (part.kind !== 'pipe' && part.kind !== 'underdrain') return;
  const { pen } = scene;
  const radius = part.diameter / 2;
  const center = part.invertDown + radius;
  const ring = Array.from({ length: 24 }, (_, index): [number, number] => {
    const angle = (index / 24) * 2 * Math.PI;
    return [from + radius * Math.cos(angle), center + radius * Math.sin(angle)];
  });
  pen.body(part.id, 'ink', ring);
  // Pipes that arrive at one place and level are one ring and one figure.
  const first = scene.layout.joining.find((other) => Math.abs(other.from - from) < 0.01 && other.part.kind === part.kind && Math.abs(other.part.invertDown - part.invertDown) < 0.003);
  if (first?.part.id === part.id) pen.level(part.id, 'ink', [from, part.invertDown], label('drawing.inlet', { level: part.invertDown }), 'below', 4, 'invertDown');
  else pen.handle(part.id, 'invertDown', [from, part.invertDown]);
  pen.anchor(part.id, [from, center]);
}

export function drawCleanout(scene: Scene, id: string, station: number, pipeLevel: number): void {
  const { pen, frame } = scene;
  const surface = levelAt(scene.ground, station);
  const half = 3 * frame.mx;
  pen.body(id, 'ink', box(station - half, station + half, pipeLevel, surface));
  pen.line(id, 'ink', [[station - 2 * half, surface], [station + 2 * half, surface]], 'bold');
  pen.text(id, 'ink', [station, surface], label('drawing.cleanout'), 'above', 4);
  pen.anchor(id, [station, surface + 8 * frame.my]);
}

export function drawBasin(scene: Scene, basin: Basin, { from, to }: Placed): void {
  const { pen, frame } = scene;
  const { id, floorLevel, rimLevel } = basin;
  drawCollar(scene, basin, from, to);
  pen.body(id, 'ink', box(from, to, floorLevel, rimLevel));
  if (basin.wall === 'perforated') for (const x of [from, to]) pen.line(id, 'ink', [[x, floorLevel], [x, rimLevel]], 'bold', 'dot');
  const lip = 5 * frame.mx;
  pen.line(id, 'ink', [[from - lip, rimLevel], [to + lip, rimLevel]], 'bold');
  pen.text(id, 'ink', [(from + to) / 2, rimLevel], label('drawing.basin', { diameter: basin.diameter, height: rimLevel - floorLevel }), 'above', 1);
  const mark = to + 16 * frame.mx;
  const levels = [['alarm', basin.alarmLevel, 'watch', 2], ['on', basin.onLevel, 'ink', 2], ['off', basin.offLevel, 'ink', 2]] as const;
  for (const [name, level, role, rank] of levels) {
    pen.line(id, role, [[from, level], [mark + 6 * frame.mx, level]], 'thin', 'dash');
    pen.level(id, role, [mark, level], label(`drawing.${name}`, { level }), 'right', rank, `${name}Level`);
  }
  pen.level(id, 'ink', [mark, floorLevel], label('drawing.floor', { level: floorLevel }), 'right', 3, 'floorLevel');
  pen.handle(id, 'rimLevel', [(from + to) / 2, rimLevel]);
  pen.handle(id, 'inletInvert', [from, basin.inletInvert]);
  pen.anchor(id, [from - 14 * frame.mx, (floorLevel + basin.offLevel) / 2]);
}

/** The concrete collar against floating, drawn to its volume about the foot of the basin. */
function drawCollar(scene: Scene, basin: Basin, from: number, to: number): void {
  if (basin.collarVolume <= 0) return;
  const radius = basin.diameter / 2;
  const heightAt = (wide: number): number => basin.collarVolume / (Math.PI * ((radius + wide) * (radius + wide) - radius * radius));
  const depth = basin.rimLevel - basin.floorLevel;
  // A volume alone does not say the shape: the narrowest collar that stays in the lower half, ours.
  const reach = [0.1, 0.15, 0.2, 0.3, 0.4, 0.5].find((wide) => heightAt(wide) <= depth * 0.5) ?? 0.6;
  const height = Math.min(heightAt(reach), depth);
  scene.pen.shape(basin.id, 'slab', box(from - reach, to + reach, basin.floorLevel, basin.floorLevel + height), 'concrete');
}
