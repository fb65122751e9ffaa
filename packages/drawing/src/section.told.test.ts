import { describe, expect, test } from 'vitest';
import type { DesignDocument, Part } from '@yardfall/calc';
import { section } from './section.ts';
import { gravityOnly, ternHollow } from './testing/tern-hollow.ts';
import { evaluation } from './testing/evaluation.ts';
import { lines, marks, only, texts } from './testing/read.ts';
import { ft, inch } from './testing/units.ts';

describe('the energy line', () => {
  test('that rises above the sheet ends with a mark below its edge, where it is lettered with its level at the pump', () => {
    for (const width of [1440, 1376, 800]) {
      const list = section(ternHollow, evaluation, { width, height: 460 });
      const mark = only(marks(list, 'continues'));
      const energy = only(lines(list, 'D1').filter(({ dash }) => dash === 'dot'));
      expect(energy.points[0]).toEqual(mark.at);
      expect(mark.at[1]).toBeLessThan(list.extent.y1);
      const text = only(texts(list, 'drawing.energyLine'));
      expect(text.at).toEqual(mark.at);
      expect(text.label.params['level']).toBeCloseTo(ft(96.5 + 11.3), 9);
      expect((list.key ?? []).map(({ label: { code } }) => code)).toContain('drawing.key.energy');
    }
  });
});

describe('a swale', () => {
  const swale: DesignDocument = {
    ...ternHollow,
    site: { ...ternHollow.site, candidateOutlets: [], spotLevels: [[0.3, 99.85], [6, 99.62], [10, 99.4], [30, 98.7], [40, 98.8], [56, 98.48]].map(([station = 0, level = 0], index) => (
      { id: `x${index}`, name: 'Lawn', level: ft(level), station: ft(station), position: null })) },
    system: { parts: [
      { id: 'W1', kind: 'swale', name: 'Swale', drainsTo: 'O1', length: ft(46), slope: 0.02, sideSlope: 20, depth: inch(6), roughness: 0.06 },
      ...ternHollow.system.parts.flatMap((part) => (part.kind === 'outlet' && part.id === 'O1' ? [{ ...part, outletKind: 'daylight' as const, level: ft(98.48), groundLevel: ft(98.48), waterLevel: ft(98.5), pit: null }] : [])),
    ] },
  };
  const list = section(swale, null, { width: 1440, height: 460, breaks: false });
  const bed = only(lines(list, 'W1')).points;

  test('begins where the ground has come down to its upper level and never runs through the air', () => {
    expect(bed[0]).toEqual([ft(10), ft(99.4)]);
    expect(bed.at(-1)?.[1]).toBeCloseTo(ft(98.48), 9);
    // At 30 ft the even fall would be at 99.00 ft, over a hollow at 98.70 ft; at 40 ft it cuts the ground to 98.80 ft.
    const at = (feet: number): number | undefined => bed.find(([x]) => Math.abs(x - ft(feet)) < 1e-9)?.[1];
    expect(at(30)).toBeCloseTo(ft(98.7), 9);
    expect(at(40)).toBeCloseTo(ft(98.8), 9);
  });

  test('is lettered with the fall between its drawn ends: the fall is that between its drawn ends', () => {
    const { slope, length } = only(texts(list, 'drawing.swale')).label.params;
    expect(((bed[0]?.[1] ?? 0) - (bed.at(-1)?.[1] ?? 0)) / Number(length)).toBeCloseTo(Number(slope), 9);
  });
});

