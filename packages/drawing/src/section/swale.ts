import type { Part, Swale } from '@yardfall/calc';
import type { Point } from '../display.ts';
import { label } from '../labels.ts';
import { seenStation } from './breaks.ts';
import { clipLine, levelAt } from './ground.ts';
import type { Placed } from './follow.ts';
import type { Scene } from './scene.ts';

/** A swale has a depth and a slope but no invert: it starts where the part before it ends, or by its fall above its outlet, and never out of the ground. */
export function drawSwale(scene: Scene, swale: Swale, { from, to }: Placed, before: Part | null, after: Part | null): void {
  const { pen, ground } = scene;
  const fall = swale.slope * swale.length;
  const start = startLevel(scene, swale, { from, before, after }, fall);
  const end = after?.kind === 'outlet' ? Math.min(after.level, start) : start - fall;
  const banks = clipLine(ground, from, to).map(([x, y]): Point => [x, Math.max(y, start - ((x - from) / Math.max(to - from, 1e-9)) * (start - end))]);
  pen.body(swale.id, 'ground', [[from, start], [to, end], ...banks.reverse()], 'paper');
  pen.line(swale.id, 'ground', [[from, start], [to, end]], 'bold');
  const middle = seenStation(scene.frame.map, (from + to) / 2, from, to);
  const bottom = start + ((middle - from) / Math.max(to - from, 1e-9)) * (end - start);
  pen.text(swale.id, 'ink', [middle, bottom], label('drawing.swale', { length: swale.length, slope: swale.slope, depth: swale.depth }), 'below', 1);
  pen.anchor(swale.id, [middle, bottom + 10 * scene.frame.my]);
}

function startLevel(scene: Scene, swale: Swale, { from, before, after }: { from: number; before: Part | null; after: Part | null }, fall: number): number {
  if (before?.kind === 'pipe') return before.invertDown;
  const bed = levelAt(scene.ground, from) - swale.depth;
  return after?.kind === 'outlet' ? Math.min(after.level + fall, levelAt(scene.ground, from)) : bed;
}
