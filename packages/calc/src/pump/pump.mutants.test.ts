import { describe, expect, it } from 'vitest';
import { FOOT, GRAVITY } from '../common/constants.ts';
import { expectProblems } from '../testing/expectProblems.ts';
import { colebrook, darcyWeisbachSlope, swameeJain } from './darcyWeisbach.ts';
import { lineVolume } from './drainBack.ts';
import { dutyPoint } from './dutyPoint.ts';
import { END_LOSSES, equivalentLength, lineEquivalentLength, minorLoss, SCREWED_FITTINGS, screwedEquivalentLength } from './fittings.ts';
import { C_DESIGN, C_NEW_PLASTIC, HAZEN_WILLIAMS_VELOCITY } from './hazenWilliams.ts';
import { lineFilling } from './lineFilling.ts';
import { HAZEN_WILLIAMS_DIAMETER, lineFriction } from './lineFriction.ts';
import { flowAtHead, parallelOneLine } from './parallelPumps.ts';
import { pumpCurve } from './pumpCurve.ts';
import { COPPER_RESISTANCE } from './voltageDrop.ts';
import { weepHoleFlow } from './weepHole.ts';

const curve = pumpCurve([{ flow: 0, head: 8 }, { flow: 0.002, head: 6 }, { flow: 0.004, head: 2 }]);
const path = { staticHead: 2, equivalentLength: 20, innerDiameter: 0.04, hazenWilliamsC: 140, openingHead: 0 };
const filling = { points: [{ x: 0, level: 0 }, { x: 10, level: 1 }], innerDiameter: 0.04, hazenWilliamsC: 140, fittingLength: 2 };

