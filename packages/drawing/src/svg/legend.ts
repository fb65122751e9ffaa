import type { KeyEntry } from '../display.ts';
import { fills } from './fills.ts';
import { textWidth } from './letters.ts';
import { drawMark } from './marks.ts';
import { pathOf, px } from './project.ts';
import type { SvgOptions } from './render.ts';
import { dashOf, paint, strokeOf } from './style.ts';
import { node } from './tree.ts';
import type { SvgNode } from './tree.ts';

const edge = 8;
const between = 20;
/** Room for a mark, and for a line or hatch, which need length to be known again [px]. */
const markRoom = 20;
const lineRoom = 34;

/** What the marks, lines and hatches of the picture mean, in rows below it; its height is added to that of the picture. */
export function legendBelow(entries: readonly KeyEntry[], top: number, options: SvgOptions): { readonly nodes: SvgNode[]; readonly height: number } {
  if (entries.length === 0) return { nodes: [], height: 0 };
  const { width, textSize } = options;
  const leading = textSize * 1.7;
  const nodes: SvgNode[] = [];
  let x = edge;
  let y = top + leading * 0.6;
  for (const { label, symbol } of entries) {
    const words = options.label(label.code, label.params);
    const room = symbol.kind === 'mark' ? markRoom : lineRoom;
    const wide = room + textWidth(words, textSize);
    if (x > edge && x + wide > width - edge) {
      x = edge;
      y += leading;
    }
    nodes.push(...draw(symbol, x, y, options), node('text', { x: px(x + room), y: px(y + textSize * 0.34), 'font-size': textSize, ...paint(options.theme, 'fill', 'ink') }, [words]));
    x += wide + between;
  }
  return { nodes, height: Math.ceil(y + leading * 0.6 - top) };
}

function draw(symbol: KeyEntry['symbol'], x: number, y: number, options: SvgOptions): SvgNode[] {
  const { theme } = options;
  if (symbol.kind === 'mark') {
    // A level stands on its point, a photo mark carries its number to the right: both are set so that they sit on the line of words.
    const at = symbol.mark === 'levelMark' ? y + 5 : y;
    return drawMark({ kind: 'mark', part: null, state: 'plain', role: symbol.role, mark: symbol.mark, at: [0, 0], index: 0, value: null }, [x + 7, at], theme, options.height);
  }
  if (symbol.kind === 'arrow') {
    const tip = x + lineRoom - 10;
    return [[[x + 4, y], [tip, y]] as const, [[tip - 5, y - 3], [tip, y], [tip - 5, y + 3]] as const].map((points) => node('path', { d: pathOf(points, false), ...paint(theme, 'stroke', symbol.role), ...strokeOf('thin', 'plain') }));
  }
  if (symbol.kind === 'line') {
    const d = pathOf([[x, y], [x + lineRoom - 8, y]], false);
    return [node('path', { d, ...paint(theme, 'stroke', symbol.role), ...strokeOf(symbol.weight, symbol.state ?? 'plain'), ...dashOf(symbol.dash) })];
  }
  const d = pathOf([[x, y - 6], [x + lineRoom - 8, y - 6], [x + lineRoom - 8, y + 6], [x, y + 6]], true);
  return [...fills(symbol.hatch, options).map((attrs) => node('path', { d, ...attrs })), node('path', { d, ...paint(theme, 'stroke', symbol.role), 'stroke-width': 1 })];
}
