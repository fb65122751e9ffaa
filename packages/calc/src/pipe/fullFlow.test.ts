import { describe, expect, it } from 'vitest';
import { FOOT, GALLON_PER_MINUTE, HOUR, INCH } from '../common/constants.ts';
import { criticalDepthInPipe } from '../channel/criticalDepth.ts';
import { rationalFlow } from '../runoff/rational.ts';
import { fixtureCsv, fixtureRow, given } from '../testing/fixtures.ts';
import { expectNear, expectRatio } from '../testing/near.ts';
import { BUILDING_SEWER_SLOPES, codeSlope } from './codeSlope.ts';
import { fullFlowLosses, fullFlowProfile, fullFrictionSlope, USUAL_LOSSES, type FullPipe } from './fullFlowLosses.ts';
import { fullPipe, partFullPipe } from './manning.ts';
import { conduitManning, gutterManning, pipeManning } from './manningTable.ts';
import { insideDiameter, pipeSize, type PipeSeries } from './pipeSizes.ts';
import { sealedLineCapacity, sealedRoofLine, type SealedRoofLine } from './sealedRoofLine.ts';
import { tractiveSlope } from './selfCleansing.ts';

describe('pipe running full', () => {
  const row = fixtureRow('pipe/fullFlow.json', 'drowned');
  const pipe: FullPipe = {
    diameter: given(row, 'diameter'), length: given(row, 'length'), roughness: given(row, 'n'), invertUp: given(row, 'up'), invertDown: given(row, 'down'),
    exitLoss: given(row, 'exitLoss'), minorLoss: given(row, 'minorLoss'), entranceLoss: given(row, 'entranceLoss'),
  };
  const flow = given(row, 'flow');

  it('row drowned: every loss and the level above, worked by hand', () => {
    const own = fullFlowLosses(pipe, flow, given(row, 'tailwater'));
    for (const name of ['velocity', 'exit', 'friction', 'minor', 'entrance', 'levelUp'] as const) expectNear(own[name], row.expected[name], row.tolerance);
    expect([own.levelDown, own.full]).toEqual([0.5, true]);
    expect(USUAL_LOSSES).toEqual({ exit: 1, entrance: 0.5 });
  });

  it('the friction slope is the one at which it just runs full', () => {
    const slope = 0.013;
    expectRatio(fullFrictionSlope(fullPipe({ diameter: 0.15, slope, roughness: 0.012 }).flow, 0.15, 0.012), slope, 1e-12);
    expect(fullFrictionSlope(0, 0.1, 0.01)).toBe(0);
    expect(() => fullFrictionSlope(-1, 0.1, 0.01)).toThrow('value.negative at flow');
    expect(() => fullFrictionSlope(1, 0, 0.01)).toThrow('value.notPositive at diameter');
  });

  it('a free end stands halfway between critical depth and crown and keeps its velocity head', () => {
    const own = fullFlowLosses({ ...pipe, exitLoss: 0.2 }, flow, -3);
    expectNear(own.levelDown, (criticalDepthInPipe(flow, 0.1) + 0.1) / 2, 1e-12);
    expectNear(own.exit, row.expected['exit'], 1e-6);
    // A tailwater at just that level is met with the exit loss of the pipe.
    expectNear(fullFlowLosses({ ...pipe, exitLoss: 0.2 }, flow, own.levelDown).exit, 0.2 * own.exit, 1e-12);
  });

  it('knows when the upper end does not run full', () => {
    const high = { ...pipe, invertUp: 0.9 };
    expect(fullFlowLosses(high, flow, 0.5).full).toBe(false);
    const edge = fullFlowLosses(pipe, flow, 0.5);
    const head = edge.exit;
    const crown = edge.levelUp - edge.entrance - head - 0.1;
    expect(fullFlowLosses({ ...pipe, invertUp: crown - 1e-9 }, flow, 0.5).full).toBe(true);
    expect(fullFlowLosses({ ...pipe, invertUp: crown + 1e-6 }, flow, 0.5).full).toBe(false);
  });

  it('pipes in a row: each works against the level above the one below', () => {
    const upper = { ...pipe, invertUp: 0.5, invertDown: 0.3 };
    const [first, second] = fullFlowProfile([{ pipe, flow }, { pipe: upper, flow: 0.004 }], 0.5);
    expect(first).toEqual(fullFlowLosses(pipe, flow, 0.5));
    expect(second).toEqual(fullFlowLosses(upper, 0.004, first?.levelUp ?? NaN));
    expect(() => fullFlowProfile([], 0.5)).toThrow('pipe.noPipes at pipes');
  });

  it('names what is wrong', () => {
    const bad = (change: Partial<FullPipe>, q = flow, tail = 0.5): (() => unknown) => () => fullFlowLosses({ ...pipe, ...change }, q, tail);
    expect(bad({ invertUp: 0 })).toThrow('pipe.noFall at invertUp');
    expect(bad({ invertUp: -0.1 })).toThrow('pipe.noFall at invertUp');
    expect(bad({ length: 0 })).toThrow('value.notPositive at length');
    expect(bad({ exitLoss: -1 })).toThrow('value.negative at exitLoss');
    expect(bad({}, -1)).toThrow('value.negative at flow');
    expect(bad({}, flow, NaN)).toThrow('value.notFinite at tailwater');
  });
});

