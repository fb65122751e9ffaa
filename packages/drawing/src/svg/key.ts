import { balloonSize } from './place.ts';
import { textWidth, wrapped } from './letters.ts';
import type { Balloon } from './lettering.ts';
import { px } from './project.ts';
import type { SvgOptions } from './render.ts';
import { paint } from './style.ts';
import { node } from './tree.ts';
import type { SvgNode } from './tree.ts';

const indent = balloonSize + 8;
const edge = 8;

/** The words of the numbered balloons, in columns below the picture; its height is added to that of the picture. */
export function keyBelow(balloons: readonly Balloon[], options: SvgOptions): { readonly nodes: SvgNode[]; readonly height: number } {
  if (balloons.length === 0) return { nodes: [], height: 0 };
  const { width, height, textSize } = options;
  const columns = Math.max(1, Math.min(3, Math.floor(width / 340), balloons.length));
  const column = (width - edge * 2) / columns;
  const leading = textSize * 1.35;
  const entries = balloons.map((balloon) => ({ balloon, lines: wrapped(balloon.words.join('; '), textSize, column - indent - 10) }));
  const most = Math.ceil(entries.reduce((sum, { lines }) => sum + rowHeight(lines.length, leading), 0) / columns);
  const nodes: SvgNode[] = [];
  let at = 0;
  let y = 0;
  let deepest = 0;
  for (const { balloon, lines } of entries) {
    if (y > 0 && y + rowHeight(lines.length, leading) / 2 > most && at < columns - 1) {
      at += 1;
      y = 0;
    }
    nodes.push(...row(balloon, lines, { x: edge + at * column, y: height + 6 + y, leading }, options));
    y += rowHeight(lines.length, leading);
    deepest = Math.max(deepest, y);
  }
  return { nodes, height: Math.ceil(deepest + 12) };
}

const rowHeight = (lines: number, leading: number): number => Math.max(lines * leading, balloonSize) + 4;

function row(balloon: Balloon, lines: readonly string[], { x, y, leading }: { x: number; y: number; leading: number }, { theme, textSize }: SvgOptions): SvgNode[] {
  const text = lines.map((line, index) =>
    node('text', { x: px(x + indent), y: px(y + textSize + index * leading), 'font-size': textSize, ...paint(theme, 'fill', 'ink') }, [line]));
  return [...numbered(balloon.number, [x + balloonSize / 2, y + balloonSize / 2], theme), ...text];
}

export function numbered(number: number, [cx, cy]: readonly [number, number], theme: SvgOptions['theme']): SvgNode[] {
  const size = 11;
  const words = String(number);
  const { fill: _none, ...stroke } = paint(theme, 'stroke', 'ink');
  const body = theme === 'print' ? { ...stroke, fill: '#fff' } : { ...stroke, class: `${String(stroke['class'])} dl-fill-paper` };
  return [
    node('circle', { cx: px(cx), cy: px(cy), r: balloonSize / 2 - 0.5, ...body, 'stroke-width': 1 }),
    node('text', { x: px(cx - textWidth(words, size) / 2), y: px(cy + size * 0.34), 'font-size': size, ...paint(theme, 'fill', 'ink') }, [words]),
  ];
}
