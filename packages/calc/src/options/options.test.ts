import { describe, expect, test, vi } from 'vitest';
import { FOOT, GALLON_PER_MINUTE, INCH } from '../common/constants.ts';
import { bruteForce } from '../testing/bruteForce.ts';
import { demoSite } from '../testing/sites.ts';
import { diversionChoice, pumpChoice, sizeChoice, type Choice, type CostIndex } from './choices.ts';
import { mergeOptions, optionsFront } from './front.ts';
import { dominates, type Candidate } from './point.ts';
import { Queue } from './queue.ts';
import { optionsSlice } from './search.ts';
import { OptionSpace } from './space.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 240_000 });

const site = demoSite('tern-hollow');
const curve = (...points: readonly (readonly [gpm: number, feet: number])[]) => points.map(([gpm, feet]) => ({ flow: gpm * GALLON_PER_MINUTE, head: feet * FOOT }));
// Pump curves A and B of the trade's worked example (invented).
const pumps = [
  { name: 'A', solids: 0.0127, curve: curve([0, 18], [19, 15], [34, 10], [43, 5], [50, 0.5]) },
  { name: 'B', solids: 0.0127, curve: curve([0, 24], [20, 20], [38, 15], [51, 10], [61, 5], [69, 0.5]) },
];
const lines = [['small', 1.38], ['middle', 1.61], ['large', 2.07]].map(([id, inches]) => ({ id: id as string, name: id as string, fields: { innerDiameter: (inches as number) * INCH } }));
const choices: readonly Choice[] = [
  diversionChoice(site, 'G1')!,
  sizeChoice('basin', 'B1', [24, 30].map((size) => ({ id: `${size}`, name: `${size} in`, fields: { diameter: size * INCH } }))),
  pumpChoice('M1', pumps),
  sizeChoice('line', 'N1', lines),
];
const cost: CostIndex = {
  base: 100,
  alternatives: { G1: { no: 0, yes: 9 }, B1: { 24: 0, 30: 6 }, M1: { A: 0, B: 5 }, N1: { small: 0, middle: 2, large: 4 } },
};

describe('options front', () => {
  const space = new OptionSpace(site, choices, cost);

  test('tells what each choice does to the water', () => {
    expect(space.roles).toEqual(['diversion', 'frame', 'rating', 'rating']);
    expect(space.count).toBe(24);
    expect(Array.from({ length: space.count }, (_, i) => space.indexOf(space.digitsOf(i)))).toEqual(Array.from({ length: space.count }, (_, i) => i));
  });

  test('is the front of all combinations measured one by one, in one slice and in two', () => {
    const brute = bruteForce(site, choices, cost);
    expect(brute.length).toBeGreaterThan(1);
    const slices = [0, 1].map((index) => optionsSlice(site, choices, cost, { slice: { index, of: 2 } }));
    expect(slices.reduce((sum, { count }) => sum + count, 0)).toBe(24);
    const whole = optionsSlice(site, choices, cost);
    const merged = mergeOptions(site, choices, cost, slices);
    expect(merged.points).toEqual(brute);
    expect(merged).toEqual(mergeOptions(site, choices, cost, [whole]));
    expect(merged).toMatchObject({ complete: true, combinations: 24 });
    // Some are told without being measured, and those that are stopped are not even looked at.
    expect(whole.measured).toBeLessThan(whole.allowed);
    expect(whole.allowed).toBeLessThan(24);
  });

  test('counts a backup by its order, and ends when it is told to', () => {
    const backup: Choice = { id: 'backup', kind: 'backup', alternatives: [{ id: 'none', name: 'none' }, { id: 'alarm', name: 'alarm' }] };
    const small = [choices[3]!, backup];
    const index: CostIndex = { base: 0, alternatives: { N1: cost.alternatives['N1']!, backup: { none: 0, alarm: 1 } } };
    const { points } = optionsFront(site, small, index);
    expect(points.filter(({ picks }) => picks['backup'] === 'alarm').length).toBe(points.filter(({ picks }) => picks['backup'] === 'none').length);
    let asked = 0;
    const stopped = optionsSlice(site, small, index, { shouldStop: () => { asked += 1; return asked > 1; } });
    expect(stopped.complete).toBe(false);
    expect(stopped.candidates.length).toBeLessThanOrEqual(1);
  });

  test('refuses a choice without a cost', () => {
    expect(() => new OptionSpace(site, choices, { base: 0, alternatives: {} })).toThrow('options.noCost');
  });
});

test('dominance asks for all of cost, freeboard in millimetres, storms and backup', () => {
  const one: Candidate = { index: 3, cost: 10, lower: 0.0305, held: 2, backup: [0] };
  expect(dominates(one, { ...one, index: 4 })).toBe(true);
  expect(dominates({ ...one, index: 4 }, one)).toBe(false);
  expect(dominates(one, { ...one, index: 4, lower: 0.0309 })).toBe(true);
  expect(dominates(one, { ...one, index: 4, lower: 0.0311 })).toBe(false);
  expect(dominates(one, { ...one, cost: 9 })).toBe(false);
  expect(dominates(one, { ...one, held: 3 })).toBe(false);
  expect(dominates({ ...one, cost: 9 }, { ...one, backup: [1] })).toBe(false);
});

test('the queue gives the least first', () => {
  const queue = new Queue<number>((a, b) => a - b);
  for (const value of [5, 1, 4, 1, 3, 9, 2]) queue.push(value);
  expect(Array.from({ length: 8 }, () => queue.pop())).toEqual([1, 1, 2, 3, 4, 5, 9, undefined]);
});
