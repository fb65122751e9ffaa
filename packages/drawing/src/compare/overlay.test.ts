import type { DesignDocument } from '@yardfall/calc';
import { describe, expect, test } from 'vitest';
import { section } from '../section.ts';
import { lines, only, outside, texts } from '../testing/read.ts';
import { gravityOnly, ternHollow } from '../testing/tern-hollow.ts';
import { ft } from '../testing/units.ts';
import { sectionDifferences } from './differences.ts';
import { overlay, overlayTable } from './overlay.ts';

const later: DesignDocument = {
  ...ternHollow,
  system: { parts: ternHollow.system.parts.filter(({ id }) => id !== 'W1').map((part) => (part.id === 'P1' && part.kind === 'pipe' ? { ...part, invertDown: part.invertDown - ft(0.1) } : part)) },
};
const size = { width: 1200, height: 460, scale: null };

describe('two revisions of a section', () => {
  const list = overlay({ before: ternHollow, after: later }, size);

  test('are the same where nothing was changed', () => {
    expect(sectionDifferences(ternHollow, structuredClone(ternHollow))).toEqual([]);
    const same = overlay({ before: ternHollow, after: structuredClone(ternHollow) }, size);
    expect(same.items.filter((item) => item.kind === 'line' && item.weight === 'bold')).toEqual([]);
    expect(same.items.filter(({ kind }) => kind === 'text')).toEqual([]);
  });

  test('differ by value, not by the order of the fields', () => {
    const turned = { ...ternHollow, system: { parts: ternHollow.system.parts.map((part) => Object.fromEntries(Object.entries(part).reverse()) as unknown as typeof part) } };
    expect(sectionDifferences(ternHollow, turned)).toEqual([]);
    expect(sectionDifferences(ternHollow, later)).toEqual([{ id: 'P1', name: 'Pipe to basin', change: 'changed', at: 'P1' }, { id: 'W1', name: 'Weep hole', change: 'removed', at: 'W1' }]);
    expect(sectionDifferences(later, ternHollow).map(({ change }) => change)).toEqual(['changed', 'added']);
  });

  test('as design and what was built say so in their key, and carry no words over the lines', () => {
    const built = overlay({ before: ternHollow, after: later }, { ...size, of: 'built' });
    expect(built.items.filter(({ kind }) => kind === 'text')).toEqual([]);
    expect(list.items.filter(({ kind }) => kind === 'text').length).toBeGreaterThan(0);
    expect((built.key ?? []).map(({ label: { code } }) => code)).toEqual(['drawing.key.asDesigned', 'drawing.key.asBuilt', 'drawing.key.both']);
    const drawn = (one: typeof list) => one.items.filter(({ kind }) => kind === 'line');
    expect(drawn(built)).toEqual(drawn(list));
  });

  test('stand in one frame, the earlier thin and dashed under the later in bold, each at its own level', () => {
    expect(outside(list)).toEqual([]);
    const pipe = lines(list, 'P1');
    const levelsOf = (wanted: (line: (typeof pipe)[number]) => boolean): number => Math.min(...pipe.filter(wanted).flatMap(({ points }) => points.map(([, y]) => y)));
    expect(levelsOf(({ weight, dash }) => weight === 'thin' && dash === 'dash')).toBeCloseTo(ft(99), 9);
    expect(levelsOf(({ weight }) => weight === 'bold')).toBeCloseTo(ft(98.9), 9);
    expect(list.items.findIndex((item) => item.kind === 'line' && item.dash === 'dash')).toBeLessThan(list.items.findIndex((item) => item.kind === 'line' && item.weight === 'bold'));
    expect(lines(list, 'B1').some(({ weight }) => weight === 'bold')).toBe(false);
  });

  test('name each difference at its part', () => {
    const changed = only(texts(list, 'drawing.changed'));
    expect(changed.label.params).toEqual({ name: 'Pipe to basin' });
    const drawn = lines(list, 'P1').flatMap(({ points }) => points);
    expect(changed.at[0]).toBeGreaterThan(Math.min(...drawn.map(([x]) => x)));
    expect(changed.at[0]).toBeLessThan(Math.max(...drawn.map(([x]) => x)));
    expect(only(texts(list, 'drawing.removed')).label.params).toEqual({ name: 'Weep hole' });
  });

  test('name a thicker slab at the part that lies in it', () => {
    const thick = { ...ternHollow, construction: { ...ternHollow.construction, slabCuts: ternHollow.construction.slabCuts.map((cut) => ({ ...cut, thickness: 0.216 })) } };
    const both = overlay({ before: ternHollow, after: thick }, size);
    const named = only(texts(both, 'drawing.changed'));
    expect(named.label.params).toEqual({ name: 'Cut for the channel' });
    const channel = lines(both, 'C1').flatMap(({ points }) => points.map(([x]) => x));
    expect(named.at[0]).toBeGreaterThanOrEqual(Math.min(...channel));
    expect(named.at[0]).toBeLessThanOrEqual(Math.max(...channel));
  });

  test('are told as a table: what was lettered then and now', () => {
    const rows = overlayTable({ before: ternHollow, after: later }).rows.map((row) => row.map(({ code, params }) => `${code} ${Object.values(params).join(' ')}`.trim()));
    expect(rows).toContainEqual(['drawing.value.name Pipe to basin', `drawing.invert ${String(ft(99))}`, `drawing.invert ${String(ft(99) - ft(0.1))}`]);
    expect(rows.filter(([part]) => part === 'drawing.value.name Basin')).toEqual([]);
  });

  test('are to scale in both axes, also where one of them has another outlet', () => {
    for (const [before, after] of [[ternHollow, gravityOnly], [gravityOnly, ternHollow]] as const) {
      const both = overlay({ before, after }, size);
      expect(outside(both)).toEqual([]);
      const [across, up] = [(both.extent.x1 - both.extent.x0) / size.width, (both.extent.y1 - both.extent.y0) / size.height];
      expect(across / up).toBeCloseTo(both.exaggeration ?? 0, 9);
      const alone = section(after, null, { breaks: false, gravity: false });
      const ground = (items: typeof alone.items) => items.flatMap((item) => (item.kind === 'line' && item.role === 'ground' ? [item.points] : []))[0]?.[1];
      expect(both.items.flatMap((item) => (item.kind === 'line' && item.role === 'ground' ? item.points : []))).toContainEqual(ground(alone.items));
    }
  });
});
