import { readFileSync } from 'node:fs';
import { createHash } from 'node:crypto';
import { evaluate, type DesignDocument } from '@yardfall/calc';
import { type DisplayList, type Issue, paperOf, pumpSheets, sectionSheets, type Sheet, type SheetContext, stormSheets, toSvg, unitPoints } from '@yardfall/drawing';
import { render } from '@yardfall/text';
import { beforeAll, describe, expect, test } from 'vitest';
import { runsOf } from './letters.ts';
import { writePdf } from './pdf.ts';
import { type Place, type ReadPage, readPdf } from './testing/readPdf.ts';

const document = JSON.parse(readFileSync(new URL('../../../../../prisma/seed/sites/tern-hollow.json', import.meta.url), 'utf8')) as DesignDocument;
const evaluation = evaluate(document);
const issue: Issue = { company: 'Yards of Žilina', job: 12, state: 'NC', design: 'Pump and lid', revision: 2, sha256: 'a3f5'.repeat(16), status: 'draft', provisional: true, day: '2026-11-20', by: 'Dana Whitfield' };
const contextOf = (paper: 'letter' | 'a4', units: 'us' | 'metric'): SheetContext => (
  { paper: paperOf(paper), issue, say: (code, params) => render('en', units, code, params), unit: units === 'us' ? 'foot' : 'metre' });
const info = { title: 'Section', author: issue.company, language: 'en', at: new Date('2026-11-20T15:00:00Z') };

/** Lines are written to a tenth of a unit, of which half may be lost at either end [points]. */
const written = 0.05 * unitPoints + 1e-3;

/** Metres of a drawing as points of its page. */
function pointsOf({ paper, drawing }: Sheet): (at: Place) => Place {
  if (drawing === null) throw new Error('the sheet has no drawing');
  const { display: { extent }, at } = drawing;
  return ([x, y]) => [
    (at.x + ((x - extent.x0) / (extent.x1 - extent.x0)) * at.width) * unitPoints,
    (paper.height - at.y - ((extent.y1 - y) / (extent.y1 - extent.y0)) * at.height) * unitPoints,
  ];
}

const near = (a: Place, b: Place): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) <= written * Math.SQRT2;

/** The lines and outlined shapes of a list, as they stand on the page. */
function wanted(display: DisplayList, to: (at: Place) => Place): Place[][] {
  return display.items.flatMap((item) => {
    if (item.kind === 'line' && item.points.length > 1) return [item.points.map(to)];
    return item.kind === 'polygon' && item.outlined && item.points.length > 1 ? [item.points.map(to)] : [];
  });
}

/** How many of the wanted outlines are found among the drawn ones, each after the one before it. */
function foundInOrder(list: readonly Place[][], drawn: readonly (readonly Place[])[]): number {
  let at = 0;
  let count = 0;
  for (const points of list) {
    const index = drawn.findIndex((one, place) => place >= at && one.length === points.length && one.every((point, i) => near(point, points[i] ?? [NaN, NaN])));
    if (index < 0) return count;
    at = index + 1;
    count += 1;
  }
  return count;
}

const units = [['letter', 'us'], ['a4', 'us'], ['letter', 'metric'], ['a4', 'metric']] as const;
const metresPerPoint = 0.0254 / 72;