describe('sealed roof line', () => {
  const row = fixtureRow('pipe/sealedRoofLine.json', 'hand');
  const line: SealedRoofLine = {
    diameter: given(row, 'diameter'), length: given(row, 'length'), roughness: given(row, 'n'), bendLoss: given(row, 'bendLoss'), exitLoss: given(row, 'exitLoss'),
    lidLevel: 0, openingHead: given(row, 'openingHead'), lowestOpenJoint: given(row, 'joint'), lowestInvert: -0.4, weepLevel: null,
  };
  it('row hand: energy from the lid up', () => {
    const own = sealedRoofLine(line, given(row, 'flow'));
    for (const name of ['velocity', 'exit', 'friction', 'bends', 'levelAtHouse', 'margin'] as const) expectNear(own[name], row.expected[name], row.tolerance);
    expect(own.lid).toBe(0.03);
    const raised = sealedRoofLine({ ...line, lidLevel: 1 }, given(row, 'flow'));
    expectNear(raised.levelAtHouse, 1 + own.levelAtHouse, 1e-12);
  });
  it('without flow the lid is shut and nothing is lost', () => {
    expect(sealedRoofLine(line, 0)).toMatchObject({ lid: 0, exit: 0, friction: 0, bends: 0, levelAtHouse: 0, margin: 0.4 });
  });
  it('stands full to its lid unless a weep lets it down', () => {
    const standing = (weepLevel: number | null): [number, boolean] => {
      const { standingLevel, empties } = sealedRoofLine({ ...line, weepLevel }, 0);
      return [standingLevel, empties];
    };
    expect([standing(null), standing(-0.2), standing(-0.4), standing(-0.9), standing(0.5)]).toEqual([[0, false], [-0.2, false], [-0.4, true], [-0.4, true], [0, false]]);
  });
  it('comes out at the house at its capacity', () => {
    const flow = sealedLineCapacity(line);
    expectNear(sealedRoofLine(line, flow).margin, 0, 1e-9);
    expect(flow).toBeGreaterThan(given(row, 'flow'));
    expect(sealedLineCapacity({ ...line, lowestOpenJoint: 0.03 })).toBe(0);
    expect(sealedLineCapacity({ ...line, lowestOpenJoint: 0.031 })).toBeGreaterThan(0);
    const far = sealedLineCapacity({ ...line, lowestOpenJoint: 5 });
    expectNear(sealedRoofLine({ ...line, lowestOpenJoint: 5 }, far).margin, 0, 1e-9);
  });
  it('names what is wrong', () => {
    expect(() => sealedRoofLine({ ...line, length: 0 }, 0)).toThrow('value.notPositive at length');
    expect(() => sealedRoofLine({ ...line, bendLoss: -1 }, 0)).toThrow('value.negative at bendLoss');
    expect(() => sealedRoofLine({ ...line, lidLevel: NaN }, 0)).toThrow('value.notFinite at lidLevel');
    expect(() => sealedRoofLine({ ...line, weepLevel: NaN }, 0)).toThrow('value.notFinite at weepLevel');
    expect(() => sealedRoofLine(line, -1)).toThrow('value.negative at flow');
    expect(() => sealedLineCapacity({ ...line, roughness: 0 })).toThrow('value.notPositive at roughness');
  });
});

