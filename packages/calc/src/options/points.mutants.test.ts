import { describe, expect, it } from 'vitest';
import { dominates, frontOf, isNoWorse, nextStep, steps, weighed, type Candidate } from './point.ts';
import { Queue } from './queue.ts';

describe('points', () => {
  const one: Candidate = { index: 3, cost: 10, lower: 0.0305, held: 2, backup: [1] };
  it('weigh freeboards in whole millimetres', () => {
    expect([0.0305, 0.0309999, 0.031, -0.0001].map(steps)).toEqual([30, 30, 31, -1]);
    expect(nextStep(0.0305)).toBeCloseTo(0.031, 12);
    expect(weighed).toBe(0.001);
  });
  it('are no worse than a set that costs as much and has no better backup', () => {
    const set = { index: 0, cost: 10, backup: [1] };
    expect([set, { ...set, cost: 9.99 }, { ...set, backup: [2] }, { ...set, backup: [0], cost: 11 }].map((best) => isNoWorse(one, best))).toEqual([true, false, false, true]);
  });
  it('weigh each backup by itself, and all reasons one by one', () => {
    const two = { ...one, backup: [1, 0] };
    expect(isNoWorse(two, { index: 0, cost: 10, backup: [0, 1] })).toBe(false);
    const later = { ...two, index: 2 };
    expect(dominates({ ...two, backup: [1, 1] }, later)).toBe(true);
    expect(dominates({ ...two, lower: 0.0315 }, later)).toBe(true);
    expect(dominates({ ...two, cost: 9 }, later)).toBe(true);
    expect(dominates({ ...two, held: 3 }, later)).toBe(true);
    expect(dominates(two, later)).toBe(false);
  });
  it('leave out what another makes pointless, and stand cheapest first', () => {
    const cheap = { ...one, index: 9, cost: 4, lower: 0.01 };
    const twin = { ...one, index: 5 };
    const lesser = { ...one, index: 1, backup: [0] };
    const first = { ...cheap, index: 8, lower: 0.0105, held: 1 };
    expect(frontOf([one, twin, lesser, cheap, first])).toEqual([cheap, one]);
    expect(dominates(one, lesser)).toBe(true);
    expect(dominates(lesser, one)).toBe(false);
    expect(dominates(one, one)).toBe(false);
    expect(frontOf([{ ...one, index: 7, lower: 0.02, held: 3 }, one]).map(({ index }) => index)).toEqual([3, 7]);
  });
  it('come out of a queue in order, those put in meanwhile too', () => {
    const queue = new Queue<number>((a, b) => a - b);
    expect(queue.pop()).toBeUndefined();
    const out: (number | undefined)[] = [];
    [7, 3, 9, 1, 8, 2, 6, 4, 5].forEach((value, i) => {
      queue.push(value);
      if (i % 3 === 2) out.push(queue.pop());
    });
    while (queue.items.length > 0) out.push(queue.pop());
    expect(out).toEqual([3, 1, 2, 4, 5, 6, 7, 8, 9]);
    for (const seed of [3, 7, 11, 17]) {
      const many = Array.from({ length: 60 }, (_, i) => (i * seed * 31) % 61);
      for (const value of many) queue.push(value);
      expect(many.map(() => queue.pop())).toEqual([...many].sort((a, b) => a - b));
    }
  });
});
