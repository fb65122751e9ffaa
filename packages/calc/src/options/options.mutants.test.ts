import { describe, expect, it } from 'vitest';
import type { Part } from '../document/document.ts';
import { expectProblems } from '../testing/expectProblems.ts';
import { demoSite } from '../testing/sites.ts';
import { diversionChoice, pumpChoice, sizeChoice, type Choice, type CostIndex } from './choices.ts';
import { joined, leastCost, productOf } from './frame.ts';
import { Orders } from './orders.ts';
import { backupOf } from './point.ts';
import { Memo, ReadDocuments, Reads } from './reads.ts';
import { OptionSpace, type Digits } from './space.ts';

const site = demoSite('tern-hollow');
const plain = (id: string, kind: Choice['kind'], ...names: readonly string[]): Choice => ({ id, kind, alternatives: names.map((name) => ({ id: name, name })) });
const lines = sizeChoice('line', 'N1', [{ id: 'thin', name: 'thin', fields: { innerDiameter: 0.03 } }, { id: 'wide', name: 'wide', fields: { innerDiameter: 0.05 } }]);
const basins = sizeChoice('basin', 'B1', [{ id: 'small', name: 'small', fields: { diameter: 0.6 } }, { id: 'big', name: 'big', fields: { diameter: 0.9 } }]);
const roof = diversionChoice(site, 'G1')!;
const backup = plain('backup', 'backup', 'none', 'alarm');
const choices = [roof, basins, lines, backup];
const cost: CostIndex = { base: 10, alternatives: { G1: { no: 0, yes: 5 }, B1: { small: 3, big: 1 }, N1: { thin: 0, wide: 2 }, backup: { none: 0, alarm: 7 } } };
const space = new OptionSpace(site, choices, cost);
const partOf = (of: OptionSpace, digits: Digits, id: string): Part => of.documentOf(digits).system.parts.find((part) => part.id === id)!;

