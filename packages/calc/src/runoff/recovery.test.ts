import { describe, expect, it } from 'vitest';
import { HOUR, INCH } from '../common/constants.ts';
import { fixtureCsv } from '../testing/fixtures.ts';
import { expectNear, expectRatio } from '../testing/near.ts';
import { curveNumberExcess, curveNumberRunoff } from './curveNumber.ts';
import { greenAmptExcess, infiltrationRate, pondedInfiltration, pondingTime, suctionDeficit } from './greenAmpt.ts';
import { hortonExcess } from './horton.ts';
import { soilTextures } from './soilTextures.ts';
import { afterDryStep, FULL_RECOVERY, RECOVERY_TIME, recoveryOf } from './storeRecovery.ts';
import { volumetricLoss } from './volumetricLoss.ts';

const inPerHour = INCH / HOUR;
const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
const block = (count: number, value: number): number[] => new Array<number>(count).fill(value);
const hourly = recoveryOf(HOUR);

describe('recovery of a store', () => {
  it('fades with its time constant, whatever the step, and is whole after 24 dry hours', () => {
    expect([FULL_RECOVERY, RECOVERY_TIME]).toEqual([86400, 28800]);
    let [coarse, fine] = [5, 5];
    for (let i = 1; i <= 8; i += 1) coarse = afterDryStep(coarse, i * HOUR, hourly);
    for (let i = 1; i <= 480; i += 1) fine = afterDryStep(fine, i * 60, recoveryOf(60));
    expectNear(coarse, 5 / Math.E, 1e-12);
    expectNear(fine, coarse, 1e-12);
    expect(afterDryStep(5, 24 * HOUR - 1, hourly)).toBeGreaterThan(4);
    expect([afterDryStep(5, 24 * HOUR, hourly), afterDryStep(5, 48 * HOUR, hourly)]).toEqual([0, 0]);
    expect(() => recoveryOf(0)).toThrow('value.notPositive at step');
    expect(() => afterDryStep(1, 1, { ...hourly, timeConstant: 0 })).toThrow('value.notPositive at timeConstant');
    expect(() => afterDryStep(1, 1, { ...hourly, full: 0 })).toThrow('value.notPositive at full');
  });

  it('depression storage: nothing back at once, a share after hours, all of it after a day', () => {
    expect(volumetricLoss([3, 0, 3], 1, 2)).toEqual([1, 0, 3]);
    const [, , short] = volumetricLoss([3, 0, 3], 1, 2, hourly);
    expectNear(short ?? NaN, 3 - 2 * (1 - Math.exp(-1 / 8)), 1e-12);
    const day = volumetricLoss([3, ...block(23, 0), 3], 1, 2, hourly);
    expectNear(day.at(-1) ?? NaN, 3 - 2 * (1 - Math.exp(-23 / 8)), 1e-12);
    expect(volumetricLoss([3, ...block(24, 0), 3], 1, 2, hourly).at(-1)).toBe(1);
    // A wet block between starts the dry time again.
    expect(volumetricLoss([3, ...block(20, 0), 0.1, ...block(20, 0), 3], 1, 2, hourly).at(-1)).toBeGreaterThan(1);
    expect(() => volumetricLoss([1], 1.5, 2)).toThrow('value.aboveOne at coefficient');
    expect(() => volumetricLoss([1], 1, -2)).toThrow('value.negative at depressionStorage');
  });

  it('curve number: the running total fades, so a second storm counts as new after a day', () => {
    const one = curveNumberRunoff(50, 80);
    const without = curveNumberExcess([50, ...block(30, 0), 50], 80);
    expectNear(sum(without), curveNumberRunoff(100, 80), 1e-9);
    const again = curveNumberExcess([50, ...block(24, 0), 50], 80, hourly);
    expectNear(again[0] ?? NaN, one, 1e-12);
    expectNear(again.at(-1) ?? NaN, one, 1e-12);
    const left = 50 * Math.exp(-8 / 8);
    const soon = curveNumberExcess([50, ...block(8, 0), 50], 80, hourly);
    expectNear(soon.at(-1) ?? NaN, curveNumberRunoff(left + 50, 80) - curveNumberRunoff(left, 80), 1e-9);
    expect(Math.min(...soon)).toBe(0);
    const wet = curveNumberExcess([50, ...block(20, 0), 1, ...block(20, 0), 50], 80, hourly);
    expect(wet.at(-1)).toBeGreaterThan(one);
  });

  it('Green-Ampt: after a day the soil takes what it took before', () => {
    const soil = { conductivity: 2e-6, suctionDeficit: 0.05 };
    const storm = block(4, 1e-5);
    const first = greenAmptExcess(soil, storm, HOUR);
    expect(greenAmptExcess(soil, [...storm, ...block(24, 0), ...storm], HOUR, hourly).slice(-4)).toEqual(first);
    const soon = greenAmptExcess(soil, [...storm, ...block(4, 0), ...storm], HOUR, hourly).slice(-4);
    const never = greenAmptExcess(soil, [...storm, ...block(4, 0), ...storm], HOUR).slice(-4);
    expect(sum(soon)).toBeGreaterThan(sum(first));
    expect(sum(soon)).toBeLessThan(sum(never));
    // The step of the series counts, not the one that stands in the recovery.
    expect(greenAmptExcess(soil, [...storm, ...block(4, 0), ...storm], HOUR, recoveryOf(60)).slice(-4)).toEqual(soon);
    const wet = greenAmptExcess(soil, [...storm, ...block(20, 0), 1e-7, ...block(20, 0), ...storm], HOUR, hourly).slice(-4);
    expect(sum(wet)).toBeGreaterThan(sum(first));
    expect(() => greenAmptExcess({ ...soil, suctionDeficit: -1 }, storm, HOUR)).toThrow('value.negative at suctionDeficit');
    expect(() => greenAmptExcess({ ...soil, conductivity: 0 }, storm, HOUR)).toThrow('value.notPositive at conductivity');
    expect(() => greenAmptExcess(soil, [-1], HOUR)).toThrow('value.negative at intensity');
  });

  it('Horton: after a day the soil takes what it took before', () => {
    const soil = { initialRate: 3 * inPerHour, finalRate: 0.5 * inPerHour, decay: 2 / HOUR };
    const storm = block(3, 2 * inPerHour);
    const first = hortonExcess(soil, storm, HOUR);
    expect(hortonExcess(soil, [...storm, ...block(24, 0), ...storm], HOUR, hourly).slice(-3)).toEqual(first);
    const soon = sum(hortonExcess(soil, [...storm, ...block(4, 0), ...storm], HOUR, hourly).slice(-3));
    expect(soon).toBeGreaterThan(sum(first));
    expect(soon).toBeLessThan(sum(hortonExcess(soil, [...storm, ...block(4, 0), ...storm], HOUR).slice(-3)));
    expect(hortonExcess(soil, [...storm, ...block(4, 0), ...storm], HOUR, recoveryOf(60)).slice(-3)).toEqual(hortonExcess(soil, [...storm, ...block(4, 0), ...storm], HOUR, hourly).slice(-3));
    const wet = sum(hortonExcess(soil, [...storm, ...block(20, 0), 0.01 * inPerHour, ...block(20, 0), ...storm], HOUR, hourly).slice(-3));
    expect(wet).toBeGreaterThan(sum(first));
    expect(() => hortonExcess(soil, [-1], HOUR)).toThrow('value.negative at intensity');
    expect(() => hortonExcess(soil, storm, 0)).toThrow('value.notPositive at step');
    expect(() => hortonExcess({ ...soil, decay: 0 }, storm, HOUR)).toThrow('value.notPositive at decay');
  });
});

