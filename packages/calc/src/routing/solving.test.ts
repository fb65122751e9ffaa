import { describe, expect, it } from 'vitest';
import { levelPool } from './levelPool.ts';
import { Look } from './look.ts';
import { levelTolerance, risingRoot } from './root.ts';
import { solveDominant } from './solver.ts';

describe('equations whose columns are ruled by their diagonals', () => {
  function solved(matrix: readonly number[], right: readonly number[]): number[] {
    const x = Float64Array.from(right);
    solveDominant(right.length, Float64Array.from(matrix), x);
    return Array.from(x);
  }
  const times = (matrix: readonly number[], x: readonly number[]): number[] => x.map((_, i) => x.reduce((sum, value, j) => sum + matrix[i * x.length + j]! * value, 0));

  it.each([
    [[4], [3]],
    [[5, -1, -2, 7], [2, -3]],
    [[9, -1, -2, -3, 8, -1, -2, -4, 11], [1, 2, 3]],
    [[9, 0, -2, -3, 8, 0, 0, -4, 11], [-1, 2, -3]],
    [[5, -1, -2, 5, 8, -1, 0, -4, 11], [1, 2, 3]],
    [[9, -1, 0, -2, -3, 8, -1, 0, -1, -2, 7, -3, -2, -1, -3, 12], [1, -2, 3, 4]],
  ])('give back what was put in, case %#', (matrix, x) => {
    solved(matrix, times(matrix, x)).forEach((value, i) => { expect(value).toBeCloseTo(x[i]!, 12); });
  });
});

describe('the root of a rising balance', () => {
  /** Root and number of looks at the balance. */
  function found(balance: (level: number) => number, low: number, guess: number): readonly [root: number, looks: number] {
    let looks = 0;
    const counted = (level: number): number => {
      looks += 1;
      return balance(level);
    };
    return [risingRoot(counted, low, balance(low), guess), looks];
  }

  it.each([
    ['a straight line', (x: number) => 3 * (x - 1.7), 0, 1.7], ['a square', (x: number) => x * x - 2, 0, Math.SQRT2], ['a root', (x: number) => Math.sqrt(x) - 1.5, 0, 2.25],
    ['a step', (x: number) => (x < 0.613 ? -1 : 1), 0, 0.613], ['a bend', (x: number) => Math.min(x - 0.5, 100 * (x - 0.5)), 0, 0.5], ['a steep cube', (x: number) => (x - 0.3) ** 3, 0, 0.3],
    ['a root beside the low end', (x: number) => x - 5.0001, 5, 5.0001],
  ] as const)('of %s is found from below, from beside it and from far above', (name, balance, low, root) => {
    const near = name === 'a steep cube' ? 1e-3 : 2 * levelTolerance;
    [low, low + 1e-9, root - 0.004, root, root + 0.004, root + 3].forEach((guess) => {
      const [level, looks] = found(balance, low, guess);
      expect(Math.abs(level - root)).toBeLessThanOrEqual(near);
      // Every fourth look halves what is left of 2 m.
      expect(looks).toBeLessThanOrEqual(4 * 25);
    });
  });
  // Halving alone takes 25 looks from 3 m down to a ten-thousandth of a millimeter, and 17 from a centimeter.
  it.each([
    ['a square', (x: number) => x * x - 2, Math.SQRT2], ['a root', (x: number) => Math.sqrt(x) - 1.5, 2.25], ['a ninth power', (x: number) => x ** 9 - 512, 2],
    ['a fifth root', (x: number) => x ** 0.2 - 1.5 ** 0.2, 1.5], ['an exponential', (x: number) => Math.exp(8 * x) - Math.exp(8), 1],
    ['a store with a rim', (x: number) => 100 * x + 300 * Math.max(0, x - 0.1) ** 1.5 - 13, 0.1177],
  ] as const)('of %s costs less than halving, and few looks beside the last answer', (_, balance, root) => {
    [root - 0.27, root + 0.3, root + 3].forEach((guess) => { expect(found(balance, 0, guess)[1]).toBeLessThanOrEqual(22); });
    [root - 0.004, root - 0.001, root + 0.001, root + 0.004].forEach((guess) => { expect(found(balance, 0, guess)[1]).toBeLessThanOrEqual(9); });
  });
  it('of a straight line is met at once', () => {
    [1.69, 1.705, 2, 5].forEach((guess) => { expect(found((x) => 3 * (x - 1.7), 0, guess)[1]).toBeLessThanOrEqual(4); });
  });
});

