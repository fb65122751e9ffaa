import { describe, expect, it } from 'vitest';
import { basinArea } from '../basin/volumePerHeight.ts';
import { GALLON_PER_MINUTE, INCH } from '../common/constants.ts';
import { fixtureRows, given } from '../testing/fixtures.ts';
import { pumpDown, runUncertainty } from './pumpDown.ts';
import type { PumpDownRun } from './pumpDown.ts';

const drop = 10 * INCH;
const volume = basinArea(30 * INCH) * drop;
const run = (gpm: number, lineEmpty = false): PumpDownRun => ({ volume, drop, time: volume / (gpm * GALLON_PER_MINUTE), lineEmpty });
const judge = (measured: number, predicted: number): string => pumpDown([run(measured)], predicted * GALLON_PER_MINUTE).verdict;

describe('pump-down', () => {
  it('a small basin gives 7.9 %, a big one 2.4 %', () => {
    for (const row of fixtureRows('proof/pumpDown.json')) {
      const height = given(row, 'drop') * INCH;
      const time = (basinArea(given(row, 'diameter') * INCH) * height) / (given(row, 'gpm') * GALLON_PER_MINUTE);
      expect(Math.abs(runUncertainty(height, time) - (row.expected['u'] ?? NaN))).toBeLessThan(row.tolerance);
    }
  });

  it('three runs: mean, spread, uncertainty with the calibration in common', () => {
    const result = pumpDown([run(20, true), run(29), run(30), run(31)], 30 * GALLON_PER_MINUTE);
    expect(result.flows).toHaveLength(3);
    expect(result.meanFlow / GALLON_PER_MINUTE).toBeCloseTo(30, 9);
    expect(result.spread).toBeCloseTo(2 / 30, 9);
    const us = [29, 30, 31].map((gpm) => runUncertainty(drop, volume / (gpm * GALLON_PER_MINUTE)));
    expect(result.uncertainty).toBeCloseTo(Math.sqrt(us.reduce((a, u) => a + u * u, 0) / 9 + 0.0004), 12);
    expect(result.uncertainty).toBeGreaterThan(0.02);
    expect([result.verdict, result.biggerDropNeeded]).toEqual(['pass', false]);
    expect(Math.abs(result.deviation)).toBeLessThan(1e-9);
  });

  it('judges at 10 and 20 %, both ways', () => {
    expect([judge(33.1, 30), judge(32.9, 30), judge(26.9, 30), judge(27.1, 30), judge(23.9, 30), judge(36.1, 30), judge(24.1, 30)]).toEqual(['warn', 'pass', 'warn', 'pass', 'fail', 'fail', 'warn']);
  });

  it('asks for a bigger drop, and refuses runs that prove nothing', () => {
    const small = basinArea(18 * INCH) * 6 * INCH;
    expect(pumpDown([{ volume: small, drop: 6 * INCH, time: small / (29 * GALLON_PER_MINUTE), lineEmpty: false }], 0.002).biggerDropNeeded).toBe(true);
    expect(() => pumpDown([run(30, true)], 0.002)).toThrow('proof.noRuns');
    expect(() => pumpDown([{ ...run(30), time: 0 }], 0.002)).toThrow('value.notPositive at runs/0/time');
    expect(() => pumpDown([run(30)], 0)).toThrow('value.notPositive at predicted');
  });
});
