import { describe, expect, test } from 'vitest';
import type { DesignDocument } from '@yardfall/calc';
import { section } from './section.ts';
import { gravityOnly, ternHollow } from './testing/tern-hollow.ts';
import { evaluation } from './testing/evaluation.ts';
import { lines, marks, only, outside, polygons, texts } from './testing/read.ts';
import { ft, inch } from './testing/units.ts';

const wet = { pond: ft(99.79), basin: ft(99.3) };
const sizes = [[390, 340], [1440, 460], [800, 300]] as const;

const bare: DesignDocument = { ...ternHollow, system: { parts: [] } };

describe('the sheet', () => {
  for (const [name, document] of [['pumped', ternHollow], ['gravity only', gravityOnly], ['site alone', bare]] as const) {
    for (const [width, height] of sizes) {
      for (const window of ['whole', 'house'] as const) {
        test(`holds every item: ${name}, ${window}, ${width} px`, () => {
          const list = section(document, evaluation, { width, height, window, water: wet });
          expect(outside(list)).toEqual([]);
          expect(list.items.length).toBeGreaterThan(10);
        });
      }
    }
  }

  test('is to scale in both axes: the stated exaggeration is the ratio of the drawn scales', () => {
    for (const [width, height] of sizes) {
      const { extent, exaggeration } = section(ternHollow, evaluation, { width, height });
      const across = width / (extent.x1 - extent.x0);
      const up = height / (extent.y1 - extent.y0);
      expect(up / across).toBeCloseTo(exaggeration ?? 0, 9);
    }
  });

  test('states its exaggeration and a scale bar of the length it says', () => {
    const list = section(ternHollow, evaluation, { width: 1440, height: 460 });
    expect(only(texts(list, 'drawing.exaggeration')).label.params).toEqual({ times: list.exaggeration });
    const bar = only(texts(list, 'drawing.scaleBar'));
    const ends = lines(list, null).find(({ points }) => points.length === 4 && points[2]?.[0] === bar.at[0])?.points;
    expect((ends?.[2]?.[0] ?? 0) - (ends?.[1]?.[0] ?? 0)).toBeCloseTo(Number(bar.label.params['length']), 9);
  });
});

