import { describe, expect, it } from 'vitest';
import { CUBIC_FOOT, FOOT, HOUR, INCH } from '../common/constants.ts';
import { SCS_TYPES, type ScsType } from '../rain/scsDistribution.ts';
import { fixtureCsv, fixtureRow, given } from '../testing/fixtures.ts';
import { expectNear, expectRatio } from '../testing/near.ts';
import { curveNumberRunoff, initialAbstraction, retentionOf } from './curveNumber.ts';
import { coefficientRanges } from './coefficientTable.ts';
import { curveNumberOf, curveNumbers } from './curveNumberTable.ts';
import { detentionShare } from './detentionVolume.ts';
import { graphicalPeak, unitPeakDischarge } from './graphicalPeak.ts';
import { sheetRoughness } from './sheetRoughness.ts';
import { soilGroupOfRate, soilGroupOfTexture, withWaterTable } from './soilGroup.ts';

const MILE = 5280 * FOOT;
const csmPerInch = (q: number): number => (q / CUBIC_FOOT) * MILE * MILE * INCH;

describe('curve numbers', () => {
  it('row 5.2, and rows 5.3 and 5.4 with their rounded weighted numbers', () => {
    const r = fixtureRow('runoff/curveNumber.json', '5.2');
    expectNear(curveNumberRunoff(given(r, 'rain') * 25.4, given(r, 'cn')) / 25.4, r.expected['runoff'], r.tolerance);
    for (const [id, parts] of [['5.3', 2], ['5.4', 3]] as const) {
      const row = fixtureRow('runoff/curveNumber.json', id);
      let [area, weighted] = [0, 0];
      for (let i = 1; i <= parts; i += 1) {
        area += given(row, `a${i}`);
        weighted += given(row, `a${i}`) * given(row, `c${i}`);
      }
      expectNear(weighted / area, row.expected['weighted'], 0.051);
      expectNear(curveNumberRunoff(given(row, 'rain') * 25.4, row.expected['cn'] ?? NaN) / 25.4, row.expected['runoff'], row.tolerance);
    }
    expectNear(retentionOf(80), 25.4 * 2.5, 1e-12);
    expectNear(initialAbstraction(80), 12.7, 1e-12);
    expect(retentionOf(100)).toBe(0);
    expect(() => retentionOf(100.1)).toThrow('runoff.curveNumber');
  });

  it('row 5.5 and the whole table 2-2a in its order', () => {
    for (const [name, value] of Object.entries(fixtureRow('runoff/curveNumber.json', '5.5').expected)) {
      const [cover, group] = name.split('.') as [keyof typeof curveNumbers, 'A' | 'B' | 'C' | 'D'];
      expect(curveNumberOf(cover, group)).toBe(value);
    }
    const printed = fixtureCsv('runoff/curveNumbersUrban.csv').filter((row) => row['A'] !== '').map((row) => ['A', 'B', 'C', 'D'].map((g) => Number(row[g])));
    expect(Object.values(curveNumbers)).toEqual(printed);
    expect(printed).toHaveLength(19);
  });
});

describe('tables by surface', () => {
  it('runoff coefficients, every line in its order', () => {
    const printed = fixtureCsv('runoff/runoffCoefficients.csv').filter((row) => row['C_min'] !== '').map((row) => [Number(row['C_min']), Number(row['C_max'])]);
    expect(Object.values(coefficientRanges)).toEqual(printed);
    expect(printed).toHaveLength(24);
    expect([coefficientRanges.roofs, coefficientRanges.drivesAndWalks, coefficientRanges.lawnHeavySteep]).toEqual([[0.75, 0.95], [0.75, 0.85], [0.25, 0.35]]);
  });
  it('roughness of sheet flow, every line in its order', () => {
    const printed = fixtureCsv('runoff/sheetFlowRoughness.csv').filter((row) => row['n'] !== '').map((row) => Number(row['n']));
    expect(Object.values(sheetRoughness)).toEqual(printed);
    expect(printed).toHaveLength(10);
    expect([sheetRoughness.smooth, sheetRoughness.denseGrass]).toEqual([0.011, 0.24]);
  });
});

