import { readdirSync, readFileSync } from 'node:fs';
import type { DesignDocument } from '@yardfall/calc';
import { describe, expect, test } from 'vitest';
import type { DisplayList, TextItem } from '../display.ts';
import { section } from '../section.ts';
import type { SectionOptions } from '../section/options.ts';
import { evaluation } from '../testing/evaluation.ts';
import { ternHollow } from '../testing/tern-hollow.ts';
import { crossing, overlap } from './geometry.ts';
import type { Point } from '../display.ts';
import { letterOut } from './lettering.ts';
import { textWidth, wrapped } from './letters.ts';
import { markBox } from './marks.ts';
import { projection } from './project.ts';
import { rankFor, toSvg } from './render.ts';
import type { SvgOptions } from './render.ts';
import type { SvgNode } from './tree.ts';

const folder = new URL('../../../../prisma/seed/sites/', import.meta.url);
const demo = readdirSync(folder).filter((name) => name.endsWith('.json')).map((name) => (
  { name, document: JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as DesignDocument }));
const sites = [...demo.map((site) => ({ ...site, evaluation: null })), { name: 'invented patio', document: ternHollow, evaluation }];

const readers: Readonly<Record<string, Partial<SectionOptions>>> = {
  estimator: {}, crew: { gravity: false, states: { CH1: 'built', P1: 'next', B1: 'held' } }, customer: { gravity: false, utilities: false }, house: { window: 'house' },
};
const label = (code: string, params: Readonly<Record<string, number | string>>): string =>
  `${code === 'drawing.scaleBar' ? '' : code.slice(8)} ${Object.values(params).map((value) => (typeof value === 'number' ? `${value.toFixed(2)} ft` : value)).join(', ')}`;

function svgOptions(width: number, height: number): SvgOptions {
  return { width, height, label, theme: 'classes', idPrefix: 'x', textSize: width < 480 ? 12.5 : 13, maxRank: rankFor(width), title: null, selected: null, hits: true };
}

function drawn(site: (typeof sites)[number], width: number, reader: string): { list: DisplayList; options: SvgOptions } {
  const height = Math.round(Math.min(460, Math.max(320, width * 0.36)));
  const sill = Math.min(...site.document.site.sills.map(({ level }) => level));
  const list = section(site.document, site.evaluation, { width, height, water: { pond: sill - 0.03, basin: sill - 0.5 }, ...readers[reader] });
  return { list, options: svgOptions(width, height) };
}

const strokes = (list: DisplayList, options: SvgOptions) => {
  const view = projection(list.extent, options.width, options.height);
  return list.items.flatMap((item) => {
    if (item.kind !== 'line' && !(item.kind === 'polygon' && item.outlined)) return [];
    const points = (item.kind === 'polygon' ? [...item.points, ...item.points.slice(0, 1)] : item.points).map((point) => view.toPixels(point));
    return points.slice(1).map((point, index) => [points[index] ?? point, point] as const);
  });
};

/** Distance in pixels from a point to the nearest line, outline or mark of the parts that are asked for. */
function nearestStroke(list: DisplayList, options: SvgOptions, at: Point, of: (part: string | null) => boolean): number {
  const own = { ...list, items: list.items.filter((item) => of(item.part)) };
  const view = projection(list.extent, options.width, options.height);
  const marks = own.items.flatMap((item) => (item.kind === 'mark' ? [view.toPixels(item.at)] : []));
  const away = strokes(own, options).map(([a, b]) => {
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const share = Math.min(1, Math.max(0, ((at[0] - a[0]) * dx + (at[1] - a[1]) * dy) / Math.max(dx * dx + dy * dy, 1e-12)));
    return Math.hypot(a[0] + share * dx - at[0], a[1] + share * dy - at[1]);
  });
  return Math.min(Infinity, ...away, ...marks.map(([x, y]) => Math.hypot(x - at[0], y - at[1])));
}

