import { describe, expect, test } from 'vitest';
import { placeTexts } from './place.ts';
import type { Wanted } from './place.ts';
import { projection } from './project.ts';
import { rankFor, toSvg } from './render.ts';
import { node, reactProps, toSvgString } from './tree.ts';
import type { SvgNode } from './tree.ts';
import { section } from '../section.ts';
import { evaluation } from '../testing/evaluation.ts';
import { ternHollow } from '../testing/tern-hollow.ts';
import { ft } from '../testing/units.ts';

const label = (code: string, params: Readonly<Record<string, number | string>>): string => `${code.slice(8)} ${Object.values(params).map((value) => (typeof value === 'number' ? value.toFixed(2) : value)).join(' ')}`;
const list = section(ternHollow, evaluation, { width: 1440, height: 460, water: { pond: ft(99.79), basin: ft(99.3) } });

const walk = (tree: SvgNode): SvgNode[] => [tree, ...tree.children.flatMap((child) => (typeof child === 'string' ? [] : walk(child)))];

describe('the picture', () => {
  const tree = toSvg(list, { width: 1440, height: 460, label, title: 'Section' });

  test('names no color of its own in a page, and every color in print', () => {
    expect(toSvgString(tree)).not.toMatch(/#[0-9a-f]{3,6}\b|rgb\(/i);
    const printed = walk(toSvg(list, { width: 1440, height: 460, label, theme: 'print' }));
    expect(printed.filter(({ tag, attrs }) => tag === 'text' && attrs['fill'] === undefined)).toEqual([]);
    expect(printed.some(({ attrs }) => String(attrs['class'] ?? '').includes('dl-stroke'))).toBe(false);
  });

  test('uses no inline style, which the page policy forbids', () => {
    expect(walk(tree).filter(({ attrs }) => 'style' in attrs)).toEqual([]);
  });

  test('refers only to hatches that it carries', () => {
    const text = toSvgString(tree);
    const used = new Set([...text.matchAll(/url\(#([\w-]+)\)/g)].map((match) => match[1]));
    const carried = new Set(walk(tree).filter(({ tag }) => tag === 'pattern').map(({ attrs }) => attrs['id']));
    expect(used.size).toBeGreaterThan(2);
    expect([...used].filter((id) => !carried.has(id))).toEqual([]);
  });

  test('has a tap area for each hit, and marks the chosen part', () => {
    const chosen = walk(toSvg(list, { width: 1440, height: 460, label, selected: 'B1' })).filter(({ attrs }) => String(attrs['class']).includes('dl-chosen'));
    expect(chosen.map(({ attrs }) => attrs['data-hit'])).toEqual(['B1']);
    expect(walk(tree).filter(({ attrs }) => attrs['data-hit'] !== undefined)).toHaveLength(list.hits.length);
  });

  test('is an image with a name, or hidden from a screen reader', () => {
    expect(tree.attrs).toMatchObject({ role: 'img', 'aria-label': 'Section' });
    expect(toSvg(list, { width: 100, height: 50, label }).attrs).toMatchObject({ 'aria-hidden': 'true' });
  });

  test('keeps in the key of a phone what a desk letters at its place', () => {
    const said = (width: number): string => walk(toSvg(section(ternHollow, evaluation, { width, height: 340 }), { width, height: 340, label }))
      .filter(({ tag }) => tag === 'text').map(({ children }) => children.map(String).join(' ')).join(' ');
    expect(rankFor(390)).toBeLessThan(rankFor(1440));
    for (const words of ['alarm 29.79', 'basin 0.76 1.21', 'sill Slider track 30.46', 'line 1 1/2 in 34.14']) {
      expect(said(390)).toContain(words);
      expect(said(1440)).toContain(words);
    }
  });
});

describe('lettering', () => {
  const wanted = (count: number): Wanted[] => Array.from({ length: count }, (_, key) => ({ key, text: 'Level 99.93 ft', at: [200 + key * 3, 150], side: 'above', rank: key === 0 ? 0 : 2, movable: true }));
  const sheet = { width: 400, height: 300, size: 12, marks: [{ x0: 195, y0: 140, x1: 205, y1: 150 }], lines: [], hatched: [], reach: 200, overLines: false };

  test('never lies over another text or a mark, and stays on the sheet', () => {
    const placed = placeTexts(wanted(12), sheet);
    const boxes = [...placed.map(({ box }) => box), ...sheet.marks];
    boxes.forEach((a, index) => {
      for (const b of boxes.slice(index + 1)) {
        expect(Math.min(a.x1, b.x1) - Math.max(a.x0, b.x0) > 1e-9 && Math.min(a.y1, b.y1) - Math.max(a.y0, b.y0) > 1e-9).toBe(false);
      }
    });
    for (const { box } of placed) expect(box.x0 >= 0 && box.y0 >= 0 && box.x1 <= 400 && box.y1 <= 300).toBe(true);
  });

  test('gives a leader to what had to move, and is the same every time', () => {
    const placed = placeTexts(wanted(12), sheet);
    expect(placed.some(({ leader }) => leader !== null)).toBe(true);
    expect(placeTexts(wanted(12), sheet)).toEqual(placed);
  });

  test('drops what finds no place, never the first rank', () => {
    const tiny = { ...sheet, width: 110, height: 20, marks: [] };
    const placed = placeTexts(wanted(6).map((text) => ({ ...text, at: [50, 10] as const })), tiny);
    expect(placed.map(({ key }) => key)).toEqual([0]);
  });
});

describe('the tree', () => {
  test('escapes text and attributes, and drops what XML cannot hold', () => {
    expect(toSvgString(node('text', { 'aria-label': 'a"b' }, ['<1 & \u00002>']))).toBe('<text aria-label="a&quot;b">&lt;1 &amp; 2&gt;</text>');
  });

  test('gives React its names', () => {
    expect(reactProps({ class: 'a', 'stroke-width': 1, 'data-part': 'P1', 'aria-label': 'x', viewBox: '0 0 1 1' }))
      .toEqual({ className: 'a', strokeWidth: 1, 'data-part': 'P1', 'aria-label': 'x', viewBox: '0 0 1 1' });
  });

  test('projects there and back', () => {
    const view = projection({ x0: -2, x1: 8, y0: 29, y1: 31 }, 1000, 400);
    expect(view.toPixels([-2, 31])).toEqual([0, 0]);
    expect(view.toPixels([8, 29])).toEqual([1000, 400]);
    const [x, y] = view.toDrawing(view.toPixels([3.3, 30.1]));
    expect([x, y]).toEqual([expect.closeTo(3.3, 9), expect.closeTo(30.1, 9)]);
  });
});