describe('levels', () => {
  const list = section(ternHollow, evaluation, { width: 1440, height: 460, breaks: false, water: wet });

  test('the gravity pipe runs from its upper to its lower invert, over its length', () => {
    const pipe = only(polygons(list, 'P1').filter(({ outlined }) => outlined));
    expect(pipe.points[0]?.[1]).toBeCloseTo(ft(99.15), 9);
    expect(pipe.points[1]?.[1]).toBeCloseTo(ft(99), 9);
    expect((pipe.points[1]?.[0] ?? 0) - (pipe.points[0]?.[0] ?? 0)).toBeCloseTo(ft(14), 9);
    expect((pipe.points[3]?.[1] ?? 0) - (pipe.points[0]?.[1] ?? 0)).toBeCloseTo(inch(4), 9);
  });

  test('off, on and alarm stand at their levels, lettered with them', () => {
    for (const [code, level] of [['drawing.off', 96.5], ['drawing.on', 97.4], ['drawing.alarm', 97.75]] as const) {
      const text = only(texts(list, code));
      expect(text.at[1]).toBeCloseTo(ft(level), 9);
      expect(text.label.params['level']).toBeCloseTo(ft(level), 9);
    }
  });

  test('the sill line is level at the sill and the pond surface at the water', () => {
    expect(lines(list, 'S1').find(({ dash }) => dash === 'chain')?.points.map(([, y]) => y)).toEqual([ft(99.93), ft(99.93)]);
    const surface = only(lines(list, 'LS1'));
    expect(surface.points.every(([, y]) => y === wet.pond)).toBe(true);
    expect(only(texts(list, 'drawing.waterBelowSill')).label.params['height']).toBeCloseTo(ft(0.14), 9);
  });

  test('the shore of the pond is where the ground reaches the water', () => {
    const [left, right] = only(lines(list, 'LS1')).points;
    // Ground from (0.3, 99.85) to (6, 99.62) ft, then up to (11, 99.98) ft.
    expect(left?.[0]).toBeCloseTo(ft(0.3 + (5.7 * (99.85 - 99.79)) / 0.23), 6);
    expect(right?.[0]).toBeCloseTo(ft(6 + (5 * (99.79 - 99.62)) / 0.36), 6);
  });

  test('water over the sill stands in the room and is said as height over the sill', () => {
    const flooded = section(ternHollow, evaluation, { width: 1440, height: 460, water: { pond: ft(99.96), basin: null } });
    expect(only(texts(flooded, 'drawing.waterOverSill')).label.params['depth']).toBeCloseTo(ft(0.03), 9);
    const water = polygons(flooded, 'LS1').filter(({ hatch }) => hatch === 'water');
    expect(Math.min(...water.flatMap(({ points }) => points.map(([x]) => x)))).toBeCloseTo(flooded.extent.x0, 9);
  });

  test('a pond above the rim ends at the rim', () => {
    const over = section(ternHollow, evaluation, { width: 1440, height: 460, breaks: false, water: { pond: ft(100.05), basin: null } });
    expect(Math.max(...lines(over, 'LS1').flatMap(({ points }) => points.map(([x]) => x)))).toBeCloseTo(ft(11), 6);
  });

  test('the missing fall is drawn from the needed level up to the candidate outlet', () => {
    const short = lines(list, 'K1').find(({ role, weight }) => role === 'sill' && weight === 'bold');
    expect(short?.points.map(([, y]) => y)).toEqual([ft(98.45), ft(99.35)]);
    expect(only(texts(list, 'drawing.shortfall').filter(({ part }) => part === 'K1')).label.params['height']).toBeCloseTo(ft(0.9), 9);
  });

  test('the energy line of the pumped line is dotted and ends above the outlet water', () => {
    const energy = only(lines(list, 'D1').filter(({ dash }) => dash === 'dot'));
    expect(energy.points.at(-1)?.[1]).toBeCloseTo(ft(99.9) + (1.46 * 1.46) / (2 * 9.80665), 9);
  });
});

describe('breaks', () => {
  test('are the same with and without water, and on screens of nearly one size, and leave out whole feet', () => {
    const lengths = (width: number, water: { pond: number | null; basin: number | null }): number[] =>
      section(ternHollow, evaluation, { width, height: Math.min(460, Math.max(320, width * 0.36)), water }).breaks.map(({ from, to }) => (to - from) / 0.3048);
    for (const [a, b] of [[1376, 1090], [390, 340], [800, 700]] as const) {
      expect(lengths(a, wet)).toEqual(lengths(b, { pond: null, basin: null }));
      expect(lengths(a, wet).length).toBeGreaterThan(0);
      for (const length of lengths(a, wet)) expect(length).toBeCloseTo(Math.round(length), 6);
    }
  });

  test('leave out what they say, and no scale changes on either side', () => {
    const list = section(ternHollow, evaluation, { width: 1440, height: 460 });
    const cut = only(list.breaks);
    expect(only(texts(list, 'drawing.notDrawn')).label.params['length']).toBeCloseTo(cut.to - cut.from, 9);
    expect(cut.from).toBeGreaterThan(only(polygons(list, 'B1').filter(({ hatch }) => hatch === 'paper')).points[1]?.[0] ?? 0);
    const whole = section(ternHollow, evaluation, { width: 1440, height: 460, breaks: false });
    const pipe = (drawn: typeof list): number[] => only(polygons(drawn, 'P1').filter(({ outlined }) => outlined)).points.map(([x]) => x);
    pipe(list).forEach((x, index) => expect(x).toBeCloseTo(pipe(whole)[index] ?? 0, 9));
    const lid = (drawn: typeof list): number => only(texts(drawn, 'drawing.out.pump')).at[0];
    const street = (drawn: typeof list): number => only(texts(drawn, 'drawing.candidate').filter(({ part }) => part === 'K1')).at[0];
    expect(street(list) - lid(list)).toBeCloseTo(street(whole) - lid(whole), 9);
    expect(lid(whole) - lid(list)).toBeGreaterThan((cut.to - cut.from) * 0.9);
    expect(whole.breaks).toEqual([]);
    expect(marks(list, 'break')).toHaveLength(1);
  });
});