describe.each(units)('a section on %s in %s units', (paper, system) => {
  const sheets = sectionSheets({ document, evaluation }, contextOf(paper, system));
  let pages: ReadPage[];
  beforeAll(async () => {
    pages = await readPdf(await writePdf(sheets, info));
  });

  test('lies on the paper that was asked for, landscape', () => {
    const [width, height] = paper === 'letter' ? [792, 612] : [(297 / 25.4) * 72, (210 / 25.4) * 72];
    expect(pages).toHaveLength(sheets.length);
    for (const page of pages) {
      expect(page.width).toBeCloseTo(width, 2);
      expect(page.height).toBeCloseTo(height, 2);
    }
  });

  test('is to the scale that its title block says: a length and a height of the document, measured on the page', () => {
    const basin = document.system.parts.find((part) => part.kind === 'basin');
    const pipe = document.system.parts.find((part) => part.kind === 'pipe');
    if (basin?.kind !== 'basin' || pipe?.kind !== 'pipe') throw new Error('the site has a pipe and a basin');
    const [page] = pages;
    const text = page?.words.map((word) => word.text).join('\n') ?? '';
    const said = (name: string): number => {
      const figure = system === 'us' ? new RegExp(`${name} 1 in = ([\\d.]+) ft`).exec(text)?.[1] : new RegExp(`${name} 1:(\\d+)`).exec(text)?.[1];
      if (figure === undefined) throw new Error(`the title block says no scale of ${name}`);
      return Number(figure) * (system === 'us' ? 12 : 1);
    };
    // The walls of the basin, from floor to rim, and its diameter; the pipe from its upper to its lower invert.
    const onPage = (page?.outlines ?? []).filter(({ drawn }) => drawn === 'stroke').map(({ points }) => points);
    const across = (metres: number): number => metres / said('Lengths') / metresPerPoint;
    const up = (metres: number): number => metres / said('Heights') / metresPerPoint;
    const tall = onPage.filter((points) => spanOf(points, 1) > 0 && Math.abs(spanOf(points, 1) - up(basin.rimLevel - basin.floorLevel)) <= 2 * written && Math.abs(spanOf(points, 0) - across(basin.diameter)) <= 2 * written);
    expect(tall.length).toBeGreaterThan(0);
    const long = onPage.filter((points) => points.length > 3 && Math.abs(spanOf(points, 0) - across(pipe.length)) <= 2 * written);
    expect(long.map((points) => (points[0]?.[1] ?? 0) - (points[1]?.[1] ?? 0)).some((fall) => Math.abs(fall - up(pipe.invertUp - pipe.invertDown)) <= 2 * written)).toBe(true);
    expect(text).toContain(`Heights drawn ${String(said('Lengths') / said('Heights'))} times larger`);
  });

  test('holds the items of the display list, in its order, where their meters put them', () => {
    for (const [index, sheet] of sheets.entries()) {
      if (sheet.drawing === null) continue;
      const list = wanted(sheet.drawing.display, pointsOf(sheet));
      expect(list.length).toBeGreaterThan(20);
      const drawn = (pages[index]?.outlines ?? []).filter((one) => one.drawn === 'stroke').map(({ points }) => points);
      expect(foundInOrder(list, drawn)).toBe(list.length);
    }
  });

  test('is the picture of the page of the client: the same list, in the same order, in both media', () => {
    for (const sheet of sheets) {
      if (sheet.drawing === null) continue;
      const { display, at } = sheet.drawing;
      const tree = toSvg(display, { width: at.width, height: at.height, label: (code, params) => render('en', system, code, params) });
      const drawn = tree.children.flatMap((child) => (typeof child !== 'string' && child.tag === 'path' && typeof child.attrs['d'] === 'string' && !String(child.attrs['class']).startsWith('dl-fill') ? [outline(child.attrs['d'])] : []));
      const to = pointsOf(sheet);
      const flat = (point: Place): Place => [(at.x + point[0]) * unitPoints, (sheet.paper.height - at.y - point[1]) * unitPoints];
      const list = wanted(display, to);
      expect(foundInOrder(list, drawn.map((points) => points.map(flat)))).toBe(list.length);
    }
  });

  test('has every level as words beside its point', () => {
    const [sheet] = sheets;
    const [page] = pages;
    if (sheet?.drawing == null || page === undefined) throw new Error('no first sheet');
    const to = pointsOf(sheet);
    const levels = sheet.drawing.display.items.flatMap((item) => (item.kind === 'text' && ['drawing.on', 'drawing.off', 'drawing.alarm', 'drawing.floor'].includes(item.label.code) ? [item] : []));
    expect(levels).toHaveLength(4);
    for (const { label, at } of levels) {
      const text = render('en', system, label.code, label.params);
      const word = page.words.find((one) => one.text.replaceAll('\u00a0', ' ') === text.replaceAll('\u00a0', ' '));
      expect(word?.size).toBeCloseTo(13 * unitPoints, 6);
      // A label is lettered at most 150 units from its point.
      expect(Math.hypot((word?.at[0] ?? Infinity) - to(at)[0], (word?.at[1] ?? Infinity) - to(at)[1])).toBeLessThan(150 * unitPoints + (word?.text.length ?? 0) * 8);
    }
  });

  test('goes on where the sheet before it ended', () => {
    const drawn = sheets.flatMap(({ drawing }) => (drawing === null ? [] : [drawing.display]));
    expect(drawn.length).toBeGreaterThan(1);
    const matches = drawn.map(({ items }) => items.flatMap((item) => (item.kind === 'line' && item.weight === 'bold' && item.dash === 'chain' ? [item.points[0]?.[0]] : [])));
    for (const [index, own] of matches.entries()) {
      const next = matches[index + 1];
      if (next === undefined) continue;
      expect(next[0]).toBe(own.at(-1));
      expect(pages[index]?.words.some(({ text }) => new RegExp(`Match line .* see sheet ${String(index + 2)}`).test(text))).toBe(true);
      expect(pages[index + 1]?.words.some(({ text }) => new RegExp(`Match line .* see sheet ${String(index + 1)}`).test(text))).toBe(true);
    }
  });
});

