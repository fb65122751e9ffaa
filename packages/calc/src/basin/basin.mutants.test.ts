import { describe, expect, it } from 'vitest';
import { GRAVITY, WATER_DENSITY } from '../common/constants.ts';
import { expectProblems } from '../testing/expectProblems.ts';
import { collarFor, flotation, flotationCheck } from './flotation.ts';
import { basinArea } from './volumePerHeight.ts';
import { aloneRunTime, cycleTime, shortestCycle, workingVolumeFor } from './wetWellCycle.ts';
import { alarmReserve, cycleWithRunBack } from './workingVolume.ts';

const basin = { diameter: 0.76, floorLevel: 2, rimLevel: 3.2, collarVolume: 0.1, emptyMass: 20 };

describe('basins, corner by corner', () => {
  it('refuse sizes that no basin has', () => {
    expectProblems([
      [() => flotation({ ...basin, diameter: 0 }, 2.5), 'value.notPositive at diameter'],
      [() => flotation({ ...basin, rimLevel: 2 }, 2.5), 'value.notPositive at height'],
      [() => flotation({ ...basin, collarVolume: -1 }, 2.5), 'value.negative at collarVolume'],
      [() => flotation({ ...basin, emptyMass: -1 }, 2.5), 'value.negative at emptyMass'],
      [() => flotation(basin, NaN), 'value.notFinite at waterLevel'],
      [() => collarFor(basin, 2.5, 0), 'value.notPositive at factor'],
      [() => basinArea(0), 'value.notPositive at diameter'],
      [() => cycleTime(1, 0.1, -0.1), 'value.negative at inflow'],
      [() => shortestCycle(0, 1), 'value.notPositive at volume'],
      [() => workingVolumeFor(0, 1), 'value.notPositive at time'],
      [() => aloneRunTime(0, 1), 'value.notPositive at volume'],
    ]);
  });

  it('float by the water over their own floor, wherever the datum lies', () => {
    const sunk = flotation(basin, 2.5);
    const atZero = flotation({ ...basin, floorLevel: 0, rimLevel: 1.2 }, 0.5);
    expect(sunk.uplift).toBeCloseTo(atZero.uplift, 9);
    expect(sunk.uplift).toBeCloseTo(WATER_DENSITY * GRAVITY * basinArea(0.76) * 0.5, 9);
  });

  it('hold when the factor is just met, at both levels', () => {
    const { uplift } = flotation(basin, basin.rimLevel);
    const heavy = { ...basin, collarVolume: 0, emptyMass: (1.1 * uplift) / GRAVITY };
    // A bit to either side of the limit, and on it: the check rests on >=.
    expect(flotationCheck({ ...heavy, emptyMass: heavy.emptyMass * 0.999999 }, null).holds).toBe(false);
    expect(flotationCheck({ ...heavy, emptyMass: heavy.emptyMass * 1.000001 }, null).holds).toBe(true);
    const sizes = Array.from({ length: 200 }, (_, i) => ({ ...heavy, diameter: 0.3 + i / 400 }))
      .map((size) => ({ ...size, emptyMass: (1.1 * flotation(size, size.rimLevel).uplift) / GRAVITY }))
      .filter((size) => flotation(size, size.rimLevel).factor === 1.1);
    expect(sizes.length).toBeGreaterThan(10);
    for (const size of sizes) expect(flotationCheck(size, null).holds).toBe(true);
  });

  it('cycle for inflows of one, and never without inflow', () => {
    expect(cycleTime(1, 2, 1)).toBe(2);
    expect(cycleWithRunBack(1, 0, 2, 1)).toBe(2);
    expect(alarmReserve(0, 0)).toBe(Infinity);
    expect(alarmReserve(0.3, 1)).toBe(0.3);
  });
});
