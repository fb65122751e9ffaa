import type { Hatch } from '../display.ts';
import { paint } from './style.ts';
import type { Theme } from './style.ts';
import { node } from './tree.ts';
import type { SvgNode } from './tree.ts';

/** Hatches as repeating tiles in screen pixels, so that they read the same at every scale. */
export function patterns(prefix: string, theme: Theme): SvgNode {
  const stroke = (role: Parameters<typeof paint>[2], width: number): Record<string, string | number> => ({ ...paint(theme, 'stroke', role), 'stroke-width': width });
  const path = (d: string, role: Parameters<typeof paint>[2], width = 0.9): SvgNode => node('path', { d, ...stroke(role, width) });
  const dot = (cx: number, cy: number, r: number): SvgNode => node('circle', { cx, cy, r, ...paint(theme, 'fill', 'slab') });
  return node('defs', {}, [
    tile(prefix, 'soil', 22, 12, [path('M1 12L9 0M5 12L13 0M9 12L17 0', 'ground')]),
    tile(prefix, 'concrete', 34, 26, [
      path('M5 4L9 5L6 8ZM22 15L27 14L25 18Z', 'slab'),
      dot(14, 3, 0.8), dot(19, 8, 0.6), dot(3, 15, 0.7), dot(11, 13, 0.9), dot(30, 5, 0.8), dot(16, 20, 0.7), dot(7, 22, 0.8), dot(31, 22, 0.6),
    ]),
    tile(prefix, 'stone', 18, 14, [path('M1 4Q4 0 8 2Q10 6 6 7Q1 8 1 4ZM10 9Q13 6 16 8Q18 12 13 13Q9 13 10 9Z', 'ground')]),
    tile(prefix, 'water', 26, 12, [path('M2 3H12M15 9H24', 'water', 0.8)]),
    tile(prefix, 'held', 7, 7, [path('M-1 8L8 -1M-1 1L1 -1M6 8L8 6', 'sill', 1.2)]),
    tile(prefix, 'range', 6, 6, [path('M3 0V6', 'ink', 0.5)]),
  ]);
}

function tile(prefix: string, name: Hatch, width: number, height: number, children: SvgNode[]): SvgNode {
  return node('pattern', { id: `${prefix}-${name}`, patternUnits: 'userSpaceOnUse', width, height }, children);
}