describe('the space of the choices, corner by corner', () => {
  it('orders combinations, the last choice fastest', () => {
    expect(space.count).toBe(16);
    expect([0, 1, 2, 4, 8, 15].map((index) => space.digitsOf(index))).toEqual([[0, 0, 0, 0], [0, 0, 0, 1], [0, 0, 1, 0], [0, 1, 0, 0], [1, 0, 0, 0], [1, 1, 1, 1]]);
    expect([[0, 0, 1, 1], [1, 0, 1, 0]].map((digits) => space.indexOf(digits))).toEqual([3, 10]);
    expect(space.roles).toEqual(['diversion', 'frame', 'rating', 'backup']);
    expect(backupOf(space, [1, 1, 1, 1])).toEqual([1]);
  });

  it('adds costs, and finds the dearest combination below one', () => {
    expect(space.cost([0, 0, 0, 0])).toBe(13);
    expect(space.cost([1, 1, 1, 1])).toBe(25);
    expect(space.costAt(1, 0)).toBe(3);
    // 11 is the cheapest of all; 13 is that of two combinations, of which [0, 0, 0, 0] comes first; 27 is the dearest.
    expect(space.dearestBelow(11)).toBeNull();
    expect(space.dearestBelow(11.5)).toEqual([0, 1, 0, 0]);
    expect(space.dearestBelow(14)).toEqual([0, 0, 0, 0]);
    expect(space.dearestBelow(13)).toEqual([0, 1, 0, 0]);
    expect(space.dearestBelow(1000)).toEqual([1, 0, 1, 1]);
    expect(leastCost(space, [0, 1, 1, 1])).toBe(18);
    expect(leastCost(space, [1, 0, 1, 0])).toBe(13);
  });

  it('sets, adds, removes and drains what an alternative says', () => {
    expect(partOf(space, [0, 1, 1, 0], 'B1')).toMatchObject({ diameter: 0.9 });
    expect(partOf(space, [0, 1, 1, 0], 'N1')).toMatchObject({ innerDiameter: 0.05 });
    const others = (of: readonly Part[]): readonly Part[] => of.filter(({ id }) => id !== 'B1' && id !== 'N1');
    expect(others(space.documentOf([0, 1, 1, 0]).system.parts)).toEqual(others(site.system.parts));
    const roofs = (digit: number): string[] => space.documentOf([digit, 0, 0, 0]).site.catchments.filter(({ drainsTo }) => drainsTo.kind === 'part' && drainsTo.id === 'G1').map(({ id }) => id);
    expect([roofs(0), roofs(1)]).toEqual([[], ['C2']]);
    const weep = site.system.parts.find(({ kind }) => kind === 'weepHole')!;
    const swap: Choice = { id: 'weep', kind: 'line', alternatives: [{ id: 'as is', name: '' }, { id: 'other', name: '', remove: [weep.id], add: [{ ...weep, id: 'W9' }] }] };
    const other = new OptionSpace(site, [swap], { base: 0, alternatives: { weep: { 'as is': 0, other: 0 } } });
    const ids = (digit: number): string[] => other.documentOf([digit]).system.parts.filter(({ kind }) => kind === 'weepHole').map(({ id }) => id);
    expect([ids(0), ids(1)]).toEqual([['W1'], ['W9']]);
    expect([...other.touched()].sort()).toEqual(['W1', 'W9']);
    expect(other.touches.lists).toEqual([0]);
    expect(other.roles).toEqual(['frame']);
    expect([...space.touched()].sort()).toEqual(['B1', 'N1']);
  });

  it('refuses what it cannot count or price', () => {
    const many = Array.from({ length: 23 }, (_, i) => plain(`c${i}`, 'pipe', 'a', 'b'));
    expectProblems([
      [() => new OptionSpace(site, [plain('x', 'pipe')], { base: 0, alternatives: {} }), 'options.count at choices'],
      [() => new OptionSpace(site, many, { base: 0, alternatives: Object.fromEntries(many.map(({ id }) => [id, { a: 0, b: 0 }])) }), 'options.count at choices'],
      [() => new OptionSpace(site, [lines], { base: 0, alternatives: { N1: { thin: 0 } } }), 'options.noCost at N1/wide'],
      [() => new OptionSpace(site, [lines], { base: 0, alternatives: { N1: { thin: Infinity, wide: 0 } } }), 'options.noCost at N1/thin'],
    ]);
  });

  it('goes over every alternative of a choice with three', () => {
    const three = sizeChoice('line', 'N1', ['a', 'b', 'c'].map((id, i) => ({ id, name: id, fields: { innerDiameter: 0.03 + i / 100 } })));
    const priced = (a: number, b: number, c: number): OptionSpace => new OptionSpace(site, [three, backup], { base: 0, alternatives: { N1: { a, b, c }, backup: { none: 0, alarm: 0.5 } } });
    expect([[3, 2, 1], [3, 1, 2], [1, 2, 3], [2, 1, 1]].map(([a, b, c]) => leastCost(priced(a!, b!, c!), [0, 0]))).toEqual([1, 1, 1, 1]);
    expect([4, 3.4, 3, 2.2].map((below) => priced(1, 2, 3).dearestBelow(below))).toEqual([[2, 1], [2, 0], [1, 1], [1, 0]]);
    expect([...productOf(priced(1, 2, 3), ['rating'])]).toEqual([[0, 0], [1, 0], [2, 0]]);
  });

  it('takes a choice for a rating or a diversion only when all of it is', () => {
    const roleOf = (alternatives: Choice['alternatives'], more: readonly Choice[] = []): string => {
      const all = [{ id: 'x', kind: 'line', alternatives } as Choice, ...more];
      return new OptionSpace(site, all, { base: 0, alternatives: Object.fromEntries(all.map(({ id, alternatives: own }) => [id, Object.fromEntries(own.map((item) => [item.id, 0]))])) }).roles[0]!;
    };
    const wide = { id: 'wide', name: '', set: [{ part: 'N1', fields: { innerDiameter: 0.05 } }] };
    const basin = { part: 'B1', fields: { diameter: 0.9 } };
    const add = [{ ...partOf(space, [0, 0, 0, 0], 'W1'), id: 'W9' }];
    const drains = roof.alternatives[1]!.drains!;
    expect(roleOf([wide, { ...wide, id: 'b', set: [...wide.set, basin] }])).toBe('frame');
    expect(roleOf([wide, { ...wide, id: 'b', add, remove: ['W1'] }])).toBe('frame');
    expect(roleOf([wide, { ...wide, id: 'b', drains, add }])).toBe('frame');
    expect(roleOf([wide, { id: 'b', name: '', set: [{ part: 'N1', fields: { innerDiameter: 0.05, lowestSag: null } }] }])).toBe('frame');
    const [no, yes] = roof.alternatives;
    expect(roleOf([no!, yes!])).toBe('diversion');
    expect(roleOf([no!, { id: 'b', name: '' }])).toBe('frame');
    expect(roleOf([no!, { ...yes!, set: wide.set }])).toBe('frame');
    expect(roleOf([no!, { ...yes!, add, remove: ['W1'] }])).toBe('frame');
    expect(roleOf([no!, yes!, { ...yes!, id: 'c' }])).toBe('frame');
    // Two choices that say where the same roof drains.
    expect(roleOf([no!, yes!], [{ ...roof, id: 'again' }])).toBe('frame');
    expect(roleOf([no!, yes!], [diversionChoice(site, 'G2')!])).toBe('diversion');
  });

  it('knows a rating from a frame by its fields', () => {
    const roleOf = (choice: Choice): string => new OptionSpace(site, [choice], { base: 0, alternatives: { [choice.id]: Object.fromEntries(choice.alternatives.map(({ id }) => [id, 0])) } }).roles[0]!;
    const set = (part: string, fields: Readonly<Record<string, unknown>>): Choice => sizeChoice('line', part, [{ id: 'a', name: 'a', fields }]);
    expect([set('O1', { waterLevel: 30 }), set('O1', { dryWell: null }), set('M1', { inputPower: 1 }), set('V1', { equivalentLength: 1 }), set('V1', { present: false }), set('gone', { level: 1 }), plain('x', 'line', 'a')]
      .map(roleOf)).toEqual(['rating', 'frame', 'frame', 'rating', 'frame', 'frame', 'frame']);
    expect(roleOf(pumpChoice('M1', [{ name: 'A', solids: 0.01, curve: [{ flow: 0, head: 5 }, { flow: 0.002, head: 0 }] }]))).toBe('rating');
    expect(diversionChoice(site, 'CH1')).toBeNull();
    expect(diversionChoice(site, 'nothing')).toBeNull();
  });
});

