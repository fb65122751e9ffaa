import type { DesignDocument, PlanUse } from '@yardfall/calc';
import { describe, expect, test } from 'vitest';
import { section } from '../section.ts';
import type { Item, Point } from '../display.ts';
import type { SvgNode } from '../svg/tree.ts';
import { evaluation } from '../testing/evaluation.ts';
import { outside } from '../testing/read.ts';
import { gravityOnly, ternHollow } from '../testing/tern-hollow.ts';
import { ft } from '../testing/units.ts';
import type { Issue } from './block.ts';
import { cutAlong } from './cut.ts';
import { paperOf, scalesOf, unitPoints } from './paper.ts';
import { planSheets } from './plan.ts';
import { sectionSheets } from './sheets.ts';
import type { Sheet, SheetContext } from './sheet.ts';

const issue: Issue = { company: 'Yards', job: 7, state: 'NC', design: 'First', revision: 1, sha256: '0123456789abcdef'.repeat(4), status: 'issued', provisional: false, day: '2026-11-20', by: 'Dana' };
const contextOf = (unit: 'foot' | 'metre', paper: 'letter' | 'a4' = 'letter', changes: Partial<Issue> = {}): SheetContext => (
  { paper: paperOf(paper), issue: { ...issue, ...changes }, unit, say: (code, params) => `${code} ${Object.values(params).join(' ')}`.trim() });

const textOf = ({ children }: SvgNode): string => children.filter((child) => typeof child === 'string').join('');
const wordsOf = (node: SvgNode): string[] => (node.tag === 'text' ? [textOf(node)] : node.children.flatMap((child) => (typeof child === 'string' ? [] : wordsOf(child))));
const drawings = (sheets: readonly Sheet[]) => sheets.flatMap(({ drawing }) => (drawing === null ? [] : [drawing]));
const pointsOf = (item: Item): readonly Point[] => (item.kind === 'line' || item.kind === 'polygon' ? item.points : [item.at]);

/** The same yard with a line that is so many feet longer. */
const longer = (feet: number): DesignDocument => ({
  ...ternHollow, system: { parts: ternHollow.system.parts.map((part) => (part.kind === 'dischargeLine' ? { ...part, length: part.length + ft(feet) } : part)) },
});

describe('a section on paper', () => {
  for (const unit of ['foot', 'metre'] as const) {
    for (const paper of ['letter', 'a4'] as const) {
      test(`is drawn at scales of the rule, both axes, in ${unit} on ${paper}`, () => {
        for (const { display, at } of drawings(sectionSheets({ document: ternHollow, evaluation }, contextOf(unit, paper)))) {
          const ratios = scalesOf(unit).map(({ ratio }) => ratio);
          const metres = ((unitPoints / 72) * 0.0254);
          const across = (display.extent.x1 - display.extent.x0) / at.width / metres;
          const up = (display.extent.y1 - display.extent.y0) / at.height / metres;
          expect(ratios.some((ratio) => Math.abs(ratio - across) < 1e-6)).toBe(true);
          expect(ratios.some((ratio) => Math.abs(ratio - up) < 1e-6)).toBe(true);
          expect(across / up).toBeCloseTo(display.exaggeration ?? 0, 9);
          expect(display.exaggeration).toBeLessThanOrEqual(10);
        }
      });
    }
  }

  test('leaves nothing out and lies on its sheets', () => {
    const sheets = drawings(sectionSheets({ document: longer(60), evaluation }, contextOf('foot')));
    expect(sheets.length).toBeGreaterThan(2);
    for (const { display } of sheets) {
      expect(outside(display)).toEqual([]);
      expect(display.breaks).toEqual([]);
    }
    const parts = new Set(sheets.flatMap(({ display }) => display.items.flatMap(({ part }) => part ?? [])));
    const whole = section(longer(60), evaluation, { breaks: false });
    expect([...new Set(whole.items.flatMap(({ part }) => part ?? []))].filter((part) => !parts.has(part))).toEqual([]);
  });

  test('stays inside its field, key and all', () => {
    for (const document of [ternHollow, gravityOnly, longer(60)]) {
      for (const unit of ['foot', 'metre'] as const) {
        for (const paper of ['letter', 'a4'] as const) {
          const { field } = paperOf(paper);
          for (const { tree } of sectionSheets({ document, evaluation }, contextOf(unit, paper))) {
            const below = textsOf(tree).filter(({ y }) => y > field.y + field.height && y < paperOf(paper).block.y);
            expect(below).toEqual([]);
          }
        }
      }
    }
  });

  test('has no name of a customer, no address and no word over the drawing when it is issued', () => {
    const all = sectionSheets({ document: ternHollow, evaluation }, contextOf('foot')).flatMap(({ tree }) => wordsOf(tree)).join('\n');
    expect(all).toContain('drawing.sheet.property 7 NC');
    expect(all).not.toContain(ternHollow.title);
    expect(all).not.toMatch(/drawing\.sheet\.(draft|provisional|superseded)/);
  });

  test.each([['draft', 'drawing.sheet.draft'], ['superseded', 'drawing.sheet.superseded']] as const)('says twice on every sheet that it is %s', (status, word) => {
    for (const { tree } of sectionSheets({ document: ternHollow, evaluation }, contextOf('foot', 'letter', { status }))) expect(wordsOf(tree).filter((text) => text === word)).toHaveLength(2);
  });

  test('lists every level in a table after the drawing', () => {
    const sheets = sectionSheets({ document: ternHollow, evaluation }, contextOf('foot'));
    const table = sheets.filter(({ drawing }) => drawing === null).flatMap(({ tree }) => wordsOf(tree)).join('\n');
    for (const level of ['drawing.off', 'drawing.on', 'drawing.alarm', 'drawing.floor', 'drawing.sill', 'drawing.waterTable']) expect(table).toContain(level);
  });
});