describe.each(sites.map((site) => [site.name, site] as const))('%s', (_, site) => {
  for (const width of [360, 390, 760, 1376]) {
    for (const reader of Object.keys(readers)) {
      test(`${reader}, ${width} px: no lettering lies over other lettering, a mark or a line, and none is lost`, () => {
        const { list, options } = drawn(site, width, reader);
        const view = projection(list.extent, options.width, options.height);
        const { texts, balloons } = letterOut(list, view, options);
        const boxes = [...texts, ...balloons].map(({ placed }) => placed.box);
        boxes.forEach((a, index) => {
          for (const b of boxes.slice(index + 1)) expect(overlap(a, b)).toBe(false);
        });
        const lines = strokes(list, options);
        const marks = list.items.flatMap((item) => (item.kind === 'mark' ? [markBox(item, view.toPixels(item.at))] : []));
        for (const { placed, item } of texts.filter(({ item: { rank, movable } }) => movable && rank > 0)) {
          expect(lines.filter((line) => crossing(placed.box, line) > 0), item.label.code).toEqual([]);
          expect(marks.filter((mark) => overlap(placed.box, mark)), item.label.code).toEqual([]);
        }
        const wanted = list.items.filter((item): item is TextItem => item.kind === 'text').map((item) => label(item.label.code, item.label.params));
        const said = new Set([...texts.map(({ placed }) => placed.text), ...balloons.flatMap(({ words }) => words)]);
        expect(wanted.filter((words) => !said.has(words))).toEqual([]);
      });
    }
  }

  for (const width of [390, 1376]) {
    test(`${width} px: a leader ends at what its words name, and no line of another part lies nearer`, () => {
      const { list, options } = drawn(site, width, 'estimator');
      const view = projection(list.extent, options.width, options.height);
      const { texts, balloons } = letterOut(list, view, options);
      for (const { placed, item } of [...texts, ...balloons]) {
        if (placed.leader === null || item.part === null) continue;
        const own = nearestStroke(list, options, placed.leader[0], (part) => part === item.part);
        expect(own, `${item.label.code} of ${item.part}`).toBeLessThan(10);
        // Of two lines that run side by side the leader must say which one it means; at a joint they meet, and what lies beside is dashed.
        if (!namesLine.includes(item.label.code)) continue;
        const beside = new Set(list.items.flatMap(({ kind, part, ...rest }) => (kind === 'text' && 'label' in rest && rest.label.code.startsWith('drawing.beside') ? [part] : [])));
        const other = nearestStroke(list, options, placed.leader[0], (part) => part !== item.part && runs(part) && !beside.has(part));
        expect(other, `${item.label.code} of ${item.part}`).toBeGreaterThan(own + 2);
      }
    });
  }

  const namesLine: readonly string[] = ['drawing.pipe', 'drawing.line', 'drawing.roofLine', 'drawing.underdrain'];
  const runs = (id: string | null): boolean => site.document.system.parts.some((part) => part.id === id && ['pipe', 'dischargeLine', 'roofLine', 'underdrain'].includes(part.kind));

  test('every part of the document can be found and tapped', () => {
    const { list } = drawn(site, 1376, 'estimator');
    const tapped = new Set(list.hits.map(({ part }) => part));
    const seen = new Set(list.items.map(({ part }) => part));
    const parts = site.document.system.parts;
    expect(parts.filter(({ id }) => !tapped.has(id)).map(({ id }) => id)).toEqual([]);
    // The eave is above the sheet, so a gutter has a place to tap and no line.
    expect(parts.filter(({ id, kind }) => kind !== 'gutter' && !seen.has(id)).map(({ id, kind }) => `${kind} ${id}`)).toEqual([]);
  });

  test('is the same every time', () => {
    const { list, options } = drawn(site, 760, 'estimator');
    expect(toSvg(list, options)).toEqual(toSvg(list, options));
  });
});

describe('the key', () => {
  const { list, options } = drawn({ name: 'invented patio', document: ternHollow, evaluation }, 360, 'estimator');
  const tree = toSvg(list, options);
  const lettersOf = (node: SvgNode): SvgNode[] => [node, ...node.children.flatMap((child) => (typeof child === 'string' ? [] : lettersOf(child)))].filter(({ tag }) => tag === 'text');

  test('stands below the picture and adds its height', () => {
    expect(Number(tree.attrs['height'])).toBeGreaterThan(options.height);
    expect(tree.attrs['viewBox']).toBe(`0 0 ${options.width} ${String(tree.attrs['height'])}`);
    const lowest = Math.max(...lettersOf(tree).map(({ attrs }) => Number(attrs['y'])));
    expect(lowest).toBeGreaterThan(options.height);
    expect(lowest).toBeLessThan(Number(tree.attrs['height']));
  });

  test('numbers from the house outward, each number once at its part and once in the key', () => {
    const { balloons } = letterOut(list, projection(list.extent, options.width, options.height), options);
    expect(balloons.length).toBeGreaterThan(5);
    expect(balloons.map(({ number }) => number)).toEqual(balloons.map((_, index) => index + 1));
    balloons.slice(1).forEach(({ item }, index) => expect(item.at[0]).toBeGreaterThanOrEqual(balloons[index]?.item.at[0] ?? 0));
    for (const { number } of balloons) expect(lettersOf(tree).filter(({ children }) => children[0] === String(number))).toHaveLength(2);
  });

  test('keeps its lines in the width', () => {
    for (const line of wrapped('Basin 30 in wide, 48 in deep; alarm 97.75 ft; on 97.40 ft; off 96.50 ft', 13, 200)) expect(textWidth(line, 13)).toBeLessThanOrEqual(200);
    expect(wrapped('uno dos', 13, 4)).toEqual(['uno', 'dos']);
    expect(textWidth('Válvula', 13)).toBe(textWidth('Valvula', 13));
  });
});
