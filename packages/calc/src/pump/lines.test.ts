import { describe, expect, it } from 'vitest';
import { FOOT, GALLON_PER_MINUTE, INCH } from '../common/constants.ts';
import { bracketedRoot } from '../math/bracketedRoot.ts';
import { fixtureCsv, fixtureRow, given } from '../testing/fixtures.ts';
import { expectNear, expectRatio } from '../testing/near.ts';
import { darcyWeisbachSlope } from './darcyWeisbach.ts';
import { lineVolume } from './drainBack.ts';
import { dutyPoint, systemHead, type DischargePath } from './dutyPoint.ts';
import { blasius, haaland } from './explicitFriction.ts';
import { END_LOSSES } from './fittings.ts';
import { FITTING_SIZES, listedFittingLength, type FittingKind, type FittingSize } from './fittingTable.ts';
import { hazenWilliamsSlope } from './hazenWilliams.ts';
import { lineFilling } from './lineFilling.ts';
import { lineFriction } from './lineFriction.ts';
import { highestUpTo, levelAlong, requireProfile } from './lineProfile.ts';
import { flowAtHead, parallelOneLine, parallelOwnLines } from './parallelPumps.ts';
import { headAtFlow, pumpCurve } from './pumpCurve.ts';
import { standingLine } from './standingLine.ts';
import { FITTING_ALLOWANCE, worksheetHead } from './totalHead.ts';
import { BRANCH_DROP, voltageDrop, wireFor } from './voltageDrop.ts';

const curve = pumpCurve([[69, 0.5], [61, 5], [51, 10], [38, 15], [20, 20], [0, 24]].map(([gpm, feet]) => ({ flow: (gpm ?? NaN) * GALLON_PER_MINUTE, head: (feet ?? NaN) * FOOT })));
const small = pumpCurve([{ flow: 0, head: 5 }, { flow: 0.002, head: 1 }], 'straight');
const path: DischargePath = { staticHead: 2, equivalentLength: 40, innerDiameter: 0.0525, hazenWilliamsC: 150, openingHead: 0.05 };

