import { describe, expect, it } from 'vitest';
import { HOUR } from '../common/constants.ts';
import { seededRandom } from '../math/random.ts';
import { fixtureCsv, fixtureRow, given } from '../testing/fixtures.ts';
import type { FixtureRow } from '../testing/fixtures.ts';
import { greenAmptExcess, infiltrationRate, pondedInfiltration, pondingTime, suctionDeficit } from './greenAmpt.ts';
import { hortonDepth, hortonExcess, hortonRate } from './horton.ts';

const FILE = 'runoff/infiltration.json';
const CM = 0.01;
const cmPerHour = CM / HOUR;
const inPerHour = 0.0254 / HOUR;
const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

function soilOf(r: FixtureRow): { conductivity: number; suctionDeficit: number } {
  return { conductivity: given(r, 'k') * cmPerHour, suctionDeficit: suctionDeficit(given(r, 'psi') * CM, given(r, 'theta'), given(r, 'se')) };
}

describe('Green-Ampt', () => {
  it('row 17.1: silt loam after an hour under water', () => {
    const r = fixtureRow(FILE, '17.1');
    const soil = soilOf(r);
    const depth = pondedInfiltration(soil, given(r, 't') * HOUR);
    expect(Math.abs(soil.suctionDeficit / CM - (r.expected['s'] ?? NaN))).toBeLessThan(r.tolerance);
    expect(Math.abs(depth / CM - (r.expected['F'] ?? NaN))).toBeLessThan(r.tolerance);
    expect(Math.abs(infiltrationRate(soil, depth) / cmPerHour - (r.expected['f'] ?? NaN))).toBeLessThan(r.tolerance);
  });

  it('row 17.2: time to ponding', () => {
    const r = fixtureRow(FILE, '17.2');
    for (const i of [1, 2]) {
      const time = pondingTime(soilOf(r), given(r, `i${i}`) * cmPerHour);
      expect(Math.abs(time / HOUR - (r.expected[`tp${i}`] ?? NaN))).toBeLessThan(r.tolerance);
    }
    expect(pondingTime(soilOf(r), 0.6 * cmPerHour)).toBe(Infinity);
  });

  it('row 17.4: silty clay', () => {
    const r = fixtureRow(FILE, '17.4');
    for (const i of [1, 2]) {
      const depth = pondedInfiltration(soilOf(r), given(r, `t${i}`) * HOUR);
      expect(Math.abs(depth / CM - (r.expected[`F${i}`] ?? NaN))).toBeLessThan(r.tolerance);
      expect(Math.abs(infiltrationRate(soilOf(r), depth) / cmPerHour - (r.expected[`f${i}`] ?? NaN))).toBeLessThan(2e-6);
    }
  });

  it('steady rain sheds nothing before ponding and follows the ponded curve after it', () => {
    const soil = soilOf(fixtureRow(FILE, '17.2'));
    const rain = 5 * cmPerHour;
    const ponds = pondingTime(soil, rain);
    const excess = greenAmptExcess(soil, new Array<number>(600).fill(rain), 10);
    expect(excess.slice(0, Math.floor(ponds / 10))).toEqual(new Array<number>(Math.floor(ponds / 10)).fill(0));
    const taken = rain * 6000 - sum(excess) * 10;
    // Mein and Larson: the ponded curve, shifted so that it passes through the depth at ponding.
    const s = soil.suctionDeficit;
    expect(taken - s * Math.log(1 + taken / s) - (rain * ponds - s * Math.log(1 + (rain * ponds) / s))).toBeCloseTo(soil.conductivity * (6000 - ponds), 10);
    expect(greenAmptExcess(soil, new Array<number>(60).fill(rain), 100).reduce((a, b) => a + b, 0) * 100).toBeCloseTo(sum(excess) * 10, 10);
  });

  it('every texture of Rawls 1983 takes no more than falls, and never sheds in light rain', () => {
    const random = seededRandom(2);
    const textures = fixtureCsv('runoff/greenAmptTextures.csv');
    expect(textures).toHaveLength(11);
    for (const line of textures) {
      const soil = { conductivity: Number(line['Ks_cm_per_h']) * cmPerHour, suctionDeficit: suctionDeficit(Number(line['psi_f_cm']) * CM, Number(line['effective_porosity']), 0.3) };
      const rain = Array.from({ length: 100 }, () => (random() < 0.3 ? random() * 20 * cmPerHour : 0));
      greenAmptExcess(soil, rain, 300).forEach((q, i) => {
        expect(q).toBeGreaterThanOrEqual(0);
        expect(q).toBeLessThanOrEqual(rain[i] ?? 0);
      });
      expect(sum(greenAmptExcess(soil, new Array<number>(50).fill(soil.conductivity * 0.99), 300))).toBe(0);
    }
  });
});

describe('Horton', () => {
  for (const id of ['horton.1', 'horton.2']) {
    it(`${id}: rates and depths`, () => {
      const r = fixtureRow(FILE, id);
      const soil = { initialRate: given(r, 'f0') * inPerHour, finalRate: given(r, 'fc') * inPerHour, decay: given(r, 'k') / HOUR };
      for (const [name, value] of Object.entries(r.expected)) {
        const hours = Number(name.replace('F', ''));
        const own = name.startsWith('F') ? hortonDepth(soil, hours * HOUR) / 0.0254 : hortonRate(soil, hours * HOUR) / inPerHour;
        expect(Math.abs(own - value)).toBeLessThan(r.tolerance);
      }
    });
  }

  it('under water it takes the printed depth; light rain does not use it up', () => {
    const soil = { initialRate: 3 * inPerHour, finalRate: 0.53 * inPerHour, decay: 4.182 / HOUR };
    const heavy = 10 * inPerHour;
    const shed = sum(hortonExcess(soil, new Array<number>(60).fill(heavy), 60)) * 60;
    expect((heavy * HOUR - shed) / 0.0254).toBeCloseTo(1.1116, 4);
    expect(sum(hortonExcess(soil, new Array<number>(60).fill(0.5 * inPerHour), 60))).toBe(0);
    expect(() => hortonRate({ ...soil, finalRate: 4 * inPerHour }, 0)).toThrow('value.negative');
  });
});
