import { describe, expect, it } from 'vitest';
import { FOOT, GALLON_PER_MINUTE, HOUR, INCH } from '../common/constants.ts';
import { spatiallyVariedFlow } from '../channel/spatiallyVariedFlow.ts';
import { fixtureCsv, fixtureRow, given } from '../testing/fixtures.ts';
import { expectNear, expectRatio } from '../testing/near.ts';
import { beijGutterWidth } from './beijGutter.ts';
import { eavesGutterCapacity, type EavesGutter } from './eavesGutter.ts';
import { gutterOutletFlow, SHARP_OUTLET } from './gutterOutlet.ts';
import { leaderArea, leaderCapacity, leaderDiameterFor } from './verticalLeader.ts';

const FILE = 'gutter/eavesGutter.json';

describe('gutter width after Beij', () => {
  const row = fixtureRow(FILE, '8.beij');
  const intensity = (given(row, 'inPerHour') * INCH) / HOUR;
  const area = given(row, 'ft2') * FOOT * FOOT;
  it('row 8.beij: 0.398 ft, where the frictionless channel needs 0.348', () => {
    expectNear(beijGutterWidth(given(row, 'ratio'), given(row, 'feet') * FOOT, intensity, area) / FOOT, row.expected['width'], row.tolerance);
    const width = (row.expected['frictionless'] ?? NaN) * FOOT;
    const up = spatiallyVariedFlow({ width, length: given(row, 'feet') * FOOT, slope: 0, roughness: 0 }, intensity * area, null).depthUpstream;
    expectRatio(up, given(row, 'ratio') * width, 0.005);
  });
  it('names what is wrong', () => {
    for (const [i, name] of ['depthRatio', 'length', 'intensity', 'area'].entries()) {
      const args = [0.75, 15, 3e-5, 90].map((value, k) => (k === i ? 0 : value)) as [number, number, number, number];
      expect(() => beijGutterWidth(...args)).toThrow(`value.notPositive at ${name}`);
    }
  });
});

describe('outlet of a gutter', () => {
  it('row en.outlet: as a weir and as an orifice', () => {
    const row = fixtureRow(FILE, 'en.outlet');
    for (const [depth, litres] of Object.entries(row.expected)) expectNear(gutterOutletFlow(given(row, 'diameter'), Number(depth)) * 1000, litres, row.tolerance);
    expectRatio(gutterOutletFlow(0.08, 0.04), gutterOutletFlow(0.08, 0.04 + 1e-9), 1e-6);
    expectRatio(gutterOutletFlow(0.08, 0.04, SHARP_OUTLET), gutterOutletFlow(0.08, 0.04) / 2, 1e-12);
    expect(gutterOutletFlow(0.08, 0)).toBe(0);
    expect(() => gutterOutletFlow(0, 0.1)).toThrow('value.notPositive at diameter');
    expect(() => gutterOutletFlow(0.1, -1)).toThrow('value.negative at depth');
  });
});

describe('gutter with a fall', () => {
  const base: EavesGutter = { shape: 'rectangular', width: 0.1, depth: 0.1, drainageLength: 1, bendAt: null };
  const short = eavesGutterCapacity(base);
  const share = (ratio: number, slope: number): number => eavesGutterCapacity({ ...base, drainageLength: ratio * 0.1, slope }) / short;
  it('row en.fall: the table, and straight between its columns and rows', () => {
    for (const [name, value] of Object.entries(fixtureRow(FILE, 'en.fall').expected)) {
      const [ratio, slope] = name.split('@').map(Number);
      expectNear(share(ratio ?? NaN, slope ?? NaN), value, 1e-9);
    }
    expectNear(share(100, 0.005), (1.03 + 1.08) / 2, 1e-9);
    expectNear(share(75, 0.006), 1.04, 1e-9);
    expectNear(share(100, 0.0035), (0.93 + 1.03) / 2, 1e-9);
    expectNear(share(125, 0), 0.895, 1e-9);
  });
  it('level up to 3 mm/m, no more than the last column, and short gutters whole', () => {
    expect([share(100, 0), share(100, 0.003), share(200, 0.02), share(300, 0.02), share(50, 0.01), share(20, 0.01)].map((v) => Number(v.toFixed(9)))).toEqual([0.93, 0.93, 1.55, 1.55, 1, 1]);
    expect(() => eavesGutterCapacity({ ...base, slope: -0.001 })).toThrow('value.negative at slope');
    expect(() => eavesGutterCapacity({ ...base, width: 0 })).toThrow('value.notPositive at width');
  });
  it('bends count by their distance, at 2 and 4 m the better', () => {
    expect([1.99, 2, 3.99, 4].map((bendAt) => Number((eavesGutterCapacity({ ...base, bendAt }) / short).toFixed(6)))).toEqual([0.8, 0.9, 0.9, 1]);
  });
});

describe('leader turned round', () => {
  it('row 11.1: its diameter from its flow, and the roof it serves', () => {
    for (const row of fixtureCsv('gutter/verticalLeaders.csv')) {
      const d = Number(row['diam_in']) * INCH;
      expectRatio(leaderDiameterFor(leaderCapacity(d)), d, 1e-12);
      expectRatio(leaderDiameterFor(leaderCapacity(d, 0.25), 0.25), d, 1e-12);
      expectRatio(leaderArea(d, INCH / HOUR) / (FOOT * FOOT), Number(row['sqft_at_1_in_per_h']), 0.025);
    }
    expectRatio(leaderCapacity(3 * INCH) / GALLON_PER_MINUTE, 27.8 * Math.pow(7 / 24, 5 / 3) * Math.pow(3, 8 / 3), 1e-12);
    expect(() => leaderDiameterFor(0)).toThrow('value.notPositive at flow');
    expect(() => leaderDiameterFor(1, 2)).toThrow('value.aboveOne at fullness');
    expect(() => leaderArea(0.1, 0)).toThrow('value.notPositive at intensity');
  });
});