describe('parts that are told apart', () => {
  const lids = (document: DesignDocument): string[] => section(document, null).items.flatMap((item) => (item.kind === 'text' && /^drawing\.out(let)?\./.test(item.label.code) ? [item.label.code] : []));

  test('two outlets are named by what they let out, one by what it is', () => {
    expect(lids(ternHollow).sort()).toEqual(['drawing.out.pump', 'drawing.out.roof']);
    expect(lids(gravityOnly)).toEqual(['drawing.outlet.ditch']);
  });

  test('roof lines of one shape beside the section are drawn and named once, and each can be tapped', () => {
    const names = ['north', 'east', 'south'];
    const roof = names.flatMap((name) => ternHollow.system.parts.flatMap((part): Part[] => {
      if (part.id === 'L1') return [{ ...part, id: `L${name}`, drainsTo: `P${name}` }];
      if (part.id === 'P1') return [{ ...part, id: `P${name}`, name: `Pipe ${name}`, drainsTo: `O${name}` }];
      return part.id === 'O2' && part.kind === 'outlet' ? [{ ...part, id: `O${name}`, name: `Lid ${name}` }] : [];
    }));
    const list = section({ ...gravityOnly, system: { parts: [...gravityOnly.system.parts, ...roof] } }, null);
    const told = texts(list, 'drawing.besideAlike');
    expect(told.map(({ part, label: { params } }) => [part, params['count']])).toEqual([['Pnorth', 2], ['Onorth', 2]]);
    expect(texts(list, 'drawing.beside')).toEqual([]);
    const ends = names.map((name) => lines(list, `P${name}`)[0]?.points);
    expect(ends[1]).toEqual(ends[0]);
    for (const name of names) expect(list.hits.some(({ part }) => part === `O${name}`)).toBe(true);
    // The lid lies at its level; its riser comes from the pipe that feeds it.
    const riser = only(lines(list, 'Onorth').filter(({ dash }) => dash === 'dash')).points.map(([, y]) => y);
    expect([Math.max(...riser), Math.min(...riser)].map((y) => y / 0.3048)).toEqual([expect.closeTo(99.8, 6), expect.closeTo(99, 6)]);
  });
});

describe('the key', () => {
  const codes = (list: ReturnType<typeof section>): string[] => (list.key ?? []).map(({ label: { code } }) => code);

  test('explains every kind of mark, dotted line and state that is used, and no other', () => {
    const list = section(ternHollow, evaluation, { states: { C1: 'built', P1: 'next', B1: 'notYet', PU1: 'held' }, photos: [{ part: 'P1', number: 3 }] });
    expect(codes(list).sort()).toEqual(['built', 'energy', 'findingCaution', 'findingNote', 'findingStop', 'gravity', 'held', 'level', 'next', 'notYet', 'photo'].map((name) => `drawing.key.${name}`));
    expect(codes(section(gravityOnly, null, { gravity: false }))).toEqual(['drawing.key.level']);
    expect(codes(section(ternHollow, evaluation, { width: 240, height: 56, detail: 'mini' }))).toEqual([]);
  });

  test('a check that was passed leaves no mark', () => {
    const passed = { ...evaluation, findings: evaluation.findings.map((finding) => ({ ...finding, severity: 'note' as const, code: 'P1.ok' })) };
    expect(marks(section(ternHollow, passed), 'findingNote')).toEqual([]);
  });
});

describe('a buried line that crosses', () => {
  const line = { id: 'U9', kind: 'gas', name: 'Gas', station: ft(30), level: ft(98), tolerance: ft(2) } as const;
  const withLine = (tolerance: number): DesignDocument => ({ ...gravityOnly, site: { ...gravityOnly.site, utilities: [{ ...line, tolerance }] } });
  const strips = (document: DesignDocument) => section(document, null, { breaks: false, width: 1376, height: 460 }).items.flatMap((item) => (item.kind === 'polygon' && item.part === 'U9' && item.hatch === 'range' ? [item] : []));

  test('has its hand-dig strip on each side, from the surface down to it, and the key says what it means', () => {
    const { points } = only(strips(withLine(ft(2))));
    const across = points.map(([x]) => x);
    expect(Math.max(...across) - Math.min(...across)).toBeCloseTo(ft(4), 9);
    expect(Math.min(...points.map(([, y]) => y))).toBeLessThan(ft(98));
    const list = section(withLine(ft(2)), null, { breaks: false, width: 1376, height: 460 });
    expect((list.key ?? []).map(({ label: { code } }) => code)).toContain('drawing.key.handDig');
  });
  test('without a strip is only a mark', () => expect(strips(withLine(0))).toEqual([]));
});
