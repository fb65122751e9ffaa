import { describe, expect, it } from 'vitest';
import { FOOT, GALLON, GALLON_PER_MINUTE, INCH } from '../common/constants.ts';
import { fixtureCsv, fixtureRow, fixtureRows, given } from '../testing/fixtures.ts';
import { colebrook, darcyWeisbachSlope, swameeJain } from './darcyWeisbach.ts';
import { lineVolume } from './drainBack.ts';
import { equivalentLength, lineEquivalentLength, minorLoss, screwedEquivalentLength } from './fittings.ts';
import { hazenWilliamsSlope } from './hazenWilliams.ts';

/** Inside diameters of Schedule 40, ASTM D1785, by nominal size. */
const inside = new Map(fixtureCsv('pump/pipeDimensions.csv').filter((r) => r['schedule'] === '40D1785').map((r) => [Number(r['nps_in']), Number(r['ID_in'])]));
/** 1 in is not in the table of dimensions; ASTM D1785, 1.315 less two walls of 0.133. */
inside.set(1, 1.049);

function entries(path: string): { nominal: number; gpm: number; printed: string }[] {
  return fixtureCsv(path).flatMap((row) => Object.entries(row)
    .filter(([name, text]) => name.startsWith('in_') && text !== '')
    .map(([name, printed]) => ({ nominal: Number(name.slice(3).replace('_', '.')), gpm: Number(row['gpm']), printed })));
}

const perHundred = (nominal: number, gpm: number): number => 100 * hazenWilliamsSlope(gpm * GALLON_PER_MINUTE, (inside.get(nominal) ?? NaN) * INCH, 150);

describe('Hazen-Williams', () => {
  it('row 12.5, the whole Illinois table: 97 entries, at least 61 within 3 % and 80 within 5 %, the rest within its two-figure rounding', () => {
    const table = entries('pump/hazenWilliamsIllinois.csv').map((e) => ({ ...e, off: Math.abs(perHundred(e.nominal, e.gpm) / Number(e.printed) - 1), gap: Math.abs(perHundred(e.nominal, e.gpm) - Number(e.printed)) }));
    expect(table).toHaveLength(97);
    expect(table.filter((e) => e.off < 0.03).length).toBeGreaterThanOrEqual(61);
    expect(table.filter((e) => e.off < 0.05).length).toBeGreaterThanOrEqual(80);
    for (const e of table) expect(e.off < 0.065 || e.gap < 0.016).toBe(true);
  });

  it('rows 12.1, 12.2, 12.3 and 12.4 within 3 %', () => {
    const rows: readonly [number, number, number][] = [[1.25, 10, 1.46], [1.25, 20, 5.23], [1.5, 10, 0.7], [1.5, 20, 2.46], [1.5, 30, 5.22], [2, 20, 0.74], [2, 30, 1.54], [2, 40, 2.62], [2, 50, 3.98], [3, 50, 0.58], [3, 100, 2.09], [4, 100, 0.55], [4, 150, 1.17]];
    for (const [nominal, gpm, feet] of rows) expect(Math.abs(perHundred(nominal, gpm) / feet - 1)).toBeLessThan(0.03);
  });

  it('row 12.6: Minnesota table, without its three misprints', () => {
    const table = entries('pump/frictionMinnesota.csv').filter((e) => !(e.nominal === 1.5 && e.gpm >= 35));
    expect(table).toHaveLength(31);
    for (const e of table) expect(Math.abs(perHundred(e.nominal, e.gpm) - Number(e.printed))).toBeLessThan(0.035);
  });

  it('falls with the diameter, grows with the flow, is nothing without flow', () => {
    expect(hazenWilliamsSlope(0, 0.05, 140)).toBe(0);
    expect(hazenWilliamsSlope(0.002, 0.05, 140)).toBeGreaterThan(hazenWilliamsSlope(0.002, 0.05, 150));
    expect(() => hazenWilliamsSlope(0.002, 0, 140)).toThrow('value.notPositive');
    expect(() => hazenWilliamsSlope(-1, 0.05, 140)).toThrow('value.negative');
  });
});

describe('Darcy-Weisbach', () => {
  it('row 12.dw: friction factors of the library', () => {
    for (const row of fixtureRows('pump/darcyWeisbach.json').filter((r) => !/^(line|haaland|blasius)/.test(r.id))) {
      const f = (row.id === 'swameeJain' ? swameeJain : colebrook)(given(row, 're'), given(row, 'e'));
      expect(Math.abs(f - (row.expected['f'] ?? NaN))).toBeLessThan(row.tolerance);
    }
  });
  it('row 12.dw: 100 ft of five pipes', () => {
    for (const row of fixtureRows('pump/darcyWeisbach.json').filter((r) => r.id.startsWith('line'))) {
      const feet = 100 * darcyWeisbachSlope(given(row, 'gpm') * GALLON_PER_MINUTE, given(row, 'id') * INCH);
      expect(Math.abs(feet / (row.expected['ft'] ?? NaN) - 1)).toBeLessThan(row.tolerance);
    }
    expect(darcyWeisbachSlope(0, 0.05)).toBe(0);
  });
});

describe('fittings and content', () => {
  it('row 13.1: K 0.9 at 3 ft/s, and the length of the same loss', () => {
    const row = fixtureRow('pump/fittings.json', '13.1');
    const v = given(row, 'v') * FOOT;
    expect(Math.abs(minorLoss(given(row, 'k'), v) / FOOT - (row.expected['h'] ?? NaN))).toBeLessThan(row.tolerance);
    const flow = v * (Math.PI / 4) * 0.05 * 0.05;
    const f = colebrook((v * 0.05) / 1.0034e-6, 1.5e-6 / 0.05);
    expect(equivalentLength(0.9, 0.05, f) * darcyWeisbachSlope(flow, 0.05)).toBeCloseTo(minorLoss(0.9, v), 12);
  });
  it('row 13.2: screwed fittings of ten sizes', () => {
    for (const row of fixtureCsv('pump/screwedFittings.csv')) {
      for (const [column, kind] of [['ell45_ft', 'bend45'], ['ell90_ft', 'bend90'], ['close_return_ft', 'closeReturn'], ['tee_ft', 'tee']] as const) {
        expect(Math.abs(screwedEquivalentLength(kind, Number(row['ID_in']) * INCH) / FOOT / Number(row[column]) - 1)).toBeLessThan(0.012);
      }
    }
  });
  it('the demo line is 142 ft long with its fittings', () => {
    const row = fixtureRow('pump/fittings.json', '13.tern');
    const length = lineEquivalentLength(112 * FOOT, [{ count: 3, equivalentLength: 4 * FOOT }, { count: 2, equivalentLength: 2.1 * FOOT }, { count: 1, equivalentLength: 13.4 * FOOT }]);
    expect(Math.abs(length / FOOT - (row.expected['feet'] ?? NaN))).toBeLessThan(row.tolerance);
  });
  it('row 14.3: gallons in 100 ft, and in the demo line', () => {
    const row = fixtureRow('pump/drainBack.json', '14.3');
    for (const [id, gallons] of Object.entries(row.expected)) expect(Math.abs(lineVolume(Number(id) * INCH, 100 * FOOT) / GALLON - gallons)).toBeLessThan(row.tolerance);
    const tern = fixtureRow('pump/drainBack.json', '14.tern');
    expect(Math.abs(lineVolume(1.61 * INCH, 112 * FOOT) / GALLON - (tern.expected['gal'] ?? NaN))).toBeLessThan(tern.tolerance);
  });
});
