import type { MarkItem, Point } from '../display.ts';
import { pathOf, px } from './project.ts';
import { paint } from './style.ts';
import type { Theme } from './style.ts';
import { node } from './tree.ts';
import type { SvgNode } from './tree.ts';

const rowStep = 15;
/** Foot of the sheet with the scale bar, which no break crosses [px]. */
const footer = 28;

/** Room that a mark takes about its point [px]. */
export function markBox(mark: MarkItem, at: Point): { x0: number; y0: number; x1: number; y1: number } {
  const x = at[0] + mark.index * rowStep;
  if (mark.mark === 'levelMark') return { x0: x - 5, y0: at[1] - 9, x1: x + 5, y1: at[1] };
  if (mark.mark === 'break') return { x0: x - 11, y0: -1e5, x1: x + 11, y1: 1e5 };
  return { x0: x - 7, y0: at[1] - 7, x1: x + 7, y1: at[1] + 7 };
}

export function drawMark(mark: MarkItem, at: Point, theme: Theme, height: number): SvgNode[] {
  const x = at[0] + mark.index * rowStep;
  const y = at[1];
  const line = (points: readonly Point[], closed = false, fill = true): SvgNode =>
    node('path', { d: pathOf(points, closed), ...outline(theme, mark.role, fill && closed), 'stroke-width': 1.3, 'stroke-linejoin': 'round' });
  const solid = (points: readonly Point[]): SvgNode => node('path', { d: pathOf(points, true), ...paint(theme, 'fill', mark.role) });
  switch (mark.mark) {
    case 'levelMark':
      return [line([[x, y], [x - 4.5, y - 8], [x + 4.5, y - 8]], true)];
    case 'continues':
      return [line([[x - 5, y + 1], [x, y - 7], [x + 5, y + 1]])];
    case 'findingStop':
      return [solid([[x - 5, y - 5], [x + 5, y - 5], [x + 5, y + 5], [x - 5, y + 5]])];
    case 'findingCaution':
      return [solid([[x - 6, y + 5], [x + 6, y + 5], [x, y - 6]])];
    case 'findingNote':
      return [solid([[x - 5, y - 1.5], [x + 5, y - 1.5], [x + 5, y + 1.5], [x - 5, y + 1.5]])];
    case 'photoTick':
      return [line([[x, y + 6], [x, y - 6]]), figure(mark, [x + 3, y - 2], theme)];
    case 'break':
      return breakMark(x, height, theme, mark);
    case 'checkValve':
      return [line([[x - 6, y + 6], [x + 6, y + 6], [x, y - 5]], true), line([[x - 6, y - 6], [x + 6, y - 6]])];
    case 'weepHole':
      return [circle([x, y], 2.4, theme, mark), line([[x + 2.5, y], [x + 7, y + 1.5], [x + 9, y + 6]], false)];
    case 'dutyPoint':
      return [circle([x, y], 4.5, theme, mark)];
    case 'measuredPoint':
      return [line([[x - 5, y - 5], [x + 5, y + 5]]), line([[x - 5, y + 5], [x + 5, y - 5]])];
  }
}

function outline(theme: Theme, role: MarkItem['role'], filled: boolean): Record<string, string | number> {
  const stroke = paint(theme, 'stroke', role);
  if (!filled) return { ...stroke, fill: 'none' };
  if (theme === 'print') return { ...stroke, fill: '#fff' };
  const { fill: _none, ...rest } = stroke;
  return { ...rest, class: `${String(stroke['class'])} dl-fill-paper` };
}

function circle([cx, cy]: Point, r: number, theme: Theme, mark: MarkItem): SvgNode {
  return node('circle', { cx: px(cx), cy: px(cy), r, ...outline(theme, mark.role, true), 'stroke-width': 1.6 });
}

function figure(mark: MarkItem, [x, y]: Point, theme: Theme): SvgNode {
  return node('text', { x: px(x), y: px(y), 'font-size': 11, ...paint(theme, 'fill', mark.role) }, [mark.value ?? '']);
}

/** Two zigzag lines from the top to above the scale, with bare paper between them. */
function breakMark(x: number, height: number, theme: Theme, mark: MarkItem): SvgNode[] {
  const low = height > 120 ? height - footer : height;
  const zigzag = (at: number): Point[] => {
    const middle = low / 2;
    return [[at, 0], [at, middle - 12], [at - 5, middle - 4], [at + 5, middle + 4], [at, middle + 12], [at, low]];
  };
  const gap = 5.5;
  const bare = [...zigzag(x - gap), ...zigzag(x + gap).reverse()];
  return [
    node('path', { d: pathOf(bare, true), ...paint(theme, 'fill', 'paper') }),
    ...[x - gap, x + gap].map((at) => node('path', { d: pathOf(zigzag(at), false), ...paint(theme, 'stroke', mark.role), 'stroke-width': 0.7 })),
  ];
}
