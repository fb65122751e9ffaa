import type { Part, Swale } from '@yardfall/calc';
import type { Point } from '../display.ts';
import { label } from '../labels.ts';
import { clipLine, levelAt } from './ground.ts';
import type { Placed } from './layout.ts';
import type { Scene } from './scene.ts';

/** A swale has a depth and a slope but no invert: it starts where the part before it ends, or under the ground by its depth. */
export function drawSwale(scene: Scene, swale: Swale, { from, to }: Placed, before: Part | null): void {
  const { pen, ground } = scene;
  const start = before?.kind === 'pipe' ? before.invertDown : levelAt(ground, from) - swale.depth;
  const end = start - swale.slope * swale.length;
  const banks = clipLine(ground, from, to).map(([x, y]): Point => [x, Math.max(y, start - ((x - from) / Math.max(to - from, 1e-9)) * (start - end))]);
  pen.body(swale.id, 'ground', [[from, start], [to, end], ...banks.reverse()], 'paper');
  pen.line(swale.id, 'ground', [[from, start], [to, end]], 'bold');
  const middle = (from + to) / 2;
  pen.text(swale.id, 'ink', [middle, (start + end) / 2], label('drawing.swale', { length: swale.length, slope: swale.slope, depth: swale.depth }), 'below', 1);
  pen.anchor(swale.id, [middle, (start + end) / 2 + 10 * scene.frame.my]);
}
