import { describe, expect, it } from 'vitest';
import { INCH } from '../common/constants.ts';
import { expectNear, expectRatio } from '../testing/near.ts';
import { flotation, flotationCheck } from './flotation.ts';
import { levelAtMark, volumeAtMark } from './markedBasin.ts';
import { taperedLevel, taperedVolume } from './taperedBasin.ts';
import { basinArea } from './volumePerHeight.ts';
import { alarmReserve, cycleWithRunBack, effectiveVolume } from './workingVolume.ts';
import { cycleTime } from './wetWellCycle.ts';

const molded = { bottomDiameter: 0.4, topDiameter: 0.5, height: 0.8 };

describe('tapered basin', () => {
  it('the whole frustum by hand, straight walls as a cylinder', () => {
    expectRatio(taperedVolume(molded, 0.8), (Math.PI / 12) * 0.8 * (0.16 + 0.2 + 0.25), 1e-12);
    expectRatio(taperedVolume(molded, 0.4), (Math.PI / 12) * 0.4 * (0.16 + 0.18 + 0.2025), 1e-12);
    expectRatio(taperedVolume({ ...molded, topDiameter: 0.4 }, 0.3), basinArea(0.4) * 0.3, 1e-12);
    expect(taperedVolume(molded, 0)).toBe(0);
  });
  it('gives the level of a volume back, wide or narrow at the top', () => {
    for (const basin of [molded, { ...molded, topDiameter: 0.3 }, { ...molded, topDiameter: 0.4 }]) {
      for (const level of [0, 0.1, 0.5, 0.8]) expectNear(taperedLevel(basin, taperedVolume(basin, level)), level, 1e-12);
    }
  });
  it('has a top', () => {
    expect(() => taperedVolume(molded, 0.81)).toThrow('basin.overTop at level');
    expect(() => taperedLevel(molded, taperedVolume(molded, 0.8) + 1e-6)).toThrow('basin.overTop at volume');
    expect(() => taperedVolume({ ...molded, height: 0 }, 0)).toThrow('value.notPositive at height');
    expect(() => taperedVolume(molded, -1)).toThrow('value.negative at level');
    expect(() => taperedLevel(molded, -1)).toThrow('value.negative at volume');
    expect(() => taperedLevel({ ...molded, topDiameter: 0 }, 0.01)).toThrow('value.notPositive at topDiameter');
  });
});

describe('basin with marks', () => {
  const marks = Array.from({ length: 17 }, (_, i) => ({ level: 0.1 + i * 2 * INCH, volume: taperedVolume({ ...molded, height: 1.2 }, 0.1 + i * 2 * INCH) }));
  it('reads a basin that was poured by the formula: exact at the marks, 0.1 % between', () => {
    for (const mark of marks) {
      expect(volumeAtMark(marks, mark.level)).toBe(mark.volume);
      expectNear(levelAtMark(marks, mark.volume), mark.level, 1e-12);
    }
    for (const level of [0.15, 0.333, 0.7]) {
      expectRatio(volumeAtMark(marks, level), taperedVolume({ ...molded, height: 1.2 }, level), 1e-3);
      expectNear(levelAtMark(marks, volumeAtMark(marks, level)), level, 1e-12);
    }
    expectNear(volumeAtMark([{ level: 0, volume: 1 }, { level: 2, volume: 2 }, { level: 3, volume: 6 }], 2.25), 3, 1e-12);
  });
  it('reads nothing beyond its marks', () => {
    expect(() => volumeAtMark(marks, 0.09)).toThrow('basin.outsideMarks at level');
    expect(() => volumeAtMark(marks, 5)).toThrow('basin.outsideMarks at level');
    expect(() => volumeAtMark(marks, NaN)).toThrow('basin.outsideMarks at level');
    expect(() => levelAtMark(marks, 0)).toThrow('basin.outsideMarks at volume');
    expect(() => volumeAtMark(marks.slice(0, 1), 0.1)).toThrow('basin.tooFewMarks at marks');
    expect(() => levelAtMark([], 0.1)).toThrow('basin.tooFewMarks at marks');
    expect(() => volumeAtMark([{ level: 0, volume: 1 }, { level: 0, volume: 2 }], 0)).toThrow('basin.marksNotRising at marks/1');
    expect(() => volumeAtMark([{ level: 0, volume: 1 }, { level: 1, volume: 1 }], 0)).toThrow('basin.marksNotRising at marks/1');
    expect(() => volumeAtMark([{ level: NaN, volume: 1 }, { level: 1, volume: 2 }], 0)).toThrow('value.notFinite at marks/0/level');
    expect(() => volumeAtMark([{ level: 0, volume: -1 }, { level: 1, volume: 2 }], 0)).toThrow('value.negative at marks/0/volume');
  });
});

