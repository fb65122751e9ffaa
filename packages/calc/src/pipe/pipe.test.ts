import { describe, expect, it } from 'vitest';
import { FOOT, GALLON_PER_MINUTE, GRAVITY, INCH, WATER_DENSITY } from '../common/constants.ts';
import { fixtureCsv, fixtureRow, fixtureRows, given } from '../testing/fixtures.ts';
import { circleSection } from './circleSection.ts';
import { fullPipe, manningVelocity, partFullPipe } from './manning.ts';
import { selfCleansingSlope } from './selfCleansing.ts';

const FILE = 'pipe/gravityPipe.json';

describe('circular section', () => {
  it('row 9.table: 20 rows of hydraulic elements', () => {
    const rows = fixtureCsv('pipe/partFullCircle.csv');
    expect(rows).toHaveLength(20);
    const full = circleSection(1, 1);
    for (const row of rows) {
      const section = circleSection(1, Number(row['y_over_D']));
      const own = {
        A_over_D2: section.area, P_over_D: section.wettedPerimeter, R_over_D: section.hydraulicRadius, T_over_D: section.topWidth,
        A_over_Af: section.area / full.area, R_over_Rf: section.hydraulicRadius / full.hydraulicRadius,
      };
      for (const [name, value] of Object.entries(own)) expect(Math.abs(value - Number(row[name]))).toBeLessThan(6e-7);
    }
  });
});

describe('Manning', () => {
  it('row 9, SI: Cengel and Cimbala', () => {
    const row = fixtureRow(FILE, '9.si');
    expect(Math.abs(manningVelocity(given(row, 'r'), given(row, 's'), given(row, 'n')) - (row.expected['v'] ?? NaN))).toBeLessThan(row.tolerance);
  });

  it('rows 9: full pipes of 3, 4 and 6 in at four slopes', () => {
    for (const row of fixtureRows(FILE).filter((r) => r.id.endsWith('in'))) {
      for (const [name, value] of Object.entries(row.expected)) {
        const full = fullPipe({ diameter: given(row, 'd') * INCH, slope: Number(name.replace('v', '')) / 12, roughness: given(row, 'n') });
        const own = name.startsWith('v') ? full.velocity / FOOT : full.flow / GALLON_PER_MINUTE;
        expect(Math.abs(own - value)).toBeLessThan(name.startsWith('v') ? 0.006 : Math.max(row.tolerance, 3e-4 * value));
      }
    }
  });

  it('design table: 4 in at 1/8 in/ft carries 113 gpm at n 0.010', () => {
    const row = fixtureRow(FILE, '9.trade');
    for (const [name, gpm] of Object.entries(row.expected)) {
      const [inches, fall, n] = name.split('@').map(Number);
      const own = fullPipe({ diameter: (inches ?? NaN) * INCH, slope: (fall ?? NaN) / 12, roughness: n ?? NaN }).flow / GALLON_PER_MINUTE;
      expect(Math.abs(own - gpm)).toBeLessThan(row.tolerance);
    }
  });

  it('part full: V/Vf and Q/Qf of the table, found from the flow', () => {
    const pipe = { diameter: 0.1, slope: 0.01, roughness: 0.01 };
    const full = fullPipe(pipe);
    for (const row of fixtureCsv('pipe/partFullCircle.csv').filter((r) => Number(r['y_over_D']) < 0.93)) {
      const own = partFullPipe(pipe, Number(row['Q_over_Qf']) * full.flow);
      expect(Math.abs(own.depthRatio - Number(row['y_over_D']))).toBeLessThan(1e-4);
      expect(Math.abs(own.velocity / full.velocity - Number(row['V_over_Vf']))).toBeLessThan(1e-4);
      expect(own.surcharged).toBe(false);
    }
    const ratio = fixtureRow(FILE, '9.ratio');
    for (const [share, depth] of Object.entries(ratio.expected)) {
      expect(Math.abs(partFullPipe(pipe, Number(share) * full.flow).depthRatio - depth)).toBeLessThan(ratio.tolerance);
    }
  });

  it('greatest flow and velocity where the table has them', () => {
    const row = fixtureRow(FILE, '9.max');
    const pipe = { diameter: 1, slope: 0.01, roughness: 0.01 };
    const full = fullPipe(pipe);
    const shares = Array.from({ length: 20000 }, (_, i) => 0.7 + (0.2999 * i) / 20000).map((y) => {
      const section = circleSection(1, y);
      const v = manningVelocity(section.hydraulicRadius, 0.01, 0.01);
      return { y, v: v / full.velocity, q: (v * section.area) / full.flow };
    });
    const most = (key: 'v' | 'q'): { y: number; v: number; q: number } => shares.reduce((a, b) => (b[key] > a[key] ? b : a));
    expect(Math.abs(most('q').q - (row.expected['q'] ?? NaN))).toBeLessThan(row.tolerance);
    expect(Math.abs(most('q').y - (row.expected['qAt'] ?? NaN))).toBeLessThan(2e-4);
    expect(Math.abs(most('v').v - (row.expected['v'] ?? NaN))).toBeLessThan(row.tolerance);
    expect(Math.abs(most('v').y - (row.expected['vAt'] ?? NaN))).toBeLessThan(2e-4);
  });

  it('stress, surcharge and an empty pipe', () => {
    const pipe = { diameter: 4 * INCH, slope: 1 / 96, roughness: 0.01 };
    const half = partFullPipe(pipe, fullPipe(pipe).flow / 2);
    expect(half.tractiveStress).toBeCloseTo((WATER_DENSITY * GRAVITY * pipe.diameter * pipe.slope) / 4, 4);
    expect(partFullPipe(pipe, fullPipe(pipe).flow * 1.08)).toMatchObject({ surcharged: true, depthRatio: 1 });
    expect(partFullPipe(pipe, fullPipe(pipe).flow * 1.07).surcharged).toBe(false);
    expect(partFullPipe(pipe, 0).velocity).toBe(0);
    expect(() => fullPipe({ ...pipe, slope: 0 })).toThrow('value.notPositive');
    expect(() => partFullPipe({ ...pipe, slope: -0.01 }, 0)).toThrow('value.notPositive');
  });
});

describe('slope that keeps a pipe clean', () => {
  it('rows 10.1, 10.2, 10.3 and 10.4', () => {
    for (const row of fixtureRows(FILE).filter((r) => r.id.startsWith('10.'))) {
      for (const [inches, slope] of Object.entries(row.expected)) {
        expect(Math.abs(selfCleansingSlope(Number(inches) * INCH, given(row, 'v') * FOOT, given(row, 'n')) - slope)).toBeLessThan(row.tolerance);
      }
    }
  });
});