describe('tables of the plumbing codes', () => {
  const FILE = 'pipe/codeSlopes.json';
  const gpm = (inches: number, perFoot: number, n: number): number => fullPipe({ diameter: inches * INCH, slope: perFoot / 12, roughness: n }).flow / GALLON_PER_MINUTE;

  it('row 10.5: least fall by size', () => {
    for (const [inches, perFoot] of Object.entries(fixtureRow(FILE, '10.5').expected)) expectNear(codeSlope(Number(inches) * INCH) * 12, perFoot, 1e-12);
    expect([codeSlope(2.6 * INCH) * 12, codeSlope(6.1 * INCH) * 12]).toEqual([0.125, 0.0625]);
    expect(() => codeSlope(0)).toThrow('value.notPositive at nominal');
  });
  it('row 10.6: building sewers', () => {
    const row = fixtureRow(FILE, '10.6');
    for (const [inches, percent] of Object.entries(row.expected)) expectNear(BUILDING_SEWER_SLOPES[`inches${inches}` as 'inches4' | 'inches6'] * 100, percent, row.tolerance);
  });
  it('row 11.2: square feet at three inches an hour', () => {
    const row = fixtureRow(FILE, '11.2');
    expectNear(rationalFlow(1, (given(row, 'inPerHour') * INCH) / HOUR, given(row, 'ft2') * FOOT * FOOT) / GALLON_PER_MINUTE, row.expected['gpm'], row.tolerance);
  });
  it('rows 11.3 and 11.6: Manning full at n 0.0097', () => {
    const one = fixtureRow(FILE, '11.3');
    expectNear(gpm(4, 0.125, given(one, 'n')), one.expected['4@0.125'], one.tolerance);
    const row = fixtureRow(FILE, '11.6');
    for (const [name, value] of Object.entries(row.expected)) {
      const [inches, perFoot] = name.split('@').map(Number);
      expectRatio(gpm(inches ?? NaN, perFoot ?? NaN, given(row, 'n')), value, row.tolerance);
    }
  });
  it('rows 11.4 and 11.5: Manning full at the implied n, and sqrt(2) for twice the fall', () => {
    const row = fixtureRow(FILE, '11.4');
    for (const [inches, value] of Object.entries(row.expected)) expectNear(gpm(Number(inches), 0.125, given(row, `n${inches}`)), value, row.tolerance);
    const steep = fixtureRow(FILE, '11.5');
    for (const [name, value] of Object.entries(steep.expected)) {
      const [inches, perFoot] = name.split('@');
      expectRatio(gpm(Number(inches), Number(perFoot), given(steep, `n${inches}`)), value, steep.tolerance);
      expectRatio(gpm(Number(inches), Number(perFoot), 0.012) / gpm(Number(inches), Number(perFoot) / 2, 0.012), Math.SQRT2, 1e-12);
    }
  });
});

describe('pipes', () => {
  it('row 18: schedules 40 and 80, every line; the drain pipe of ASTM D2665 is schedule 40', () => {
    for (const row of fixtureCsv('pump/pipeDimensions.csv').filter((line) => line['schedule'] !== '40')) {
      const series: PipeSeries = row['schedule'] === '80D1785' ? 'schedule80' : 'schedule40';
      const size = pipeSize(series, row['nps_in'] ?? '');
      expectNear(size.outside / INCH, Number(row['OD_in']), 1e-9);
      expectNear(size.wall / INCH, Number(row['wall_in']), 1e-9);
      expectNear(size.inside / INCH, Number(row['ID_in']), 1.1e-3);
    }
  });
  it('row 18: SDR 35, every line', () => {
    const rows = fixtureCsv('pipe/sewerPipeDimensions.csv');
    expect(rows).toHaveLength(4);
    for (const row of rows) {
      const size = pipeSize('sdr35', row['nps_in'] ?? '');
      expectNear(size.outside / INCH, Number(row['OD_in']), 1e-9);
      expectNear(size.inside / INCH, Number(row['ID_from_min_wall_in']), 1e-9);
      if (Number(row['nps_in']) > 3) expect(size.wall / INCH).toBeGreaterThanOrEqual(Number(row['OD_in']) / 35 - 5e-4);
    }
    expect(() => pipeSize('sdr35', '5')).toThrow('pipe.unknownSize at nominal');
    expect(insideDiameter(0.1, 0.01)).toBe(0.1 - 0.02);
    expect(() => insideDiameter(0.1, 0.05)).toThrow('pipe.wallTooThick at wall');
    expect(() => insideDiameter(0.1, 0)).toThrow('value.notPositive at wall');
  });
  it('row 9.n: Manning n of Chow 1959, every line in its order, and of pipes laid today', () => {
    const printed = fixtureCsv('pipe/manningConduits.csv').filter((row) => row['n_normal'] !== '').map((row) => [Number(row['n_min']), Number(row['n_normal']), Number(row['n_max'])]);
    expect(Object.values(conduitManning)).toEqual(printed);
    expect(printed).toHaveLength(29);
    expect(pipeManning).toEqual({ pvc: 0.01, polyethylene: 0.011, perforatedPlastic: 0.02, corrugatedInside: 0.022, concrete: 0.013, clay: 0.013 });
  });
  it('row 7.gutter: Manning n of gutters', () => expect(gutterManning).toEqual(fixtureRow('pipe/gutterManning.json', '7.gutter').expected));
  it('the slope of a drag on the wall is that of the part-full flow', () => {
    const pipe = { diameter: 0.15, slope: 0.006, roughness: 0.012 };
    const open = partFullPipe(pipe, 0.005);
    const theta = 2 * Math.acos(1 - 2 * open.depthRatio);
    expectRatio(tractiveSlope(open.area / ((theta * 0.15) / 2), open.tractiveStress), 0.006, 1e-9);
    expect(() => tractiveSlope(0, 1)).toThrow('value.notPositive at hydraulicRadius');
  });
});