describe('working volume', () => {
  it('what runs back does not count, and a line that fills it alone is refused', () => {
    expect(effectiveVolume(0.12, 0.045)).toBe(0.12 - 0.045);
    expect(effectiveVolume(0.12, 0)).toBe(0.12);
    expect(() => effectiveVolume(0.12, 0.12)).toThrow('basin.runBackFills at runBack');
    expect(() => effectiveVolume(0, 0)).toThrow('value.notPositive at volume');
    expect(() => effectiveVolume(1, -1)).toThrow('value.negative at runBack');
  });
  it('a cycle stepped by hand: run-back at once, filling, pumping down', () => {
    const [volume, back, pump, inflow] = [0.12, 0.04, 0.002, 0.0005];
    let [time, stored] = [0, back];
    while (stored < volume) [time, stored] = [time + 0.01, stored + inflow * 0.01];
    while (stored > 0) [time, stored] = [time + 0.01, stored - (pump - inflow) * 0.01];
    expectNear(cycleWithRunBack(volume, back, pump, inflow), time, 0.05);
    expect(cycleWithRunBack(volume, 0, pump, inflow)).toBe(cycleTime(volume, pump, inflow));
    expect([cycleWithRunBack(1, 0, 0.1, 0), cycleWithRunBack(1, 0, 0.1, 0.1), cycleWithRunBack(1, 0, 0.1, 0.2)]).toEqual([Infinity, Infinity, Infinity]);
    expect(() => cycleWithRunBack(1, 0, 0, 0.1)).toThrow('value.notPositive at pumpFlow');
    expect(() => cycleWithRunBack(1, 0, 0.1, -1)).toThrow('value.negative at inflow');
  });
  it('time from the alarm', () => {
    expect([alarmReserve(0.06, 0.0005), alarmReserve(0.06, 0), alarmReserve(0, 0.1)]).toEqual([120, Infinity, 0]);
    expect(() => alarmReserve(-1, 1)).toThrow('value.negative at volume');
  });
});

describe('both cases of flotation', () => {
  const basin = { diameter: 0.76, floorLevel: 0, rimLevel: 1.2, collarVolume: 0.35, emptyMass: 30 };
  it('at the seasonal high water with 1.2, at grade with 1.1', () => {
    const own = flotationCheck(basin, 0.7);
    expect(own.atTable).toEqual(flotation(basin, 0.7));
    expect(own.atGrade).toEqual(flotation(basin, 1.2));
    const needs = (level: number, factor: number): number => (factor * flotation({ ...basin, collarVolume: 0 }, level).uplift) / 9.80665;
    const collar = (mass: number): number => (mass - 30) / (2402.77 - 999.552);
    const grade = collar(needs(1.2, 1.1));
    expect([flotationCheck({ ...basin, collarVolume: grade + 1e-6 }, null).holds, flotationCheck({ ...basin, collarVolume: grade - 1e-6 }, null).holds]).toEqual([true, false]);
    // With water nearly up to the rim the case at the table asks for more.
    const table = collar(needs(1.19, 1.2));
    expect(table).toBeGreaterThan(grade);
    expect([flotationCheck({ ...basin, collarVolume: table + 1e-6 }, 1.19).holds, flotationCheck({ ...basin, collarVolume: table - 1e-6 }, 1.19).holds]).toEqual([true, false]);
  });
  it('an unknown water table leaves the case at grade', () => {
    expect(flotationCheck(basin, null).atTable).toEqual({ uplift: 0, resistance: flotation(basin, 0).resistance, factor: null });
  });
});