describe('friction formulas', () => {
  it('Haaland and Blasius, ten printed digits', () => {
    for (const [id, own] of [['haaland', haaland(1e5, 1e-4)], ['blasius', blasius(1e5)]] as const) {
      const row = fixtureRow('pump/darcyWeisbach.json', id);
      expectNear(own, row.expected['f'], row.tolerance);
    }
    expect(() => haaland(0, 0)).toThrow('value.notPositive at reynolds');
    expect(() => haaland(1e5, -1)).toThrow('value.negative at relativeRoughness');
    expect(() => blasius(0)).toThrow('value.notPositive at reynolds');
  });

  it('each line by the formula that holds for it', () => {
    const wall = { hazenWilliamsC: 150, roughness: 1e-5 };
    const q = (velocity: number, d: number): number => velocity * (Math.PI / 4) * d * d;
    const at = (velocity: number, d: number): string => lineFriction(q(velocity, d), d, wall).method;
    expect([at(0.61, 0.05), at(0.59, 0.05), at(2.44, 0.05), at(2.46, 0.05)]).toEqual(['hazenWilliams', 'darcyWeisbach', 'hazenWilliams', 'darcyWeisbach']);
    expect([at(1, 1.26 * INCH), at(1, 1.24 * INCH), at(1, 3.09 * INCH), at(1, 3.11 * INCH)]).toEqual(['hazenWilliams', 'darcyWeisbach', 'hazenWilliams', 'darcyWeisbach']);
    expect(at(1, 1.25 * INCH)).toBe('hazenWilliams');
    expect(lineFriction(q(1, 0.05), 0.05, wall)).toEqual({ slope: hazenWilliamsSlope(q(1, 0.05), 0.05, 150), velocity: expect.closeTo(1, 12), method: 'hazenWilliams' });
    expect(lineFriction(q(0.3, 0.05), 0.05, wall).slope).toBe(darcyWeisbachSlope(q(0.3, 0.05), 0.05, 1e-5));
    expect(lineFriction(q(0.3, 0.05), 0.05, { hazenWilliamsC: 150 }).slope).toBe(darcyWeisbachSlope(q(0.3, 0.05), 0.05));
    expectRatio(lineFriction(q(1, 0.05), 0.05, wall).slope, darcyWeisbachSlope(q(1, 0.05), 0.05), 0.1);
    expect(() => lineFriction(-1, 0.05, wall)).toThrow('value.negative at flow');
    expect(() => lineFriction(0.001, 0, wall)).toThrow('value.notPositive at diameter');
    expect(() => lineFriction(0.001, 0.02, { hazenWilliamsC: 0 })).toThrow('value.notPositive at hazenWilliamsC');
  });

  it('rows 14.1, 14.2 and 13.7: the worksheet', () => {
    const filled = fixtureRow('pump/totalHead.json', '14.2');
    const own = worksheetHead(0, 0, given(filled, 'length') * FOOT, given(filled, 'perHundred') / 100);
    expectNear(own.friction / FOOT, filled.expected['friction'], 1e-9);
    expectNear(given(filled, 'length') * FITTING_ALLOWANCE, filled.expected['equivalent'], filled.tolerance);
    const row = fixtureRow('pump/totalHead.json', '14.1');
    expectNear(worksheetHead(given(row, 'lift') * FOOT, given(row, 'special') * FOOT, given(row, 'length') * FOOT, given(row, 'perHundred') / 100).head / FOOT, row.expected['total'], row.tolerance);
    expect(FITTING_ALLOWANCE).toBe(fixtureRow('pump/fittings.json', '13.7').expected['factor']);
    expect(worksheetHead(-1, 0.5, 10, 0.1, 1).head).toBe(-1 + 0.5 + 1);
    expect(() => worksheetHead(NaN, 0, 1, 0.1)).toThrow('value.notFinite at lift');
    expect(() => worksheetHead(0, 0, -1, 0.1)).toThrow('value.negative at length');
  });

  it('row 13.3: the regulation table, every number, and its key rows', () => {
    const kinds: readonly FittingKind[] = ['wroughtBend45', 'wroughtBend90', 'wroughtTeeRun', 'wroughtTeeBranch', 'castBend45', 'castBend90', 'castTeeRun', 'castTeeBranch', 'compressionStop', 'globeValve', 'gateValve'];
    const rows = fixtureCsv('pump/fittingsIllinois.csv');
    expect(rows).toHaveLength(kinds.length);
    rows.forEach((row, i) => {
      for (const size of FITTING_SIZES) {
        const printed = row[`in_${size.replace('.', '_')}`];
        const own = (): number => listedFittingLength(kinds[i] ?? 'gateValve', size);
        if (printed === '') expect(own).toThrow('pump.fittingNotListed at size');
        else expectNear(own() / FOOT, Number(printed), 1e-12);
      }
    });
    for (const [name, feet] of Object.entries(fixtureRow('pump/fittings.json', '13.3').expected)) {
      const [kind, size] = name.split('@');
      expectNear(listedFittingLength(kind as FittingKind, size as FittingSize) / FOOT, feet, 1e-12);
    }
  });

  it('row 13.5: ends of a pipe', () => {
    const row = fixtureRow('pump/fittings.json', '13.5');
    expect(END_LOSSES.exit).toBe(row.expected['exit']);
    expectNear(END_LOSSES.sharpEntrance, row.expected['entranceRennels'], row.tolerance);
    expectNear(END_LOSSES.sharpEntrance, row.expected['entranceMiller'], row.tolerance);
  });
});