describe('pumps and lines, corner by corner', () => {
  it('refuse what no line is', () => {
    expectProblems([
      [() => swameeJain(0, 0), 'value.notPositive at reynolds'],
      [() => swameeJain(1e5, -1), 'value.negative at relativeRoughness'],
      [() => colebrook(0, 0), 'value.notPositive at reynolds'],
      [() => colebrook(1000, -1), 'value.negative at relativeRoughness'],
      [() => darcyWeisbachSlope(-1, 0.04), 'value.negative at flow'],
      [() => darcyWeisbachSlope(0, 0), 'value.notPositive at diameter'],
      [() => lineVolume(0, 1), 'value.notPositive at innerDiameter'],
      [() => lineVolume(1, -1), 'value.negative at length'],
      [() => dutyPoint(curve, { ...path, staticHead: NaN }), 'value.notFinite at staticHead'],
      [() => dutyPoint(curve, { ...path, innerDiameter: 0 }), 'value.notPositive at innerDiameter'],
      [() => dutyPoint(curve, { ...path, equivalentLength: -1 }), 'value.negative at equivalentLength'],
      [() => minorLoss(-1, 1), 'value.negative at k'],
      [() => equivalentLength(-1, 1, 1), 'value.negative at k'],
      [() => equivalentLength(1, 0, 1), 'value.notPositive at diameter'],
      [() => screwedEquivalentLength('tee', 0), 'value.notPositive at diameter'],
      [() => lineEquivalentLength(-1, []), 'value.negative at length'],
      [() => lineEquivalentLength(1, [{ count: -1, equivalentLength: 1 }]), 'value.negative at count'],
      [() => lineFilling(curve, { ...filling, innerDiameter: 0 }, 0), 'value.notPositive at innerDiameter'],
      [() => lineFriction(-1, 0.04, { hazenWilliamsC: 150 }), 'value.negative at flow'],
      [() => weepHoleFlow(0, 1), 'value.notPositive at diameter'],
    ]);
    expect(() => darcyWeisbachSlope(0.001, -0.04)).toThrow('value.notPositive at diameter');
  });

  it('hold the printed constants', () => {
    // Source: 2018 IRC appendix A, table A.2.2; NEC chapter 9 table 8 and common handbook values, from memory.
    expect(SCREWED_FITTINGS).toEqual({
      bend45: { k: 0.42, lengthOverDiameter: 14 }, bend90: { k: 0.9, lengthOverDiameter: 30 }, closeReturn: { k: 2, lengthOverDiameter: 67 }, tee: { k: 1.8, lengthOverDiameter: 60 },
    });
    expect(END_LOSSES).toEqual({ sharpEntrance: 0.5, exit: 1 });
    expect([C_NEW_PLASTIC, C_DESIGN]).toEqual([150, 140]);
    expect(Object.entries(COPPER_RESISTANCE).map(([size, ohm]) => [size, Number((ohm * 1000 * FOOT).toFixed(9))])).toEqual([['8', 0.764], ['10', 1.21], ['12', 1.93], ['14', 3.07]]);
    expect(minorLoss(2, 3)).toBeCloseTo(9 / GRAVITY, 12);
  });

  it('are laminar below a Reynolds number of 2000 and turbulent from it on', () => {
    expect(colebrook(1999.9, 0)).toBe(64 / 1999.9);
    expect(colebrook(2000, 0)).toBeGreaterThan(0.04);
  });

  it('deliver nothing exactly at shut-off and their most exactly at run-out', () => {
    expect(dutyPoint(curve, { ...path, staticHead: 8 })).toEqual({ flow: 0, head: 8, velocity: 0, place: 'noFlow' });
    expect(dutyPoint(curve, { ...path, equivalentLength: 0, staticHead: 2 })).toMatchObject({ flow: 0.004, head: 2, place: 'onCurve' });
    expect(dutyPoint(curve, { ...path, equivalentLength: 0, staticHead: 1.999 }).place).toBe('beyondRunOut');
    expect([flowAtHead(curve, 8), flowAtHead(curve, 2), flowAtHead(curve, 9), flowAtHead(curve, 1)]).toEqual([0, 0.004, 0, 0.004]);
    expect(parallelOneLine([curve, curve], { ...path, staticHead: 8 })).toEqual({ flow: 0, head: 8, velocity: 0, flows: [0, 0] });
    expect(parallelOneLine([curve, curve], { ...path, staticHead: 1, equivalentLength: 0 }).flow).toBe(0.008);
    expect(parallelOneLine([curve], { ...path, staticHead: 8.2 }).flow).toBe(0);
  });

  it('fill by their own volume: the flow of a level line without friction is the greatest', () => {
    const flat = { points: [{ x: 0, level: 0 }, { x: 10, level: 0 }], innerDiameter: 0.4, hazenWilliamsC: 150, fittingLength: 0 };
    const { time, volume, meanFlow } = lineFilling(curve, flat, 0);
    expect(volume).toBeCloseTo((Math.PI / 4) * 0.16 * 10, 9);
    expect(meanFlow).toBeCloseTo(volume / (time ?? NaN), 12);
    // A line that rises evenly: the head that a front has to climb is that of the middle of its piece.
    const steep = lineFilling(curve, { ...flat, points: [{ x: 0, level: 0 }, { x: 10, level: 5 }] }, 0);
    const falling = lineFilling(curve, { ...flat, points: [{ x: 0, level: 0 }, { x: 10, level: 5 }] }, 0.0125);
    expect(Number(steep.time) - Number(falling.time)).toBeGreaterThan(0);
    const stalled = lineFilling(curve, { ...flat, points: [{ x: 0, level: 0 }, { x: 10, level: 16 }] }, 0);
    expect(stalled.stallsAt).toBeCloseTo(5, 9);
  });

  it('use Hazen-Williams on both ends of its range', () => {
    for (const diameter of [HAZEN_WILLIAMS_DIAMETER.from, HAZEN_WILLIAMS_DIAMETER.to]) expect(lineFriction((Math.PI / 4) * diameter * diameter, diameter, { hazenWilliamsC: 150 }).method).toBe('hazenWilliams');
    const area = (Math.PI / 4) * 0.0625 * 0.0625;
    for (const velocity of [HAZEN_WILLIAMS_VELOCITY.from, HAZEN_WILLIAMS_VELOCITY.to]) {
      const flows = Array.from({ length: 9 }, (_, i) => velocity * area * (1 + (i - 4) * 1.2e-16));
      const exact = flows.map((flow) => lineFriction(flow, 0.0625, { hazenWilliamsC: 150 })).filter((answer) => answer.velocity === velocity);
      expect(exact.length).toBeGreaterThan(0);
      for (const { method } of exact) expect(method).toBe('hazenWilliams');
    }
  });
});
