import type { Hatch } from '../display.ts';
import type { SvgOptions } from './render.ts';
import { paint } from './style.ts';
import type { SvgNode } from './tree.ts';

/** Paper first, then tone, then hatch: a hatch alone must say what it is in black and white. */
export function fills(hatch: Hatch, { theme, idPrefix }: SvgOptions): SvgNode['attrs'][] {
  const paper = paint(theme, 'fill', 'paper');
  const pattern = { fill: `url(#${idPrefix}-${hatch})`, stroke: 'none' };
  switch (hatch) {
    case 'none':
      return [];
    case 'paper':
      return [paper];
    case 'solid':
      return [paper, { ...paint(theme, 'fill', 'ink'), 'fill-opacity': 0.3 }];
    case 'concrete':
      return [paper, { ...paint(theme, 'fill', 'slab'), 'fill-opacity': 0.08 }, pattern];
    case 'stone':
      return [paper, pattern];
    case 'water':
      return [...(theme === 'print' ? [] : [{ ...paint(theme, 'fill', 'water'), 'fill-opacity': 0.16 }]), pattern];
    case 'range':
      return [{ ...paint(theme, 'fill', 'ink'), 'fill-opacity': 0.04 }, pattern];
    default:
      return [pattern];
  }
}
