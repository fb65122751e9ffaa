import { describe, expect, it } from 'vitest';
import { DAY, FOOT, GALLON, INCH, MINUTE } from '../common/constants.ts';
import { lineVolume } from '../pump/drainBack.ts';
import { fixtureRow, given } from '../testing/fixtures.ts';
import { percolationPit } from './percolationPit.ts';
import { infiltrationFromHole, percolationRate } from './percolationTest.ts';
import { halfWettedArea, soakageRate, soakaway } from './soakaway.ts';

const square = (side: number, depth: number, bottomLevel = 0): { area: number; perimeter: number; depth: number; voids: number; bottomLevel: number } =>
  ({ area: side * side, perimeter: 4 * side, depth, voids: 0.4, bottomLevel });

describe('percolation pit', () => {
  const line = lineVolume(1.61 * INCH, 112 * FOOT);
  it('the demo pit holds its line, a deep narrow one does not', () => {
    for (const id of ['tern', 'small']) {
      const row = fixtureRow('outlet/pits.json', id);
      const result = percolationPit(square(given(row, 'side') * INCH, given(row, 'depth') * INCH), line, null, null);
      expect(Math.abs(result.volume / GALLON - (row.expected['gal'] ?? NaN))).toBeLessThan(row.tolerance);
      expect(result.holdsLine).toBe(id === 'tern');
      expect([result.aboveWaterTable, result.timeToEmpty]).toEqual([null, null]);
    }
  });

  it('holds nothing below the water table', () => {
    const pit = square(0.76, 0.2, 10);
    expect(percolationPit(pit, line, null, 9.85).aboveWaterTable).toBeCloseTo(0.15, 12);
    expect(percolationPit(pit, line, null, 10.1).volume).toBeCloseTo(percolationPit(pit, line, null, null).volume / 2, 12);
    expect(percolationPit(pit, line, null, 11).volume).toBe(0);
  });

  it('empties as the balance says, stepped by hand', () => {
    const pit = square(0.76, 0.2);
    const rate = 3e-6;
    const time = percolationPit(pit, line, rate, null).timeToEmpty ?? NaN;
    let depth = pit.depth;
    const step = time / 20000;
    for (let i = 0; i < 20000; i += 1) depth -= (step * rate * (pit.area + pit.perimeter * depth)) / (pit.voids * pit.area);
    expect(Math.abs(depth / pit.depth)).toBeLessThan(1e-3);
    expect(time).toBeLessThan((pit.voids * pit.depth) / rate);
    expect(time).toBeLessThan(DAY);
  });
});

describe('percolation test', () => {
  it('80 and 12 minutes an inch', () => {
    for (const id of ['perc.1', 'perc.2']) {
      const row = fixtureRow('outlet/pits.json', id);
      expect((percolationRate(given(row, 'minutes') * MINUTE, given(row, 'drop') * INCH) * INCH) / MINUTE).toBeCloseTo(row.expected['rate'] ?? NaN, 9);
    }
    expect(() => percolationRate(1800, 0)).toThrow('value.notPositive');
  });
  it('the hole loses through base and sides what the water fell', () => {
    const [radius, start, drop, interval] = [0.1, 0.15, 0.03, 1800];
    const f = infiltrationFromHole(radius, start, drop, interval);
    const wetted = Math.PI * radius * radius + 2 * Math.PI * radius * (start - drop / 2);
    expect(f * wetted * interval).toBeCloseTo(Math.PI * radius * radius * drop, 12);
  });
});

describe('soakaway after BRE Digest 365', () => {
  const FILE = 'outlet/soakaway.json';
  it('rows 17.7 and 17.8', () => {
    const rain = fixtureRow(FILE, '17.7');
    const trench = fixtureRow(FILE, '17.8');
    const storms = Object.entries(rain.given).filter(([name]) => name.startsWith('p')).map(([name, depth]) => ({ duration: Number(name.slice(1)) * MINUTE, depth }));
    expect(storms).toHaveLength(11);
    const wetted = halfWettedArea(given(trench, 'length'), given(trench, 'width'), given(trench, 'depth'));
    expect(wetted).toBeCloseTo(trench.expected['wetted'] ?? NaN, 9);
    const result = soakaway(given(rain, 'area'), storms, wetted, given(trench, 'f'));
    for (const row of result.rows) {
      const minutes = row.duration / MINUTE;
      expect(Math.abs(row.inflow - (rain.expected[`i${minutes}`] ?? NaN))).toBeLessThan(rain.tolerance);
      const outflow = trench.expected[`o${minutes}`];
      if (outflow !== undefined) expect(Math.abs(row.outflow - outflow)).toBeLessThan(trench.tolerance);
      expect(row.storage).toBe(row.inflow - row.outflow);
    }
    expect(result.worst.duration / MINUTE).toBe(trench.expected['worst']);
    expect(Math.abs(result.worst.storage - (trench.expected['storage'] ?? NaN))).toBeLessThan(trench.tolerance);
    expect(result.halfEmptyTime).toBeCloseTo(result.worst.storage / 2 / (wetted * given(trench, 'f')), 6);
  });
  it('rate from a soakage test, and no storms', () => {
    expect(soakageRate(0.5, 5, 10000)).toBeCloseTo(1e-5, 15);
    expect(() => soakaway(100, [], 10, 1e-5)).toThrow('soakaway.noStorms');
  });
});