describe('Green-Ampt at its edges', () => {
  it('without suction the soil takes K*t; before any time nothing', () => {
    expect(pondedInfiltration({ conductivity: 1e-5, suctionDeficit: 0 }, 1000)).toBe(1e-5 * 1000);
    expect(pondedInfiltration({ conductivity: 1e-5, suctionDeficit: 0.05 }, 0)).toBe(0);
    const plain = greenAmptExcess({ conductivity: 1e-5, suctionDeficit: 0 }, [3e-5, 1e-5, 5e-6], 600);
    [2e-5, 0, 0].forEach((excess, i) => expectNear(plain[i] ?? NaN, excess, 1e-18));
  });
  it('ponding begins above K only, inside a step and across steps', () => {
    const soil = { conductivity: 1e-5, suctionDeficit: 0.05 };
    expect([pondingTime(soil, 1e-5), pondingTime(soil, 2e-5)]).toEqual([Infinity, (1e-5 * 0.05) / (2e-5 * 1e-5)]);
    const tp = pondingTime(soil, 4e-5);
    const step = tp * 0.7;
    const excess = greenAmptExcess(soil, [4e-5, 4e-5, 4e-5], step);
    expect(excess[0]).toBe(0);
    expect(excess[1]).toBeGreaterThan(0);
    const taken = 4e-5 * 3 * step - sum(excess) * step;
    const used = (depth: number): number => depth - 0.05 * Math.log(1 + depth / 0.05);
    expectNear(used(taken) - used(4e-5 * tp), 1e-5 * (3 * step - tp), 1e-9);
    expectRatio(infiltrationRate(soil, 0.05), 2e-5, 1e-12);
    expect(() => infiltrationRate(soil, 0)).toThrow('value.notPositive at depth');
    expect(() => pondingTime(soil, 0)).toThrow('value.notPositive at rain');
    expect(() => pondedInfiltration(soil, -1)).toThrow('value.negative at time');
  });
  it('suction times what is still empty, with shares as shares', () => {
    expectNear(suctionDeficit(0.167, 0.486, 0.3), 0.167 * 0.7 * 0.486, 1e-15);
    expect(suctionDeficit(0.1, 0.4, 1)).toBe(0);
    expect(() => suctionDeficit(0.1, 0.4, 1.1)).toThrow('value.aboveOne at effectiveSaturation');
    expect(() => suctionDeficit(0.1, 1.4, 0.1)).toThrow('value.aboveOne at effectivePorosity');
    expect(() => suctionDeficit(-0.1, 0.4, 0.1)).toThrow('value.negative at suction');
  });
  it('row 17.rawls: the eleven textures of Rawls 1983 in their order', () => {
    const printed = fixtureCsv('runoff/greenAmptTextures.csv');
    const own = Object.values(soilTextures);
    expect(own).toHaveLength(11);
    printed.forEach((row, i) => {
      expect(own[i]?.porosity).toBe(Number(row['total_porosity']));
      expect(own[i]?.effectivePorosity).toBe(Number(row['effective_porosity']));
      expectNear((own[i]?.suction ?? NaN) * 100, Number(row['psi_f_cm']), 1e-12);
      expectNear((own[i]?.conductivity ?? NaN) * HOUR * 100, Number(row['Ks_cm_per_h']), 1e-12);
    });
    expectNear(soilTextures.loam.conductivity * HOUR, 0.0034, 1e-12);
    expectNear(soilTextures.siltLoam.conductivity * HOUR, 0.0065, 1e-12);
  });
});