describe('products of digits', () => {
  it('go through the choices of some roles and leave the others', () => {
    expect([...productOf(space, ['frame', 'backup'], [1, 1, 1, 1])]).toEqual([[1, 0, 1, 0], [1, 0, 1, 1], [1, 1, 1, 0], [1, 1, 1, 1]]);
    expect([...productOf(space, ['none'])]).toEqual([[0, 0, 0, 0]]);
    expect(joined(space, [0, 0, 0, 0], [1, 1, 1, 1], 'rating')).toEqual([0, 0, 1, 0]);
  });
});

describe('what a computation reads', () => {
  it('is computed once for the choices that it asks for, which may depend on each other', () => {
    const reads = new Reads();
    const asked: string[] = [];
    // Reads choice 1; where that is 0, choice 2 as well.
    const memo = new Memo(reads, (digits) => {
      asked.push(digits.join(''));
      reads.note(1);
      if (digits[1] === 0) reads.note(2);
      return digits[1] === 0 ? `0${digits[2]}` : '1';
    });
    const all = [...productOf(space, ['diversion', 'frame', 'rating', 'backup'])];
    expect(all.map((digits) => memo.get(digits))).toEqual(all.map(([, one, two]) => (one === 0 ? `0${two}` : '1')));
    expect(asked).toEqual(['0000', '0010', '0100']);
    expect(memo.size).toBe(3);
    const fresh = new Memo(reads, (digits) => { reads.note(0); return digits[0]!; });
    expect(fresh.among([1, 0, 0, 0], [false, true, true, true])).toMatchObject({ value: 1 });
    expect(memo.among([0, 1, 0, 0], [false, false, true, false])).toMatchObject({ value: '1' });
    expect(memo.among([0, 0, 0, 0], [false, false, true, false])).toEqual({ open: 2 });
    expect(memo.among([0, 0, 1, 0], [true, false, false, true])).toMatchObject({ value: '01' });
  });

  it('is read by what stands around it too, whether it was known or not', () => {
    const reads = new Reads();
    const inner = new Memo(reads, (digits) => { reads.note(3); return digits[3]!; });
    const outer = new Memo(reads, (digits) => { reads.note(0); return 10 * digits[0]! + inner.get(digits); });
    expect([[0, 0, 0, 1], [1, 0, 0, 1], [1, 0, 0, 0], [1, 1, 1, 1]].map((digits) => outer.get(digits))).toEqual([1, 11, 10, 11]);
    expect([outer.size, inner.size]).toEqual([3, 2]);
    const alone = reads.during(() => { reads.note(2); reads.note(1); reads.note(2); return 'x'; });
    expect(alone).toEqual({ value: 'x', read: [2, 1] });
    // What is read after a computation is none of its own; one that fails leaves nothing behind.
    reads.note(0);
    expect(alone.read).toEqual([2, 1]);
    expect(() => reads.during(() => { throw new Error('no'); })).toThrow('no');
    expect(reads.during(() => 1).read).toEqual([]);
  });

  it('is told by the document: a field, where a catchment drains to, and the list of parts', () => {
    const reads = new Reads();
    const documents = new ReadDocuments(space, reads);
    const digits = [1, 1, 0, 0];
    const document = documents.of(digits);
    expect(documents.of(digits)).toBe(document);
    expect(JSON.stringify(document)).toBe(JSON.stringify(space.documentOf(digits)));
    const readOf = (look: () => unknown): readonly number[] => reads.during(look).read;
    const part = (id: string): Part => document.system.parts.find((item) => item.id === id)!;
    expect(readOf(() => part('N1').name)).toEqual([]);
    expect(readOf(() => ({ ...part('N1') }))).toEqual([2]);
    expect(readOf(() => (part('B1') as Extract<Part, { kind: 'basin' }>).diameter)).toEqual([1]);
    expect(readOf(() => document.site.catchments.map(({ drainsTo }) => drainsTo.kind))).toEqual([0]);
    expect(readOf(() => document.rain)).toEqual([]);
  });
});

