import { describe, expect, it } from 'vitest';
import type { CurvePoint } from '../document/document.ts';
import { headAtFlow, pumpCurve } from './pumpCurve.ts';

const points = (flows: readonly number[], heads: readonly number[]): CurvePoint[] => flows.map((flow, i) => ({ flow, head: heads[i] ?? NaN }));

describe('slopes of a pump curve', () => {
  // Worked by hand after Fritsch and Butland (1984) and the three-point end formula with its limits, as the doc block states.
  it('inner slopes are harmonic means weighted by the lengths of both sides', () => {
    // h = 1, 3; d = -1, -2; w0 = 2*3 + 1 = 7, w1 = 3 + 2*1 = 5: slope = 12 / (7/-1 + 5/-2).
    const { slopes } = pumpCurve(points([0, 1, 4], [20, 19, 13]));
    expect(slopes[1]).toBeCloseTo(12 / (-7 - 2.5), 12);
  });

  it('end slopes come from three points', () => {
    // Start: ((2*1 + 3)*-1 - 1*-2) / 4 = -0.75. End: ((2*3 + 1)*-2 - 3*-1) / 4 = -2.75.
    const { slopes } = pumpCurve(points([0, 1, 4], [20, 19, 13]));
    expect(slopes[0]).toBeCloseTo(-0.75, 12);
    expect(slopes[2]).toBeCloseTo(-2.75, 12);
    // Each end reads the two pieces next to it, of four.
    const four = pumpCurve(points([0, 1, 4, 6, 7], [20, 19, 13, 11, 3])).slopes;
    expect(four[0]).toBeCloseTo(-0.75, 12);
    // h = 1 and 2, d = -8 and -1 from the end: ((2 + 2)*-8 - 1*-1) / 3.
    expect(four[4]).toBeCloseTo(-31 / 3, 12);
    // Pieces 3 and 2 long with d = -2 and -1: w0 = 2*2 + 3 = 7, w1 = 2 + 2*3 = 8.
    expect(four[2]).toBeCloseTo(15 / (7 / -2 + 8 / -1), 12);
  });

  it('an end that would rise is level', () => {
    // ((2*1 + 1)*-1 - 1*-5) / 2 = 1 > 0 while the curve falls.
    expect(pumpCurve(points([0, 1, 2], [20, 19, 14])).slopes[0]).toBe(0);
    // ((2*1 + 1)*-1 - 1*-3) / 2 = 0 is level as it is.
    expect(Math.abs(pumpCurve(points([0, 1, 2], [20, 19, 16])).slopes[0] ?? NaN)).toBe(0);
    // A gentle end: slope * d is small, but not level: d = -0.4 and -0.5.
    expect(pumpCurve(points([0, 1, 2], [20, 19.6, 19.1])).slopes[0]).toBeCloseTo(((3 * -0.4) - -0.5) / 2, 12);
  });

  it('runs on in a straight line beyond both ends of the datasheet', () => {
    const curve = pumpCurve(points([1, 2, 5], [20, 19, 13]));
    expect(headAtFlow(curve, 0)).toBeCloseTo(20.75, 12);
    expect(headAtFlow(curve, 0.5)).toBeCloseTo(20.375, 12);
    expect(headAtFlow(curve, 5.5)).toBeCloseTo(13 - 0.5 * 2.75, 12);
    expect(headAtFlow(curve, 9)).toBeCloseTo(13 - 4 * 2.75, 12);
  });

  it('bends between two points as the cubic does', () => {
    const curve = pumpCurve(points([0, 1, 4], [20, 19, 13]));
    const [m0, m1] = [-0.75, 12 / -9.5];
    // Hermite's cubic at the middle: mean of the heads and an eighth of the difference of the slopes.
    expect(headAtFlow(curve, 0.5)).toBeCloseTo(19.5 + (m0 - m1) / 8, 12);
    expect(headAtFlow(curve, 2.5)).toBeCloseTo(16 + (3 * (m1 - -2.75)) / 8, 12);
    expect([0, 1, 4].map((flow) => headAtFlow(curve, flow))).toEqual([20, 19, 13]);
  });

  it('is refused when it rises or repeats, and read from either end', () => {
    expect(() => pumpCurve(points([0, 1], [5, 5]))).toThrow('pump.curveRises at curve/1');
    expect(() => pumpCurve(points([1, 1], [5, 4]))).toThrow('pump.curveFlowNotRising at curve/1');
    expect(() => pumpCurve(points([2, 1, 0], [1, 2, 2]))).toThrow('pump.curveRises at curve/1');
    const straight = pumpCurve(points([0, 2, 3], [9, 8, 5]), 'straight');
    expect([straight.slopes, straight.runOut, straight.shutOff]).toEqual([[], 3, 9]);
    expect(headAtFlow(straight, 2.5)).toBe(6.5);
    const backward = pumpCurve(points([3, 2, 1], [5, 8, 9]));
    expect([backward.flows, backward.runOut, backward.shutOff]).toEqual([[1, 2, 3], 3, 9]);
  });
});
