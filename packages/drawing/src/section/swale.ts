import type { Outlet, Part, Swale } from '@yardfall/calc';
import type { Point } from '../display.ts';
import { label } from '../labels.ts';
import { seenStation } from './breaks.ts';
import { clipLine, levelAt } from './ground.ts';
import type { Placed } from './follow.ts';
import type { Scene } from './scene.ts';

/** Level at which a swale begins that runs down to an outlet: it has a fall and no invert of its own. */
export const upperLevel = (swale: Swale, outlet: Outlet): number => outlet.level + swale.slope * swale.length;

/** A swale has a depth and a slope but no invert: it starts where the part before it ends, or by its fall above its outlet, and never out of the ground. */
export function drawSwale(scene: Scene, swale: Swale, { from, to }: Placed, before: Part | null, after: Part | null): void {
  const { pen, ground } = scene;
  const fall = swale.slope * swale.length;
  const start = startLevel(scene, swale, { from, before, after });
  const end = after?.kind === 'outlet' ? Math.min(after.level, start) : start - fall;
  const surface = clipLine(ground, from, to);
  const bed = bedLine(surface, [[from, start], [to, end]]);
  const banks = surface.map(([x, y]): Point => [x, Math.max(y, levelAt(bed, x))]);
  pen.body(swale.id, 'ground', [...bed, ...banks.reverse()], 'paper');
  pen.line(swale.id, 'ground', bed, 'bold');
  const middle = seenStation(scene.frame.map, (from + to) / 2, from, to);
  const bottom = levelAt(bed, middle);
  pen.text(swale.id, 'ink', [middle, bottom], label('drawing.swale', { length: swale.length, slope: swale.slope, depth: swale.depth }), 'below', 1);
  pen.anchor(swale.id, [middle, bottom + 10 * scene.frame.my]);
}

/** The even fall, laid down on the ground where the ground is lower: a swale never runs through the air. */
function bedLine(surface: readonly Point[], straight: readonly [Point, Point]): Point[] {
  const depth = surface.map(([x, y]) => y - levelAt(straight, x));
  return surface.flatMap(([x, y], index): Point[] => {
    const own: Point = [x, Math.min(y, levelAt(straight, x))];
    const before = surface[index - 1];
    const [above = 0, here = 0] = [depth[index - 1], depth[index]];
    if (before === undefined || above * here >= 0) return [own];
    const meet = before[0] + (above / (above - here)) * (x - before[0]);
    return [[meet, levelAt(straight, meet)], own];
  });
}

function startLevel(scene: Scene, swale: Swale, { from, before, after }: { from: number; before: Part | null; after: Part | null }): number {
  if (before?.kind === 'pipe') return before.invertDown;
  const surface = levelAt(scene.ground, from);
  return after?.kind === 'outlet' ? Math.min(upperLevel(swale, after), surface) : surface - swale.depth;
}