describe('what may be bounded together', () => {
  const groupIn = (change: (part: Part) => Part, digits: Digits): string => {
    const changed = { ...site, system: { ...site.system, parts: site.system.parts.map(change) } };
    return new Orders(new OptionSpace(changed, choices, cost), new Reads()).groupOf(digits);
  };
  it('is everything where pumps and roofs keep order, else what agrees', () => {
    expect(groupIn((part) => part, [1, 1, 1, 0])).toBe('   ');
    const open = (part: Part): Part => (part.kind === 'checkValve' ? { ...part, present: false } : part);
    expect([0, 1].map((line) => groupIn(open, [1, 1, line, 0]))).toEqual(['  0 ', '  1 ']);
    const returning = (share: number) => (part: Part): Part => (part.id === 'O1' && part.kind === 'outlet' ? { ...part, returns: { lowSpot: 'L1', share } } : part);
    expect(groupIn(returning(0.1), [0, 0, 1, 0])).toBe('  1 ');
    expect(groupIn(returning(0), [0, 0, 1, 0])).toBe('   ');
    // The outlet of the line takes the roof line too: its level is no longer a matter of the pump alone, once it is chosen.
    const shared = (part: Part): Part => (part.id === 'R1' ? { ...part, drainsTo: 'O1' } as Part : part);
    expect(groupIn(shared, [1, 0, 1, 0])).toBe('   ');
    const level = sizeChoice('outlet', 'O1', [30, 31].map((value) => ({ id: `${value}`, name: '', fields: { waterLevel: value } })));
    const chosen = new OptionSpace({ ...site, system: { ...site.system, parts: site.system.parts.map(shared) } }, [level, backup], { base: 0, alternatives: { O1: { 30: 0, 31: 0 }, backup: { none: 0, alarm: 0 } } });
    expect(new Orders(chosen, new Reads()).groupOf([1, 0])).toBe('1 ');
    const alone = new OptionSpace(site, [level, backup], { base: 0, alternatives: { O1: { 30: 0, 31: 0 }, backup: { none: 0, alarm: 0 } } });
    expect(new Orders(alone, new Reads()).groupOf([1, 0])).toBe(' ');
    // The roof line of the diverted roof now ends in the basin: it leaves the low spot, not the site.
    const inside = (part: Part): Part => (part.id === 'R1' ? { ...part, drainsTo: 'B1' } as Part : part);
    expect([0, 1].map((digit) => groupIn(inside, [digit, 0, 0, 0]))).toEqual(['0   ', '1   ']);
  });
});