function textsOf(node: SvgNode, dy = 0): { y: number; text: string }[] {
  const shift = /translate\(\S+ (\S+)\)/.exec(String(node.attrs['transform'] ?? ''));
  const y = dy + Number(shift?.[1] ?? 0);
  if (node.tag === 'text') return [{ y: y + Number(node.attrs['y']), text: textOf(node) }];
  return node.children.flatMap((child) => (typeof child === 'string' ? [] : textsOf(child, y)));
}

describe('a drawing cut for a sheet', () => {
  const whole = section(ternHollow, evaluation, { breaks: false, width: 2000, height: 500 });

  test('has both halves of every line and shape, each at its place', () => {
    const at = ft(40);
    const [left, right] = [cutAlong(whole, whole.extent.x0, at, whole.extent), cutAlong(whole, at, whole.extent.x1, whole.extent)];
    for (const item of left.items) expect(Math.max(...pointsOf(item).map(([x]) => x))).toBeLessThanOrEqual(at + 1e-9);
    for (const item of right.items) expect(Math.min(...pointsOf(item).map(([x]) => x))).toBeGreaterThanOrEqual(at - 1e-9);
    const length = (list: typeof whole): number => list.items.reduce((sum, item) => (item.kind === 'line' ? sum + item.points.slice(1).reduce((run, point, i) => run + Math.hypot(point[0] - (item.points[i]?.[0] ?? 0), point[1] - (item.points[i]?.[1] ?? 0)), 0) : sum), 0);
    expect(length(left) + length(right)).toBeCloseTo(length(whole), 9);
    const area = (list: typeof whole): number => list.items.reduce((sum, item) => (item.kind === 'polygon' ? sum + Math.abs(shoelace(item.points)) : sum), 0);
    expect(area(left) + area(right)).toBeCloseTo(area(whole), 9);
    const single = (list: typeof whole): number => list.items.filter(({ kind }) => kind === 'text' || kind === 'mark').length;
    expect(single(left) + single(right)).toBe(single(whole));
  });

  test('a line that leaves the sheet and comes back is two lines', () => {
    const list = { ...whole, items: [{ kind: 'line', part: null, role: 'ink', state: 'plain', points: [[0, 0], [3, 1], [0, 2]], weight: 'thin', dash: 'solid' }] as const };
    expect(cutAlong(list, -1, 1, whole.extent).items.map((item) => pointsOf(item))).toEqual([[[0, 0], [1, 1 / 3]], [[1, 2 - 1 / 3], [0, 2]]].map((line) => line.map(([x, y]) => [x, expect.closeTo(y ?? 0, 12)])));
  });
});

const shoelace = (points: readonly Point[]): number => points.reduce((sum, [x, y], i) => {
  const [nx, ny] = points[(i + 1) % points.length] ?? [x, y];
  return sum + (x * ny - nx * y) / 2;
}, 0);

describe('the plan on paper', () => {
  const uses = ['house', 'paving', 'lawn', 'bed', 'gravel', 'lot'] as const;
  const lines = ['roof', 'wall', 'gutter', 'pipe', 'drain', 'utility'] as const;
  const square = (i: number) => [[0, 0], [20, 0], [20, 12], [0, 12]].map(([x = 0, y = 0]) => ({ x: x + i, y: y + i }));
  const shapes = [
    ...uses.map((use, i) => ({ id: `A${i}`, kind: 'area' as const, use: use as PlanUse, name: use, points: square(i), of: null })),
    ...lines.map((use, i) => ({ id: `L${i}`, kind: 'line' as const, use: use as PlanUse, name: use, points: square(i).slice(0, 2), of: null })),
  ];
  const document: DesignDocument = { ...ternHollow, site: { ...ternHollow.site, plan: { picture: null, north: 0, shapes } } };
  const printed = { document, ground: null, figures: [], checks: [], measures: new Map<string, number>(), waterLevel: null };

  test('is at one scale of the rule both ways, with everything on the sheet', () => {
    for (const unit of ['foot', 'metre'] as const) {
      const [first] = drawings(planSheets(printed, contextOf(unit)));
      if (first === undefined) throw new Error('no plan');
      const { display: { extent, items }, at } = first;
      const metres = (unitPoints / 72) * 0.0254;
      expect(scalesOf(unit).some(({ ratio }) => Math.abs(ratio - (extent.x1 - extent.x0) / at.width / metres) < 1e-6)).toBe(true);
      expect((extent.x1 - extent.x0) / at.width).toBeCloseTo((extent.y1 - extent.y0) / at.height, 12);
      expect(outside(first.display)).toEqual([]);
      expect(items.some((item) => item.kind === 'text' && item.label.code === 'drawing.plan.north')).toBe(true);
      expect(items.some((item) => item.kind === 'text' && item.label.code === 'drawing.scaleBar')).toBe(true);
    }
  });

  test('tells every kind apart without color: no two have one line and one hatch', () => {
    const [first] = drawings(planSheets(printed, contextOf('foot')));
    const looks = first?.display.key?.map(({ symbol }) => (symbol.kind === 'line' ? `${symbol.weight} ${symbol.dash}` : symbol.kind === 'hatch' ? symbol.hatch : symbol.kind)) ?? [];
    expect(looks).toHaveLength(uses.length + lines.length);
    expect(looks.filter((look, i) => looks.indexOf(look) !== i)).toEqual([]);
  });

  test('says the areas of the surfaces, and is none where nothing has a place', () => {
    expect(planSheets(printed, contextOf('foot')).flatMap(({ tree }) => wordsOf(tree))).toContain('designs.surface.paving');
    expect(planSheets({ ...printed, document: ternHollow }, contextOf('foot'))).toEqual([]);
  });
});
