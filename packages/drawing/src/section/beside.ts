import type { Outlet } from '@yardfall/calc';
import type { Point } from '../display.ts';
import { label } from '../labels.ts';
import { seenStation } from './breaks.ts';
import { levelAt } from './ground.ts';
import type { Placed } from './follow.ts';
import { risesToLid } from './lids.ts';
import { box } from './scene.ts';
import type { Scene } from './scene.ts';

/** Depth at which a line without levels is drawn under the ground [m], ours. */
const assumedDepth = 0.3;

/** A part beside the section plane: its outline dashed at its own levels, with its name; parts of one shape are drawn and named once. */
export function drawBeside(scene: Scene, placed: Placed): void {
  const { pen, frame, layout } = scene;
  const { part } = placed;
  const shape = outline(scene, placed);
  const half = 7 * frame.my;
  pen.hit(part.id, shape.length === 2 ? [...shape.map(([x, y]): Point => [x, y - half]), ...shape.map(([x, y]): Point => [x, y + half]).reverse()] : shape);
  const [start, end] = [shape[0] ?? [placed.from, 0], shape[1] ?? [placed.to, 0]];
  const x = seenStation(frame.map, (start[0] + end[0]) / 2, placed.from, placed.to);
  const share = end[0] === start[0] ? 0.5 : (x - start[0]) / (end[0] - start[0]);
  const lid = part.kind === 'outlet' && isLid(part) ? part.level : null;
  const at: Point = [x, lid ?? start[1] + share * (end[1] - start[1])];
  pen.anchor(part.id, at);
  const drawn = shape.length === 2 ? shape : [...shape, ...shape.slice(0, 1)];
  const state = pen.stateOf(part.id);
  // A line has no face to fill: what is built runs through, what is held has its colour.
  pen.line(part.id, state === 'held' ? 'sill' : part.kind === 'swale' ? 'ground' : state === 'plain' ? 'faint' : 'ink', drawn, 'thin', state === 'built' ? 'solid' : 'dash');
  if (placed.twin !== undefined) return;
  if (lid !== null) pen.line(part.id, 'faint', [[start[0] - 3 * frame.mx, lid], [end[0] + 3 * frame.mx, lid]], 'bold');
  const twins = layout.beside.filter(({ twin }) => twin === part.id).length;
  const words = twins > 0 ? label('drawing.besideAlike', { name: part.name, count: twins }) : label('drawing.beside', { name: part.name });
  pen.text(part.id, 'faint', at, words, lid === null ? 'below' : 'above', 4);
}

const isLid = (outlet: Outlet): boolean => outlet.dryWell === null && outlet.pit === null && risesToLid(outlet);

/** Two points for what runs, a box for what stands. */
function outline(scene: Scene, { part, from, to }: Placed): Point[] {
  const { ground, frame } = scene;
  const surface = levelAt(ground, from);
  const least = Math.max(to, from + 8 * frame.mx);
  switch (part.kind) {
    case 'channel':
      return box(from, least, Math.min(part.invertDown, part.invertUp), part.grateLevel);
    case 'catchBasin':
      return box(from, least, part.invertOut - part.sumpDepth, part.grateLevel);
    case 'basin':
      return box(from, to, part.floorLevel, part.rimLevel);
    case 'pipe':
    case 'underdrain':
      return [[from, part.invertUp], [to, part.invertDown]];
    case 'outlet':
      if (isLid(part)) return box(from, Math.max(from + riserWidth, from + 4 * frame.mx), feederLevel(scene, part), part.level);
      return box(from, least, part.level - depthOf(part), part.level);
    case 'swale':
      return [[from, surface - part.depth], [to, surface - part.depth - part.slope * part.length]];
    case 'dischargeLine':
      return [[from, surface - part.coverMin], [to, levelAt(ground, to) - part.coverMin]];
    case 'roofLine':
      return [[from, surface - assumedDepth], [to, levelAt(ground, to) - assumedDepth]];
    default:
      return box(from, from + 8 * frame.mx, surface - 10 * frame.my, surface);
  }
}

/** Width of the riser under a lid on the lawn [m], ours. */
const riserWidth = 0.1;

/** A lid stands on a riser from the pipe that feeds it. */
function feederLevel({ document }: Scene, outlet: Outlet): number {
  const feeder = document.system.parts.find((part) => part.drainsTo === outlet.id);
  return feeder?.kind === 'pipe' || feeder?.kind === 'underdrain' ? Math.min(feeder.invertDown, outlet.level - 0.05) : outlet.level - assumedDepth;
}

const depthOf = (outlet: Outlet): number => outlet.dryWell?.depth ?? outlet.pit?.depth ?? assumedDepth;