describe('graphical peak', () => {
  const row = fixtureRow('runoff/graphicalPeak.json', '5.6');
  const site = {
    type: 'II', area: given(row, 'squareMiles') * MILE * MILE, timeOfConcentration: given(row, 'hours') * HOUR,
    curveNumber: given(row, 'cn'), rain: given(row, 'rain') * 25.4, pondFactor: 1,
  } as const;

  it('row 5.6: TR-55 example 4-1', () => {
    const tc = site.timeOfConcentration;
    expectNear(csmPerInch(unitPeakDischarge('II', tc, 0.1)), row.expected['qu10'], 0.0051);
    expectNear(csmPerInch(unitPeakDischarge('II', tc, 0.3)), row.expected['qu30'], 0.0051);
    expectNear(csmPerInch(unitPeakDischarge('II', tc, 0.11)), row.expected['qu'], row.tolerance);
    const own = graphicalPeak(site);
    expectNear(own.share, row.expected['share'], 0.0016);
    expectNear((own.share * site.rain) / 25.4, row.expected['ia'], 5e-4);
    expectNear(own.runoff / 25.4, 3.28205, 1e-5);
    expectRatio(own.flow / CUBIC_FOOT, row.expected['peak'], 0.01);
    expectRatio(graphicalPeak({ ...site, pondFactor: 0.87 }).flow, own.flow * 0.87, 1e-12);
  });

  it('every line of table F-1 at two times', () => {
    const lines = fixtureCsv('runoff/graphicalPeakCoefficients.csv');
    expect(lines).toHaveLength(25);
    for (const line of lines) {
      for (const hours of [0.5, 4]) {
        const t = Math.log10(hours);
        const printed = Math.pow(10, Number(line['C0']) + Number(line['C1']) * t + Number(line['C2']) * t * t);
        expectRatio(csmPerInch(unitPeakDischarge(line['type'] as ScsType, hours * HOUR, Number(line['Ia_over_P']))), printed, 1e-9);
      }
    }
  });

  it('beyond the end lines the end line holds; between two it is straight', () => {
    const q = (share: number): number => unitPeakDischarge('I', HOUR, share);
    expect([q(0), q(0.05)]).toEqual([q(0.1), q(0.1)]);
    expect([q(0.6), q(1)]).toEqual([q(0.5), q(0.5)]);
    expectRatio(q(0.225), (q(0.2) + q(0.25)) / 2, 1e-12);
    expectRatio(q(0.48), q(0.45) + 0.6 * (q(0.5) - q(0.45)), 1e-12);
    expect(graphicalPeak({ ...site, rain: 10 })).toMatchObject({ flow: 0, runoff: 0, share: 1 });
  });

  it('keeps to the graph', () => {
    for (const hours of [0.1, 10]) expect(unitPeakDischarge('II', hours * HOUR, 0.1)).toBeGreaterThan(0);
    for (const hours of [0.0999, 10.001]) expect(() => unitPeakDischarge('II', hours * HOUR, 0.1)).toThrow('runoff.outsideGraph at timeOfConcentration');
    expect(() => unitPeakDischarge('II', HOUR, 1.1)).toThrow('value.aboveOne at share');
    expect(() => graphicalPeak({ ...site, area: 0 })).toThrow('value.notPositive at area');
    expect(() => graphicalPeak({ ...site, pondFactor: 2 })).toThrow('value.aboveOne at pondFactor');
  });
});

describe('detention', () => {
  it('row 5.det: half of the peak', () => {
    const row = fixtureRow('runoff/unitHydrograph.json', '5.det');
    for (const type of SCS_TYPES) expectNear(detentionShare(type, given(row, 'ratio')), row.expected[type], row.tolerance);
  });
  it('the coefficients of table F-2 over the whole figure, and nothing beyond it', () => {
    for (const line of fixtureCsv('runoff/detentionCoefficients.csv')) {
      for (const r of [0.1, 0.3, 0.8]) {
        const printed = Number(line['C0']) + Number(line['C1']) * r + Number(line['C2']) * r * r + Number(line['C3']) * r * r * r;
        expectNear(detentionShare(line['type'] as ScsType, r), printed, 1e-12);
      }
    }
    for (const r of [0.099, 0.801]) expect(() => detentionShare('II', r)).toThrow('runoff.outsideGraph at ratio');
    expect(() => detentionShare('II', NaN)).toThrow('value.notFinite');
  });
});

describe('soil groups', () => {
  it('row 5.7: rates, and the lines between them', () => {
    const row = fixtureRow('runoff/soilGroups.json', '5.7');
    for (const [group, rate] of Object.entries(row.given)) expect(soilGroupOfRate((rate * INCH) / HOUR)).toBe(group);
    expect([0.3, 0.15, 0.05, 0].map((rate) => soilGroupOfRate((rate * INCH) / HOUR))).toEqual(['B', 'C', 'D', 'D']);
    expect([0.301, 0.151, 0.051].map((rate) => soilGroupOfRate((rate * INCH) / HOUR))).toEqual(['A', 'B', 'C']);
    expect(() => soilGroupOfRate(-1)).toThrow('value.negative at rate');
  });
  it('row 5.7: textures', () => {
    expect((['sand', 'loamySand', 'sandyLoam'] as const).map(soilGroupOfTexture)).toEqual(['A', 'A', 'A']);
    expect((['siltLoam', 'loam', 'sandyClayLoam'] as const).map(soilGroupOfTexture)).toEqual(['B', 'B', 'C']);
    expect((['clayLoam', 'siltyClayLoam', 'sandyClay', 'siltyClay', 'clay'] as const).map(soilGroupOfTexture)).toEqual(['D', 'D', 'D', 'D', 'D']);
  });
  it('a water table within 24 in makes it D', () => {
    expect([withWaterTable('A', 23.9 * INCH), withWaterTable('A', 24 * INCH), withWaterTable('B', null), withWaterTable('B', 3)]).toEqual(['D', 'A', 'B', 'B']);
    expect(() => withWaterTable('A', -1)).toThrow('value.negative at depthToWater');
  });
});
