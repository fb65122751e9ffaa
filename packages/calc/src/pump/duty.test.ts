import { describe, expect, it } from 'vitest';
import { FOOT, GALLON_PER_MINUTE, INCH } from '../common/constants.ts';
import { fixtureCsv, fixtureRow, given } from '../testing/fixtures.ts';
import type { FixtureRow } from '../testing/fixtures.ts';
import { darcyWeisbachSlope } from './darcyWeisbach.ts';
import { dutyPoint, systemHead } from './dutyPoint.ts';
import type { DischargePath } from './dutyPoint.ts';
import { headAtFlow, pumpCurve } from './pumpCurve.ts';
import { weepHoleFlow } from './weepHole.ts';

const FILE = 'pump/dutyPoint.json';
const points = (list: readonly (readonly [number, number])[]): { flow: number; head: number }[] => list.map(([gpm, feet]) => ({ flow: gpm * GALLON_PER_MINUTE, head: feet * FOOT }));
/** Generic curves, invented for the demo company: gpm at feet of head. */
const A = points([[50, 0.5], [43, 5], [34, 10], [19, 15], [0, 18]]);
const B = points([[69, 0.5], [61, 5], [51, 10], [38, 15], [20, 20], [0, 24]]);

const pathOf = (row: FixtureRow): DischargePath => ({
  staticHead: given(row, 'static') * FOOT, equivalentLength: given(row, 'length') * FOOT, innerDiameter: given(row, 'id') * INCH,
  hazenWilliamsC: given(row, 'c'), openingHead: (row.given['opening'] ?? 0) * FOOT,
});

describe('pump curve', () => {
  it('passes through its points in either order and never rises', () => {
    for (const reading of ['pchip', 'straight'] as const) {
      for (const list of [A, [...A].reverse(), B]) {
        const curve = pumpCurve(list, reading);
        for (const p of list) expect(headAtFlow(curve, p.flow)).toBeCloseTo(p.head, 12);
        let before = Infinity;
        for (let i = 0; i <= 500; i += 1) {
          const head = headAtFlow(curve, (curve.runOut * 1.1 * i) / 500);
          expect(head).toBeLessThan(before);
          before = head;
        }
      }
    }
  });

  it('two points are a straight line in both readings', () => {
    const line = points([[0, 20], [40, 0]]);
    expect(headAtFlow(pumpCurve(line), 10 * GALLON_PER_MINUTE)).toBeCloseTo(15 * FOOT, 12);
  });

  it('names the point that is wrong', () => {
    expect(() => pumpCurve(points([[0, 18]]))).toThrow('pump.curveTooShort');
    expect(() => pumpCurve(points([[0, 18], [10, 18.5], [20, 10]]))).toThrow('pump.curveRises at curve/1');
    expect(() => pumpCurve(points([[20, 10], [10, 9], [0, 18]]))).toThrow('pump.curveRises at curve/0');
    expect(() => pumpCurve(points([[0, 18], [10, 15], [10, 14]]))).toThrow('pump.curveFlowNotRising at curve/2');
    expect(() => pumpCurve([{ flow: 0, head: NaN }, { flow: 1, head: 0 }])).toThrow('value.notFinite at curve/0/head');
  });
});

