import { describe, expect, test } from 'vitest';
import { seededRandom } from '../math/random.ts';
import type { Stage } from './stage.ts';
import { refined, thinned } from './stageRows.ts';

const rule = (from: Stage, to: Stage): number => ((to.level - from.level) * (from.area + Math.sqrt(from.area * to.area) + to.area)) / 3;

/** A body by the area at a level and the volume below it. */
const body = (area: (z: number) => number, volume: (z: number) => number) => (levels: readonly number[]): Stage[] => levels.map((level) => ({ level, area: area(level), volume: volume(level) }));

/** The same halving by another way: each interval on its own, down to its end. */
function halved(stagesOf: (levels: readonly number[]) => Stage[], from: number, to: number, step: number, whole: number): number[] {
  const [a, b] = stagesOf([from, to]) as [Stage, Stage];
  const exact = b.volume - a.volume;
  const near = Math.abs(rule(a, b) - exact) <= exact * 0.0005 || Math.abs(rule(a, b) - exact) <= whole / 100_000;
  if (near || to - from < 2 * step) return [to];
  const middle = (from + to) / 2;
  return [...halved(stagesOf, from, middle, step, whole), ...halved(stagesOf, middle, to, step, whole)];
}

describe('intervals of a stage table are halved', () => {
  const trough = body((z) => z, (z) => (z * z) / 2);

  test('in a trough until each is near enough, and no further', () => {
    for (const whole of [0.5, 0.01, 40]) {
      const levels = refined(trough, [0, 1], 1e-6, whole).map(({ level }) => level);
      expect(levels).toEqual([0, ...halved(trough, 0, 1, 1e-6, whole)]);
    }
    // By hand: over a trough 40 m3 large a miss of 0.4 liters is near enough; the whole of it misses by 1/2 - 1/3, its halves by 1/24 and 0.0071.
    expect(refined(trough, [0, 1], 1e-6, 40).length).toBeLessThan(refined(trough, [0, 1], 1e-6, 0.01).length);
  });

  test('never in a cone or a prism, where the rule is exact', () => {
    expect(refined(body((z) => z * z, (z) => (z * z * z) / 3), [0, 0.3, 1], 1e-6, 1 / 3)).toHaveLength(3);
    expect(refined(body(() => 2, (z) => 2 * z), [0, 1], 1e-6, 2)).toHaveLength(2);
  });

  test('where the rule misses 0.052 percent, and not where it misses 0.049', () => {
    // An area that grows evenly from 1 to s^2: the rule misses the share (s - 1)^2 / (3 (1 + s^2)).
    const widening = (s: number) => body((z) => 1 + (s * s - 1) * z, (z) => z + ((s * s - 1) * z * z) / 2);
    expect(refined(widening(1.0575), [0, 1], 1e-6, 1e-3)).toHaveLength(3);
    expect(refined(widening(1.056), [0, 1], 1e-6, 1e-3)).toHaveLength(2);
  });

  test('not where there is no water at all', () => {
    expect(refined(body(() => 0, () => 0), [0, 1], 0.1, 0)).toHaveLength(2);
  });

  test('above a wide level bench down to two steps and no further', () => {
    // 1 m2, from 0.5 m on 1000 m2.
    const bench = body((z) => (z < 0.5 ? 1 : 1000), (z) => (z < 0.5 ? z : 0.5 + 1000 * (z - 0.5)));
    const levels = refined(bench, [0, 0.6], 0.01, 0.5).map(({ level }) => level);
    expect(levels).toEqual([0, ...halved(bench, 0, 0.6, 0.01, 0.5)]);
    const spaces = levels.slice(1).map((level, i) => level - levels[i]!);
    expect(Math.min(...spaces)).toBeCloseTo(0.6 / 32, 12);
  });

  test('an interval of just two steps too', () => {
    expect(refined(trough, [0, 0.5], 0.25, 1e-3).map(({ level }) => level)).toEqual([0, 0.25, 0.5]);
    expect(refined(trough, [0, 0.5], 0.2500001, 1e-3).map(({ level }) => level)).toEqual([0, 0.5]);
  });
});

describe('a stage table is thinned', () => {
  /** The same by another way: all losses anew each time. */
  function shorter(stages: readonly Stage[], most: number, whole: number): Stage[] {
    let rows = [...stages];
    while (rows.length > most) {
      const losses = rows.slice(1, -1).map((_, i) => {
        const [a, b] = [rows[i]!, rows[i + 2]!];
        return Math.abs(b.volume - a.volume - rule(a, b)) / (b.volume + whole * 0.001);
      });
      const least = losses.indexOf(Math.min(...losses));
      rows = rows.filter((_, i) => i !== least + 1);
    }
    return rows;
  }

  test('row by row to the same as when all losses are looked at anew', () => {
    const random = seededRandom(11);
    for (let run = 0; run < 60; run += 1) {
      const stages: Stage[] = [{ level: 0, area: 0, volume: 0 }];
      for (let i = 0; i < 30; i += 1) {
        const before = stages[i]!;
        const next = { level: before.level + random(), area: before.area + random() * random(), volume: 0 };
        stages.push({ ...next, volume: before.volume + rule(before, next) * (1 + 0.2 * (random() - 0.5)) });
      }
      const whole = stages[30]!.volume;
      for (const most of [2, 3, 12, 30, 31, 40]) expect(thinned(stages, most, whole)).toEqual(shorter(stages, most, whole));
    }
  });

  test('from the bottom where rows lose as little, and its ends stay', () => {
    // A prism: no row is missed.
    const prism = [0, 1, 2, 3, 4].map((level) => ({ level, area: 1, volume: level }));
    expect([5, 4, 3, 2].map((most) => thinned(prism, most, 4).map(({ level }) => level))).toEqual([[0, 1, 2, 3, 4], [0, 2, 3, 4], [0, 3, 4], [0, 4]]);
  });

  test('by the loss against the volume up to the next row and a thousandth of the whole', () => {
    // Without any area the rule gives nothing. Whole volume 1000: the first row loses 1/(1 + 1) = 0.5, the second (3 - x)/(3 + 1).
    const rows = (x: number): Stage[] => [0, x, 1, 3].map((volume, level) => ({ level, area: 0, volume }));
    expect(thinned(rows(0.9997), 3, 1000).map(({ level }) => level)).toEqual([0, 2, 3]);
    // A hair more below and the second one loses less.
    expect(thinned(rows(1.0003), 3, 1000).map(({ level }) => level)).toEqual([0, 1, 3]);
  });
});