describe('readers', () => {
  test('the crew sees each state on the part, and held parts hatched', () => {
    const states = { C1: 'built', P1: 'next', B1: 'notYet', PU1: 'held' } as const;
    const list = section(ternHollow, evaluation, { states });
    for (const [part, state] of Object.entries(states)) {
      const items = list.items.filter((item) => item.part === part);
      expect(items.length).toBeGreaterThan(0);
      expect(items.every((item) => item.state === state)).toBe(true);
    }
    expect(polygons(list, 'C1').some(({ hatch }) => hatch === 'solid')).toBe(true);
    expect(polygons(list, 'PU1').some(({ hatch }) => hatch === 'held')).toBe(true);
    expect(polygons(list, 'P1').some(({ hatch }) => hatch === 'held')).toBe(false);
  });

  test('findings stand at their part by shape, stops first; one for the whole job is not drawn', () => {
    const list = section(ternHollow, evaluation);
    expect(marks(list, 'findingStop').map(({ part, index }) => [part, index])).toEqual([['B1', 0]]);
    expect(marks(list, 'findingCaution').map(({ part }) => part)).toEqual(['C1']);
    expect(marks(list, 'findingNote').map(({ part, index }) => [part, index])).toEqual([['PU1', 0], ['B1', 1]]);
    const noted = { ...evaluation, findings: [...evaluation.findings, ...evaluation.findings] };
    expect(marks(section(ternHollow, noted), 'findingNote')).toHaveLength(2);
    expect(marks(section(ternHollow, noted), 'findingStop').map(({ index }) => index)).toEqual([0, 1]);
  });

  test('photos are numbered ticks', () => {
    const list = section(ternHollow, null, { photos: [{ part: 'P1', number: 3 }, { part: 'P1', number: 4 }, { part: 'gone', number: 5 }] });
    expect(marks(list, 'photoTick').map(({ value, index }) => [value, index])).toEqual([['3', 0], ['4', 1]]);
  });

  test('every part of the system can be tapped', () => {
    const list = section(ternHollow, evaluation);
    const tapped = new Set(list.hits.map(({ part }) => part));
    expect(ternHollow.system.parts.map(({ id }) => id).filter((id) => !tapped.has(id))).toEqual([]);
  });

  test('handles stand at the level that they change', () => {
    const list = section(ternHollow, evaluation);
    const off = only(list.handles.filter(({ part, field }) => part === 'B1' && field === 'offLevel'));
    expect(off.level).toBeCloseTo(ft(96.5), 9);
    expect(off.at[1]).toBe(off.level);
  });

  test('a list row has the drawing without lettering', () => {
    const list = section(ternHollow, evaluation, { width: 240, height: 56, detail: 'mini', water: wet });
    expect(list.items.filter(({ kind }) => kind === 'text')).toEqual([]);
    expect(marks(list, 'findingStop')).toHaveLength(1);
    expect(outside(list)).toEqual([]);
  });

  test('a loop in the system still ends', () => {
    const parts = ternHollow.system.parts.map((part) => (part.id === 'P1' ? { ...part, drainsTo: 'C1' } : part));
    expect(section({ ...ternHollow, system: { parts } }, null).items.length).toBeGreaterThan(10);
  });
});
