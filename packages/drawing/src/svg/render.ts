import type { DisplayList, Item, LineItem, PolygonItem, TextItem } from '../display.ts';
import type { LabelCode } from '../labels.ts';
import { fills } from './fills.ts';
import { keyBelow, numbered } from './key.ts';
import { legendBelow } from './legend.ts';
import { letterOut } from './lettering.ts';
import type { Balloon } from './lettering.ts';
import { drawMark } from './marks.ts';
import { patterns } from './patterns.ts';
import type { PlacedText } from './place.ts';
import { pathOf, projection, px } from './project.ts';
import type { Projection } from './project.ts';
import { dashOf, paint, strokeOf } from './style.ts';
import type { Theme } from './style.ts';
import { node } from './tree.ts';
import type { SvgNode } from './tree.ts';

export interface SvgOptions {
  readonly width: number;
  readonly height: number;
  readonly label: (code: LabelCode, params: Readonly<Record<string, number | string>>) => string;
  readonly theme: Theme;
  /** Unique on the page, since hatches are found by id. */
  readonly idPrefix: string;
  readonly textSize: number;
  /** Texts of a higher rank stand in the key of a section, and are left out of a graph. */
  readonly maxRank: number;
  /** Accessible name of the picture. */
  readonly title: string | null;
  readonly selected: string | null;
  readonly hits: boolean;
}

/** A phone letters what decides at its place and the rest in the key below; a desk letters all that finds room. */
export function rankFor(width: number): number {
  if (width < 480) return 2;
  return width < 900 ? 3 : 6;
}

export function toSvg(display: DisplayList, given: Pick<SvgOptions, 'width' | 'height' | 'label'> & Partial<SvgOptions>): SvgNode {
  const options: SvgOptions = {
    theme: 'classes', idPrefix: `dl-${display.name}`, textSize: given.width < 480 ? 12.5 : 13, maxRank: rankFor(given.width),
    title: null, selected: null, hits: true, ...given,
  };
  const view = projection(display.extent, options.width, options.height);
  const drawn = display.items.filter((item) => item.kind !== 'text').flatMap((item) => drawItem(item, view, options));
  const { texts, balloons } = letterOut(display, view, options);
  const letters = [...texts.flatMap(({ placed, item }) => letter(placed, item, options)), ...balloons.flatMap((balloon) => drawBalloon(balloon, options))];
  const key = keyBelow(balloons, options);
  const hits = options.hits ? display.hits.filter((hit) => hit.points.length > 2).map((hit) => hitArea(hit.part, pathOf(hit.points.map((point) => view.toPixels(point)), true), options)) : [];
  const { width } = options;
  const legend = legendBelow(display.key ?? [], options.height + key.height, options);
  const height = options.height + key.height + legend.height;
  return node('svg', {
    xmlns: 'http://www.w3.org/2000/svg', viewBox: `0 0 ${width} ${height}`, width, height, class: 'dl', role: 'img',
    ...(options.title === null ? { 'aria-hidden': 'true' } : { 'aria-label': options.title }),
    ...(options.theme === 'print' ? { 'font-family': 'Atkinson Hyperlegible Next, sans-serif' } : {}),
  }, [patterns(options.idPrefix, options.theme), ...drawn, ...letters, ...key.nodes, ...legend.nodes, ...hits]);
}

function drawItem(item: Exclude<Item, TextItem>, view: Projection, options: SvgOptions): SvgNode[] {
  if (item.kind === 'line') return item.points.length < 2 ? [] : [drawLine(item, view, options)];
  // A shape that lies outside the picture was cut to nothing.
  if (item.kind === 'polygon' && item.points.length < 2) return [];
  if (item.kind === 'polygon') return drawPolygon(item, view, options);
  return [node('g', partAttrs(item), drawMark(item, view.toPixels(item.at), options.theme, options.height))];
}

function partAttrs(item: Item): SvgNode['attrs'] {
  return item.part === null ? {} : { 'data-part': item.part, 'data-state': item.state };
}

function drawLine(item: LineItem, view: Projection, { theme }: SvgOptions): SvgNode {
  return node('path', {
    d: pathOf(item.points.map((point) => view.toPixels(point)), false),
    ...paint(theme, 'stroke', item.role), ...strokeOf(item.weight, item.state), ...dashOf(item.dash), ...partAttrs(item),
  });
}

function drawPolygon(item: PolygonItem, view: Projection, options: SvgOptions): SvgNode[] {
  const d = pathOf(item.points.map((point) => view.toPixels(point)), true);
  const part = partAttrs(item);
  const result = fills(item.hatch, options).map((attrs) => node('path', { d, ...attrs, ...part }));
  if (item.outlined) {
    result.push(node('path', { d, ...paint(options.theme, 'stroke', item.role), ...strokeOf('normal', item.state), 'stroke-linejoin': 'round', ...part }));
  }
  return result;
}

function hitArea(part: string, d: string, options: SvgOptions): SvgNode {
  const chosen = options.selected === part;
  return node('path', {
    d, 'data-hit': part, class: chosen ? 'dl-hit dl-chosen' : 'dl-hit',
    fill: 'none', 'pointer-events': 'all', stroke: 'none',
  });
}

function letter(placed: PlacedText, item: TextItem, options: SvgOptions): SvgNode[] {
  const { theme, textSize } = options;
  const fill = paint(theme, 'fill', item.role);
  const halo: Record<string, string> = theme === 'print' ? { stroke: '#fff' } : { class: `${String(fill['class'])} dl-halo` };
  const text = node('text', {
    x: px(placed.box.x0 + 1), y: px(placed.box.y1 - textSize * 0.28), 'font-size': textSize,
    ...fill, ...halo, 'stroke-width': 3, 'stroke-linejoin': 'round', 'paint-order': 'stroke', ...partAttrs(item),
  }, [placed.text]);
  if (placed.leader === null) return [text];
  return [node('path', { d: pathOf(placed.leader, false), ...paint(theme, 'stroke', item.role), 'stroke-width': 0.8, 'stroke-opacity': 0.55 }), text];
}

function drawBalloon({ number, placed, item }: Balloon, { theme }: SvgOptions): SvgNode[] {
  const { x0, x1, y0, y1 } = placed.box;
  const leader = placed.leader === null ? [] : [node('path', { d: pathOf(placed.leader, false), ...paint(theme, 'stroke', 'faint'), 'stroke-width': 0.8 })];
  return [node('g', partAttrs(item), [...leader, ...numbered(number, [(x0 + x1) / 2, (y0 + y1) / 2], theme)])];
}