describe('pumps in parallel', () => {
  it('a curve turned round', () => {
    for (const head of [1, 3, 5]) expectNear(headAtFlow(curve, flowAtHead(curve, head)), head, 1e-9);
    expect([flowAtHead(curve, curve.shutOff), flowAtHead(curve, 99), flowAtHead(curve, 0.5 * FOOT), flowAtHead(curve, -1)]).toEqual([0, 0, curve.runOut, curve.runOut]);
    expect(() => flowAtHead(curve, NaN)).toThrow('value.notFinite at head');
  });

  it('one pump is its duty point; two lie on both curves and give less than twice as much', () => {
    const one = dutyPoint(curve, path);
    const alone = parallelOneLine([curve], path);
    expectNear(alone.flow, one.flow, 1e-10);
    expectNear(alone.velocity, one.velocity, 1e-7);
    const two = parallelOneLine([curve, curve], path);
    expectNear(two.head, systemHead(path, two.flow), 1e-12);
    expectNear((two.flows[0] ?? NaN) + (two.flows[1] ?? NaN), two.flow, 1e-9);
    expectNear(headAtFlow(curve, two.flow / 2), two.head, 1e-6);
    expect(two.flow).toBeGreaterThan(one.flow * 1.05);
    expect(two.flow).toBeLessThan(one.flow * 1.95);
  });

  it('a weaker pump is shut behind its check valve; two that cannot lift give nothing; a free line is run out', () => {
    const strong = parallelOneLine([curve, small], { ...path, staticHead: 5.2 });
    expect(strong.flows[1]).toBe(0);
    expectNear(strong.flow, dutyPoint(curve, { ...path, staticHead: 5.2 }).flow, 1e-9);
    expect(parallelOneLine([curve, small], { ...path, staticHead: 9 })).toMatchObject({ flow: 0, velocity: 0, flows: [0, 0] });
    expectNear(parallelOneLine([curve, small], { ...path, staticHead: -9, equivalentLength: 1 }).flow, curve.runOut + small.runOut, 1e-15);
  });

  it('on lines of their own the flows add', () => {
    const own = parallelOwnLines([{ curve, path }, { curve: small, path }]);
    expect(own.duties).toEqual([dutyPoint(curve, path), dutyPoint(small, path)]);
    expectNear(own.flow, dutyPoint(curve, path).flow + dutyPoint(small, path).flow, 1e-15);
    expect(own.flow).toBeGreaterThan(parallelOneLine([curve, small], path).flow);
    expect(parallelOwnLines([])).toEqual({ flow: 0, duties: [] });
  });

  it('names what is wrong', () => {
    expect(() => parallelOneLine([], path)).toThrow('pump.noPumps at curves');
    expect(() => parallelOneLine([curve], { ...path, staticHead: NaN })).toThrow('value.notFinite at staticHead');
    expect(() => parallelOneLine([curve], { ...path, innerDiameter: 0 })).toThrow('value.notPositive at innerDiameter');
    expect(() => parallelOneLine([curve], { ...path, openingHead: -1 })).toThrow('value.negative at openingHead');
  });
});

describe('voltage drop', () => {
  it('worked by hand, and within 3 % of the form with 12.9 ohm circular mils a foot', () => {
    const { drop, share } = voltageDrop(9.8, 30, '12', 120);
    expectRatio(drop, 2 * 9.8 * (1.93 / 304.8) * 30, 1e-12);
    expectNear(share, drop / 120, 1e-15);
    expectRatio(drop, (2 * 12.9 * 9.8 * (30 / FOOT)) / 6530, 0.03);
    expect(voltageDrop(0, 30, '12', 120)).toEqual({ drop: 0, share: 0 });
    expect(() => voltageDrop(9, 30, '13', 120)).toThrow('pump.unknownWire at wire');
    expect(() => voltageDrop(-9, 30, '12', 120)).toThrow('value.negative at current');
    expect(() => voltageDrop(9, 30, '12', 0)).toThrow('value.notPositive at voltage');
  });
  it('the thinnest wire that does', () => {
    expect(BRANCH_DROP).toBe(0.03);
    expect([wireFor(5, 10, 120), wireFor(9.8, 30, 120), wireFor(9.8, 55, 120), wireFor(9.8, 70, 120), wireFor(9.8, 200, 120)]).toEqual(['14', '10', '8', '8', null]);
    const exact = voltageDrop(9.8, 30, '12', 120).share;
    expect([wireFor(9.8, 30, 120, exact), wireFor(9.8, 30, 120, exact * 0.999)]).toEqual(['12', '10']);
    expect(() => wireFor(9, 30, 120, 0)).toThrow('value.notPositive at share');
  });
});

