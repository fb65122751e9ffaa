import type { Part } from '@yardfall/calc';
import type { Point } from '../display.ts';
import { label } from '../labels.ts';
import { seenStation } from './breaks.ts';
import { levelAt } from './ground.ts';
import type { Placed } from './follow.ts';
import { box } from './scene.ts';
import type { Scene } from './scene.ts';

/** Depth at which a line without levels is drawn under the ground [m], ours. */
const assumedDepth = 0.3;

/** A part beside the section plane: its outline dashed at its own levels, with its name. */
export function drawBeside(scene: Scene, placed: Placed): void {
  const { pen, frame } = scene;
  const { part } = placed;
  const shape = outline(scene, placed);
  const drawn = shape.length === 2 ? shape : [...shape, ...shape.slice(0, 1)];
  pen.line(part.id, part.kind === 'swale' ? 'ground' : 'faint', drawn, 'thin', 'dash');
  const half = 7 * frame.my;
  pen.hit(part.id, shape.length === 2 ? [...shape.map(([x, y]): Point => [x, y - half]), ...shape.map(([x, y]): Point => [x, y + half]).reverse()] : shape);
  const [start, end] = [shape[0] ?? [placed.from, 0], shape[1] ?? [placed.to, 0]];
  const x = seenStation(frame.map, (start[0] + end[0]) / 2, placed.from, placed.to);
  const share = end[0] === start[0] ? 0.5 : (x - start[0]) / (end[0] - start[0]);
  const at: Point = [x, start[1] + share * (end[1] - start[1])];
  pen.text(part.id, 'faint', at, label('drawing.beside', { name: part.name }), 'below', 4);
  pen.anchor(part.id, at);
}

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

function depthOf(outlet: Extract<Part, { kind: 'outlet' }>): number {
  return outlet.dryWell?.depth ?? outlet.pit?.depth ?? assumedDepth;
}