describe('what is found at one moment', () => {
  it('can be copied whole, and does not follow afterwards', () => {
    const [one, other] = [new Look(2, 3), new Look(2, 3)];
    const lists = (look: Look): Float64Array[] => [look.flows, look.byFrom, look.byTo, look.out, look.answers, look.volumes, look.areas];
    expect(lists(one).map(({ length }) => length)).toEqual([3, 3, 3, 2, 4, 2, 2]);
    lists(one).forEach((list, k) => list.forEach((_, i) => { list[i] = 10 * k + i + 1; }));
    other.copy(one);
    lists(one).forEach((list) => list.fill(-1));
    lists(other).forEach((list, k) => list.forEach((value, i) => { expect(value).toBe(10 * k + i + 1); }));
  });
});

describe('level pool', () => {
  // O = S/100 up to 100 m3, steeper above; one step by hand: 2S/dt + O = I1 + I2 + 2S/dt - O.
  const pairs = [{ storage: 0, outflow: 0 }, { storage: 100, outflow: 1 }, { storage: 200, outflow: 4 }];

  it('takes a step as by hand', () => {
    // dt 50: indication 0, 5, 12. From O 0.5 and S 50: right = 2 + 4 + 2 - 0.5 = 7.5, 2.5 of 7 along the second line: O 1 + 3*2.5/7, S (7.5 - O)*25.
    const { outflow, storage } = levelPool(pairs, [2, 4], 50, 0.5);
    const second = 1 + (3 * 2.5) / 7;
    expect(outflow).toEqual([0.5, expect.closeTo(second, 12)]);
    expect(storage).toEqual([50, expect.closeTo((7.5 - second) * 25, 10)]);
  });
  it('goes on with the last line beyond the table, and gives nothing below it', () => {
    // right = 40 + 0 - 0 = 40: 28 beyond 12, O 4 + 3*28/7.
    expect(levelPool(pairs, [20, 20], 50, 0).outflow[1]).toBeCloseTo(16, 12);
    const some = [{ storage: 10, outflow: 0.1 }, { storage: 20, outflow: 0.5 }];
    expect(levelPool(some, [0, 0], 50, 0.1).outflow[1]).toBeGreaterThanOrEqual(0);
    expect(levelPool(some, [0, 0, 0, 0, 0, 0], 50, 0).outflow[5]).toBe(0);
  });
  it('may have outflows that stay as they are, but not storages, nor outflows that fall', () => {
    const flat = [{ storage: 0, outflow: 1 }, { storage: 5, outflow: 1 }, { storage: 6, outflow: 2 }];
    expect(levelPool(flat, [1, 1], 10, 1).outflow).toHaveLength(2);
    expect(() => levelPool([{ storage: 0, outflow: 1 }, { storage: 5, outflow: 0.9 }], [1], 1, 0)).toThrow('levelPool.notRising');
    expect(() => levelPool([{ storage: 4, outflow: 1 }, { storage: 4, outflow: 1.1 }], [1], 1, 0)).toThrow('levelPool.notRising');
    expect(() => levelPool([{ storage: -1, outflow: 0 }, { storage: 4, outflow: 1 }], [1], 1, 0)).toThrow();
    expect(() => levelPool(pairs, [1], 0, 0)).toThrow();
    expect(() => levelPool(pairs, [1], 1, -1)).toThrow();
  });
});
