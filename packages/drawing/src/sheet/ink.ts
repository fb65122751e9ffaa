import type { Role } from '../display.ts';
import { textWidth, wrapped } from '../svg/letters.ts';
import { pathOf, px } from '../svg/project.ts';
import { paint } from '../svg/style.ts';
import { node } from '../svg/tree.ts';
import type { SvgNode } from '../svg/tree.ts';
import type { Rect } from './paper.ts';

/** Pieces of a sheet that are no drawing: rules, boxes and words, black on white. */
export function words(text: string, x: number, y: number, size: number, look: { readonly bold?: boolean; readonly role?: Role; readonly end?: boolean } = {}): SvgNode {
  const at = look.end === true ? x - textWidth(text, size) : x;
  return node('text', { x: px(at), y: px(y), 'font-size': size, ...paint('print', 'fill', look.role ?? 'ink'), ...(look.bold === true ? { 'font-weight': 700 } : {}) }, [text]);
}

/** Words in as many lines as they need, at most `most`; the last one ends in dots when something is left. */
export function lines(text: string, size: number, width: number, most: number): string[] {
  const all = wrapped(text, size, width);
  if (all.length <= most) return all;
  return [...all.slice(0, most - 1), `${all[most - 1] ?? ''} …`];
}

export const rule = (x0: number, y0: number, x1: number, y1: number, width = 1): SvgNode =>
  node('path', { d: pathOf([[x0, y0], [x1, y1]], false), ...paint('print', 'stroke', 'ink'), 'stroke-width': width });

export const frame = ({ x, y, width, height }: Rect, line = 1, fill: 'none' | 'paper' = 'none'): SvgNode =>
  node('path', { d: pathOf([[x, y], [x + width, y], [x + width, y + height], [x, y + height]], true), ...paint('print', 'stroke', 'ink'), ...(fill === 'paper' ? { fill: '#fff' } : {}), 'stroke-width': line });

export const moved = (x: number, y: number, children: SvgNode['children']): SvgNode => node('g', { transform: `translate(${px(x)} ${px(y)})` }, children);