const hill = [{ x: 0, level: 0 }, { x: 10, level: 2 }, { x: 20, level: 1 }, { x: 30, level: 1.5 }];

describe('profile of a line', () => {
  it('levels along it and what the front has climbed', () => {
    expect([levelAlong(hill, 0), levelAlong(hill, 5), levelAlong(hill, 10), levelAlong(hill, 15), levelAlong(hill, 30), levelAlong(hill, 99)]).toEqual([0, 1, 2, 1.5, 1.5, 1.5]);
    expect([highestUpTo(hill, 0), highestUpTo(hill, 5), highestUpTo(hill, 15), highestUpTo(hill, 30)]).toEqual([0, 1, 2, 2]);
  });
  it('goes forward from the pump', () => {
    expect(() => requireProfile([{ x: 0, level: 0 }])).toThrow('pump.lineTooShort at points');
    expect(() => requireProfile([{ x: 1, level: 0 }, { x: 2, level: 0 }])).toThrow('pump.lineNotForward at points/0/x');
    expect(() => requireProfile([{ x: 0, level: 0 }, { x: 0, level: 1 }])).toThrow('pump.lineNotForward at points/1/x');
    expect(() => requireProfile([{ x: 0, level: NaN }, { x: 1, level: 1 }])).toThrow('value.notFinite at points/0/level');
    expect(() => requireProfile(hill)).not.toThrow();
  });
});

describe('filling of a line', () => {
  const line = { points: [{ x: 0, level: 0 }, { x: 20, level: 0 }, { x: 20.001, level: 2 }, { x: 40, level: 2 }], innerDiameter: 0.041, hazenWilliamsC: 150, fittingLength: 4 };
  it('a short wide line fills in its volume over the flow of the pump', () => {
    const wide = { ...line, points: [{ x: 0, level: 0 }, { x: 1, level: 0 }], innerDiameter: 0.5, fittingLength: 0 };
    const own = lineFilling(curve, wide, 0);
    const flow = dutyPoint(curve, { staticHead: 0, equivalentLength: 0, innerDiameter: 0.5, hazenWilliamsC: 150, openingHead: 0 }).flow;
    expectRatio(own.time ?? NaN, lineVolume(0.5, 1) / flow, 1e-6);
    expectRatio(own.meanFlow, flow, 1e-6);
    expect(own.stallsAt).toBeNull();
  });
  it('a level line is the integral of A/Q(x), the duty found otherwise', () => {
    const level = { ...line, points: [{ x: 0, level: 1 }, { x: 40, level: 1 }] };
    const area = (Math.PI / 4) * 0.041 * 0.041;
    let time = 0;
    for (let i = 0; i < 4000; i += 1) {
      const wetted = (i + 0.5) * 0.01 * 1.1;
      const q = bracketedRoot((flow) => headAtFlow(curve, flow) - 0.4 - wetted * hazenWilliamsSlope(flow, 0.041, 150), 0, curve.runOut * 1.5, 1e-12);
      time += (area * 0.01) / Math.min(q, curve.runOut);
    }
    expectRatio(lineFilling(curve, level, 0.6).time ?? NaN, time, 1e-4);
  });
  it('stalls where the pump can no longer lift, and takes what it passed', () => {
    const high = { ...line, points: [{ x: 0, level: 0 }, { x: 20, level: 0 }, { x: 20.001, level: 9 }, { x: 40, level: 9 }] };
    const own = lineFilling(curve, high, 0);
    expect([own.time, own.meanFlow]).toEqual([null, 0]);
    expectNear(own.stallsAt ?? NaN, 20, 0.21);
    expectRatio(own.volume, lineVolume(0.041, own.stallsAt ?? NaN), 1e-12);
    expect(lineFilling(curve, line, 0).volume).toBe(lineVolume(0.041, 40));
    expect(lineFilling(curve, line, 0).time).toBeGreaterThan(lineFilling(curve, line, 0.5).time ?? NaN);
    expect(lineFilling(curve, line, 0).time).toBeGreaterThan(lineFilling(curve, { ...line, fittingLength: 0 }, 0).time ?? NaN);
  });
  it('names what is wrong', () => {
    expect(() => lineFilling(curve, { ...line, points: [] }, 0)).toThrow('pump.lineTooShort');
    expect(() => lineFilling(curve, line, NaN)).toThrow('value.notFinite at basinLevel');
    expect(() => lineFilling(curve, { ...line, innerDiameter: 0 }, 0)).toThrow('value.notPositive at innerDiameter');
    expect(() => lineFilling(curve, { ...line, innerDiameter: 1e200 }, 0)).toThrow('value.notFinite at area');
    expect(() => lineFilling(curve, { ...line, fittingLength: -1 }, 0)).toThrow('value.negative at fittingLength');
  });
});

