import { describe, expect, it } from 'vitest';
import { CUBIC_FOOT, FOOT, INCH, POUND } from '../common/constants.ts';
import { fixtureRow, given } from '../testing/fixtures.ts';
import { expectNear, expectRatio } from '../testing/near.ts';
import { bagsFor, bagYield, concreteMass } from './concrete.ts';
import { loadFactor, looseVolume, shrinkageOf, swellOf, truckLoads } from './earthwork.ts';

const YARD = 27 * CUBIC_FOOT;

describe('concrete', () => {
  const FILE = 'quantity/concrete.json';
  it('row 19.1: yield of bags', () => {
    for (const [pounds, feet] of Object.entries(fixtureRow(FILE, '19.1').expected)) expectNear(bagYield(Number(pounds) * POUND) / CUBIC_FOOT, feet, 1e-12);
    expect(() => bagYield(0)).toThrow('value.notPositive at bagMass');
  });
  it('row 19.2: weight', () => {
    const row = fixtureRow(FILE, '19.2');
    expectNear(concreteMass(CUBIC_FOOT) / POUND, row.expected['perFt3'], row.tolerance);
    expectNear(concreteMass(YARD) / POUND, row.expected['perYd3'], row.tolerance);
    expect(() => concreteMass(-1)).toThrow('value.negative at volume');
  });
  it('row 19.3: a cut of 20 ft by 12 by 4 in', () => {
    const row = fixtureRow(FILE, '19.3');
    const volume = given(row, 'feet') * FOOT * given(row, 'width') * INCH * given(row, 'depth') * INCH;
    expectNear(volume / CUBIC_FOOT, row.expected['ft3'], row.tolerance);
    expectNear(volume / YARD, row.expected['yd3'], row.tolerance);
    expectNear(concreteMass(volume) / POUND, row.expected['pounds'], 1e-9);
    expect(bagsFor(volume, 80 * POUND)).toBe(row.expected['bags']);
    expect([bagsFor(bagYield(30), 30), bagsFor(bagYield(30) * 1.01, 30), bagsFor(0, 30)]).toEqual([1, 2, 0]);
    expect(() => bagsFor(-1, 30)).toThrow('value.negative at volume');
  });
});

describe('earthwork', () => {
  const FILE = 'quantity/earthwork.json';
  it('row 19.5: swell and loads', () => {
    const row = fixtureRow(FILE, '19.5');
    const loose = looseVolume(given(row, 'bank'), given(row, 'swell'));
    expectNear(loose, row.expected['loose'], row.tolerance);
    expect(truckLoads(loose, given(row, 'truck'))).toBe(row.expected['loads']);
    expect([truckLoads(14, 7), truckLoads(14.1, 7), truckLoads(0, 7)]).toEqual([2, 3, 0]);
    expect(() => truckLoads(1, 0)).toThrow('value.notPositive at truck');
    expect(() => truckLoads(-1, 1)).toThrow('value.negative at loose');
  });
  it('row 19.7: densities give the swell and the yards in a ton', () => {
    const row = fixtureRow(FILE, '19.7');
    expectNear(swellOf(given(row, 'bank'), given(row, 'loose')), row.expected['swell'], row.tolerance);
    expectNear(2000 / given(row, 'bank'), row.expected['bankPerTon'], 0.0051);
    expectNear(2000 / given(row, 'loose'), row.expected['loosePerTon'], 0.0051);
  });
  it('row 19.8: swell, load factor, shrinkage', () => {
    const row = fixtureRow(FILE, '19.8');
    expectNear(swellOf(given(row, 'bank'), given(row, 'loose')), row.expected['swell'], row.tolerance);
    expectNear(loadFactor(given(row, 'bank'), given(row, 'loose')), row.expected['loadFactor'], row.tolerance);
    expectNear(shrinkageOf(given(row, 'bank'), given(row, 'compacted')), row.expected['shrinkage'], row.tolerance);
    expectRatio(loadFactor(3000, 2310) * (1 + swellOf(3000, 2310)), 1, 1e-12);
    expect(() => swellOf(0, 1)).toThrow('value.notPositive at bankDensity');
    expect(() => loadFactor(1, 0)).toThrow('value.notPositive at looseDensity');
    expect(() => shrinkageOf(1, 0)).toThrow('value.notPositive at compactedDensity');
  });
  it('row 19.9: a trench', () => {
    const row = fixtureRow(FILE, '19.9');
    const bank = given(row, 'length') * given(row, 'width') * given(row, 'depth') * CUBIC_FOOT;
    expectNear(bank / CUBIC_FOOT, row.expected['ft3'], 1e-9);
    expectNear(bank / YARD, row.expected['bank'], row.tolerance);
    expectNear(looseVolume(bank, given(row, 'swell')) / YARD, row.expected['loose'], row.tolerance);
    expect(() => looseVolume(1, -1)).toThrow('value.negative at swell');
  });
  it('row 19.10: sand in place, loose and compacted', () => {
    const row = fixtureRow(FILE, '19.10');
    expectNear(looseVolume(given(row, 'bank'), given(row, 'swell')), row.expected['loose'], row.tolerance);
    expectNear(given(row, 'bank') * (1 - shrinkageOf(95, 100)), row.expected['compacted'], row.tolerance);
  });
});
