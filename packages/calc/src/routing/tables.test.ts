import { describe, expect, it } from 'vitest';
import { FlowTable, LevelTable } from './levelTable.ts';

describe('a table of volumes', () => {
  // Worked by hand: a bowl whose volume is the square of its depth, 10 cells of 0.2 m, so that the table knows it at 0, 0.2, 0.4 and so on over 5 m.
  const bowl = LevelTable.tabulate(5, 7, 10, (level) => (level - 5) * (level - 5));

  it('holds what it was told at its levels, and runs straight between them', () => {
    expect([bowl.bottom, bowl.top]).toEqual([5, 7]);
    [5, 5.2, 5.4, 6, 6.8, 7].forEach((level) => { expect(bowl.volume(level)).toBeCloseTo((level - 5) ** 2, 12); });
    expect(bowl.volume(5.05)).toBeCloseTo(0.01, 12);
    expect(bowl.volume(6.3)).toBeCloseTo((1.44 + 1.96) / 2, 12);
  });
  it('is dry below its bottom, and goes on with its last area above its top', () => {
    expect(bowl.volume(4)).toBe(0);
    expect(bowl.volume(8)).toBeCloseTo(4 + (4 - 3.24) / 0.2, 12);
  });
  it('gives the area of the cell in which a level stands', () => {
    expect(bowl.area(5.1)).toBeCloseTo(0.2, 12);
    expect(bowl.area(4)).toBeCloseTo(0.2, 12);
    expect(bowl.area(5.3)).toBeCloseTo((0.16 - 0.04) / 0.2, 12);
    expect(bowl.area(7)).toBeCloseTo(3.8, 12);
    expect(bowl.area(70)).toBeCloseTo(3.8, 12);
    expect(bowl.area(6.99)).toBeCloseTo(3.8, 12);
    // On a line of the grid it is the cell above: 0, 1 and 4 m3 at 0, 1 and 2 m.
    expect(LevelTable.tabulate(0, 2, 2, (level) => level * level).area(1)).toBe(3);
  });
  it('leaves the area behind when it is looked at', () => {
    expect(new Set([4, 5, 5.5, 6.9, 7, 9].map((level) => { bowl.look(level); return bowl.lastArea - bowl.area(level); }))).toEqual(new Set([0]));
    expect(LevelTable.tabulate(0, 1, 1, () => 1).lastArea).toBe(0);
  });
  it('turns a volume back into its level, in every cell and beyond both ends', () => {
    for (let k = 0; k <= 40; k += 1) expect(bowl.level(bowl.volume(5 + k * 0.07))).toBeCloseTo(5 + k * 0.07, 12);
    expect([bowl.level(0), bowl.level(-1)]).toEqual([5, 5]);
    expect(bowl.level(4)).toBe(7);
    expect(bowl.level(4.38)).toBeCloseTo(7.1, 12);
    expect(bowl.level(0.04)).toBeCloseTo(5.2, 12);
    expect(bowl.level(0.02)).toBeCloseTo(5.1, 12);
  });
  it('can hold a share more or less at every level', () => {
    const less = bowl.scaled(0.8);
    expect([less.bottom, less.top]).toEqual([5, 7]);
    [5.05, 6.3, 8].forEach((level) => { expect(less.volume(level)).toBeCloseTo(0.8 * bowl.volume(level), 12); });
  });
});

describe('a table of flows', () => {
  // 4 cells of 0.5 m from 1 to 3: flows 1, 2.25, 4, 6.25, 9.
  const square = FlowTable.tabulate(1, 3, 4, (level) => level * level);
  const line = FlowTable.tabulate(1, 3, 4, (level) => 12 - 4 * level);

  it('runs straight between its levels and stays as it is beyond its ends', () => {
    expect([square.bottom, square.top]).toEqual([1, 3]);
    expect([1, 1.5, 2, 2.5, 3].map((level) => square.flow(level))).toEqual([1, 2.25, 4, 6.25, 9]);
    expect([square.flow(1.25), square.flow(2.9)]).toEqual([1.625, expect.closeTo(8.45, 12)]);
    expect([square.flow(-3), square.flow(40)]).toEqual([1, 9]);
  });
  it('leaves its slope behind, none beyond its ends', () => {
    const slopes = [0, 1, 1.25, 2.75, 3, 4].map((level) => { square.flow(level); return square.lastSlope; });
    expect(slopes).toEqual([0, 0, 2.5, 5.5, 0, 0]);
    expect(FlowTable.tabulate(0, 1, 1, () => 1).lastSlope).toBe(0);
  });
  it('can be mixed with another of its grid, by a share and a factor', () => {
    const mixed = square.mixed(line, 0.25, 2);
    expect([1, 2, 3].map((level) => mixed.flow(level))).toEqual([2 * (1 + 0.25 * 7), 8, 2 * (9 - 0.25 * 9)]);
    expect([mixed.bottom, mixed.top]).toEqual([1, 3]);
  });
  it('can be added to another, or give the greater of both, and tells whether it is nowhere above it', () => {
    expect([1, 2, 3].map((level) => square.plus(line).flow(level))).toEqual([9, 8, 9]);
    expect([1, 2, 3].map((level) => square.greater(line).flow(level))).toEqual([8, 4, 9]);
    expect([square.isNowhereAbove(line), square.isNowhereAbove(square.greater(line)), square.isNowhereAbove(square)]).toEqual([false, true, true]);
    expect([square.plus(line).top, square.greater(line).bottom]).toEqual([3, 1]);
  });
  it('is turned round when a head is counted down from a level', () => {
    const mirrored = square.mirrored(10);
    expect([mirrored.bottom, mirrored.top]).toEqual([7, 9]);
    [7, 7.3, 8.75, 9].forEach((level) => { expect(mirrored.flow(level)).toBeCloseTo(square.flow(10 - level), 12); });
  });
});