describe('line that stands', () => {
  const area = (Math.PI / 4) * 0.04 * 0.04;
  const metres = (own: ReturnType<typeof standingLine>): number[] => [own.runBack, own.runOut, own.standing].map((v) => Number((v / area).toFixed(9)));

  it('a line that rises all the way runs back whole; a check valve keeps it', () => {
    const rising = [{ x: 0, level: 0 }, { x: 10, level: 1 }, { x: 30, level: 2 }];
    expect(metres(standingLine(rising, 0.04, false, null))).toEqual([30, 0, 0]);
    expect(metres(standingLine(rising, 0.04, true, null))).toEqual([0, 0, 30]);
  });
  it('over a hill it parts at the top; the sag behind keeps water up to its lower lip', () => {
    // The sag from x 10 to 30 holds water up to 1.5: 5 m of the falling piece and all 10 m of the rising one.
    expect(metres(standingLine(hill, 0.04, false, null))).toEqual([10, 5, 15]);
    expect(metres(standingLine(hill, 0.04, true, null))).toEqual([0, 5, 25]);
  });
  it('a sag on the pump side stays there', () => {
    const sag = [{ x: 0, level: 1 }, { x: 10, level: 0 }, { x: 30, level: 2 }];
    // Up to level 1: the whole first piece and half of the second.
    expect(metres(standingLine(sag, 0.04, false, null))).toEqual([10, 0, 20]);
    const falling = [{ x: 0, level: 2 }, { x: 10, level: 1 }, { x: 20, level: 0 }];
    expect(metres(standingLine(falling, 0.04, true, null))).toEqual([0, 20, 0]);
    const flat = [{ x: 0, level: 1 }, { x: 20, level: 1 }];
    expect(metres(standingLine(flat, 0.04, false, null))).toEqual([0, 20, 0]);
  });
  it('frost reaches what stands full above its level', () => {
    expect(standingLine(hill, 0.04, false, null).exposed).toBe(0);
    // Full pieces: 1.5 to 1 falling over 5 m, 1 to 1.5 rising over 10 m; above 1.25 half of each.
    expectNear(standingLine(hill, 0.04, false, 1.25).exposed, 2.5 + 5, 1e-9);
    expectNear(standingLine(hill, 0.04, false, 0).exposed, 15, 1e-9);
    expect(standingLine(hill, 0.04, false, 2).exposed).toBe(0);
    expectNear(standingLine(hill, 0.04, true, 1).exposed, 5 + 15, 1e-9);
  });
  it('names what is wrong', () => {
    expect(() => standingLine([], 0.04, false, null)).toThrow('pump.lineTooShort');
    expect(() => standingLine(hill, 0, false, null)).toThrow('value.notPositive at innerDiameter');
    expect(() => standingLine(hill, 1e200, false, null)).toThrow('value.notFinite at area');
  });
});