describe('duty point', () => {
  it('row 14.4: a parabola against 60 ft of 1 1/2 in', () => {
    const row = fixtureRow(FILE, '14.4');
    const parabola = points(Array.from({ length: 71 }, (_, q) => [q, 22 - 0.004 * q * q] as const));
    const duty = dutyPoint(pumpCurve(parabola), pathOf(row));
    expect(Math.abs(duty.flow / GALLON_PER_MINUTE - (row.expected['gpm'] ?? NaN))).toBeLessThan(row.tolerance);
    expect(Math.abs(duty.head / FOOT - (row.expected['head'] ?? NaN))).toBeLessThan(row.tolerance);
    expect(Math.abs(duty.head / FOOT - given(row, 'static') - (row.expected['friction'] ?? NaN))).toBeLessThan(row.tolerance);
  });

  it('demo line: pump A gives 30.2 gpm through 112 ft of 1 1/2 in, 38.6 gpm through 2 in', () => {
    const row = fixtureRow(FILE, '14.A');
    const duty = dutyPoint(pumpCurve(A, 'straight'), pathOf(row));
    expect(Math.abs(duty.flow / GALLON_PER_MINUTE - (row.expected['gpm'] ?? NaN))).toBeLessThan(row.tolerance);
    expect(Math.abs(duty.head / FOOT - (row.expected['head'] ?? NaN))).toBeLessThan(row.tolerance);
    expect(Math.abs(duty.velocity / FOOT - (row.expected['velocity'] ?? NaN))).toBeLessThan(row.tolerance);
    const smooth = dutyPoint(pumpCurve(A, 'pchip'), pathOf(row)).flow / GALLON_PER_MINUTE;
    expect(smooth - duty.flow / GALLON_PER_MINUTE).toBeGreaterThan(0);
    expect(smooth - duty.flow / GALLON_PER_MINUTE).toBeLessThan(0.75);
    const two = fixtureRow(FILE, '14.A2');
    const wide = dutyPoint(pumpCurve(A, 'straight'), pathOf(two)).flow / GALLON_PER_MINUTE;
    expect(Math.abs(wide - (two.expected['gpm'] ?? NaN))).toBeLessThan(two.tolerance);
  });

  it('lies on both curves, and says when there is none', () => {
    const curve = pumpCurve(B);
    const path: DischargePath = { staticHead: 1, equivalentLength: 30, innerDiameter: 0.0525, hazenWilliamsC: 140, openingHead: 0.1 };
    const duty = dutyPoint(curve, path);
    expect(headAtFlow(curve, duty.flow)).toBeCloseTo(systemHead(path, duty.flow), 9);
    expect(duty.place).toBe('onCurve');
    expect(dutyPoint(curve, { ...path, staticHead: 8 })).toMatchObject({ flow: 0, velocity: 0, place: 'noFlow' });
    expect(dutyPoint(curve, { ...path, staticHead: -2, equivalentLength: 1 })).toMatchObject({ flow: curve.runOut, place: 'beyondRunOut' });
    expect(() => dutyPoint(curve, { ...path, innerDiameter: 0 })).toThrow('value.notPositive');
  });

  it('takes Darcy-Weisbach where Hazen-Williams does not hold, if the wall is known', () => {
    const curve = pumpCurve(B);
    const path: DischargePath = { staticHead: 1, equivalentLength: 30, innerDiameter: 0.0525, hazenWilliamsC: 140, openingHead: 0.1, wallRoughness: 1e-4 };
    // Inside its range the wall changes nothing.
    expect(dutyPoint(curve, path)).toEqual(dutyPoint(curve, { ...path, wallRoughness: 1e-3 }));
    for (const outside of [{ ...path, innerDiameter: 0.12 }, { ...path, innerDiameter: 0.028 }, { ...path, staticHead: 7.2 }]) {
      const duty = dutyPoint(curve, outside);
      expect(headAtFlow(curve, duty.flow)).toBeCloseTo(systemHead(outside, duty.flow, 1e-4), 9);
      const { wallRoughness: _, ...plain } = outside;
      expect(headAtFlow(curve, dutyPoint(curve, plain).flow)).toBeCloseTo(systemHead(plain, dutyPoint(curve, plain).flow), 9);
      expect(duty.flow).not.toBe(dutyPoint(curve, plain).flow);
      expect(() => dutyPoint(curve, { ...outside, wallRoughness: -1 })).toThrow('value.negative at wallRoughness');
    }
    expect(dutyPoint(curve, { ...path, staticHead: 99 })).toMatchObject({ flow: 0, place: 'noFlow' });
    expect(systemHead(path, 0.002, 1e-4)).toBeCloseTo(1.1 + 30 * darcyWeisbachSlope(0.002, 0.0525, 1e-4), 12);
  });

  it('gives more flow at a higher basin and through a wider or newer line', () => {
    const flow = (change: Partial<DischargePath>): number => dutyPoint(pumpCurve(A), { staticHead: 1, equivalentLength: 40, innerDiameter: 0.041, hazenWilliamsC: 140, openingHead: 0, ...change }).flow;
    expect(flow({ staticHead: 0.7 })).toBeGreaterThan(flow({}));
    expect(flow({ innerDiameter: 0.0525 })).toBeGreaterThan(flow({}));
    expect(flow({ hazenWilliamsC: 150 })).toBeGreaterThan(flow({}));
  });
});

describe('weep hole', () => {
  it('row 14.7: 30 values of the New Jersey table within 2 %', () => {
    let count = 0;
    for (const row of fixtureCsv('pump/orificeNewJersey.csv')) {
      for (const [name, text] of Object.entries(row)) {
        if (!name.startsWith('d_')) continue;
        count += 1;
        const inches = Number(name.slice(2, -2).replace('_', '.'));
        const own = weepHoleFlow(inches * INCH, Number(row['head_ft']) * FOOT) / GALLON_PER_MINUTE;
        expect(Math.abs(own / Number(text) - 1)).toBeLessThan(0.02);
      }
    }
    expect(count).toBe(30);
  });
  it('row 14.8', () => {
    const row = fixtureRow(FILE, '14.8');
    for (const [inches, gpm] of Object.entries(row.expected)) {
      expect(Math.abs(weepHoleFlow(Number(inches) * INCH, given(row, 'head') * FOOT) / GALLON_PER_MINUTE - gpm)).toBeLessThan(row.tolerance);
    }
  });
});