const spanOf = (points: readonly Place[], axis: 0 | 1): number => Math.max(...points.map((point) => point[axis])) - Math.min(...points.map((point) => point[axis]));

function outline(d: string): Place[] {
  return [...d.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]): Place => [Number(x), Number(y)]);
}

describe('a printed file', () => {
  const sheets = sectionSheets({ document, evaluation }, contextOf('letter', 'us'));

  test('is the same bytes however often it is made', async () => {
    const hashes = [];
    for (let i = 0; i < 3; i += 1) hashes.push(createHash('sha256').update(await writePdf(sheets, info)).digest('hex'));
    expect(new Set(hashes).size).toBe(1);
    expect((await writePdf(sheets, { ...info, at: new Date('2026-11-21T15:00:00Z') })).equals(await writePdf(sheets, info))).toBe(false);
  });

  test('carries its letters with it, and letters beyond those of western Europe', async () => {
    const bytes = await writePdf(sheets, info);
    const fonts = [...bytes.toString('latin1').matchAll(/\/BaseFont \/[A-Z]{6}\+([\w-]+)/g)].map(([, name]) => name);
    expect(new Set(fonts)).toEqual(new Set(['AtkinsonHyperlegibleNext-Regular', 'AtkinsonHyperlegibleNext-Bold']));
    const [page] = await readPdf(bytes);
    expect(page?.words.map(({ text }) => text).join('').replaceAll(' ', '')).toContain('YardsofŽilina');
    expect(runsOf('Ž漢a', false)).toEqual([{ font: 'plainExt', text: 'Ž' }, { font: 'plain', text: '?a' }]);
  });

  test('says on every sheet that a draft is none to build from, whose it is and what it is the drawing of', async () => {
    const pages = await readPdf(await writePdf([...sheets, ...stormSheets({ document, evaluation }, contextOf('letter', 'us')), ...pumpSheets({ document, evaluation }, contextOf('letter', 'us'))], info));
    expect(pages).toHaveLength(sheets.length + 2);
    for (const { words } of pages) {
      const all = words.map(({ text }) => text).join(' ');
      for (const part of ['DRAFT, not for construction', 'PROVISIONAL', 'Job 12', 'revision 2', issue.sha256.slice(0, 32), issue.sha256.slice(32), 'Dana Whitfield', 'Nov 20, 2026']) expect(all).toContain(part);
    }
  });

  test('is black, white and gray', async () => {
    const { OPS } = await import('unpdf').then((reader) => reader.getResolvedPDFJS());
    const pdf = await import('unpdf').then(async (reader) => reader.getDocumentProxy(new Uint8Array(await writePdf(sheets, info))));
    const { fnArray, argsArray } = await (await pdf.getPage(1)).getOperatorList();
    const colors: string[] = fnArray.flatMap((op: number, at: number): string[] => (op === OPS.setFillRGBColor || op === OPS.setStrokeRGBColor ? [String((argsArray[at] as string[])[0])] : []));
    expect(colors.length).toBeGreaterThan(50);
    expect(colors.filter((color) => !/^#(..)\1\1$/.test(color))).toEqual([]);
  });
});
