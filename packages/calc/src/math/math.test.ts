import { describe, expect, it } from 'vitest';
import { acos, atan, atan2 } from './atan.ts';
import { bracketedRoot } from './bracketedRoot.ts';
import { cbrt } from './cbrt.ts';
import { exp } from './exp.ts';
import { log } from './log.ts';
import { pow } from './pow.ts';
import { seededRandom } from './random.ts';
import { cos, sin } from './trig.ts';

// The engine's own functions are the yardstick here: good to about one unit in the last place.
const RELATIVE = 2e-15;
const SAMPLES = 20000;

function worst(own: (x: number) => number, engine: (x: number) => number, draw: (u: number) => number): number {
  const random = seededRandom(20240611);
  let largest = 0;
  for (let i = 0; i < SAMPLES; i += 1) {
    const x = draw(random());
    const expected = engine(x);
    const error = Math.abs(own(x) - expected) / (Math.abs(expected) || 1);
    if (!(error <= largest)) largest = error;
  }
  return largest;
}

describe('math ports against the engine', () => {
  it('exp', () => expect(worst(exp, Math.exp, (u) => (u - 0.5) * 1400)).toBeLessThan(RELATIVE));
  it('exp near zero', () => expect(worst(exp, Math.exp, (u) => (u - 0.5) * 1e-3)).toBeLessThan(RELATIVE));
  it('log', () => expect(worst(log, Math.log, (u) => Math.exp((u - 0.5) * 1400))).toBeLessThan(RELATIVE));
  it('log near one', () => expect(worst(log, Math.log, (u) => 1 + (u + 1e-9) * 1e-2)).toBeLessThan(RELATIVE));
  it('cbrt', () => expect(worst(cbrt, Math.cbrt, (u) => Math.exp((u - 0.5) * 1400))).toBeLessThan(RELATIVE));
  it('atan', () => expect(worst(atan, Math.atan, (u) => (u - 0.5) * 40)).toBeLessThan(RELATIVE));
  it('acos', () => expect(worst(acos, Math.acos, (u) => 1.998 * u - 0.999)).toBeLessThan(RELATIVE * 2));
  it('pow over the range that drainage needs', () => {
    for (const y of [0.3, 0.385, 0.5, 2 / 3, 1.25, 5 / 3, 1.85, 1.852, 8 / 3, 4.8655, 4.8704, -0.385, -1, 2, 3]) {
      expect(worst((x) => pow(x, y), (x) => Math.pow(x, y), (u) => Math.exp((u - 0.5) * 40))).toBeLessThan(RELATIVE);
    }
  });
  it('sin and cos to an absolute last place', () => {
    const random = seededRandom(7);
    for (let i = 0; i < SAMPLES; i += 1) {
      const x = (random() - 0.5) * 2000;
      expect(Math.abs(sin(x) - Math.sin(x))).toBeLessThan(3e-16);
      expect(Math.abs(cos(x) - Math.cos(x))).toBeLessThan(3e-16);
    }
  });
  it('atan2 in every quadrant', () => {
    for (const [y, x] of [[1, 2], [1, -2], [-1, -2], [-1, 2], [3, 0], [-3, 0], [0, -1], [0, 1]] as const) {
      expect(atan2(y, x)).toBeCloseTo(Math.atan2(y, x), 14);
    }
  });
});

describe('edges', () => {
  it('powers of zero, one and infinity', () => {
    expect(pow(0, 1.5)).toBe(0);
    expect(pow(0, -1)).toBe(Infinity);
    expect(pow(5, 0)).toBe(1);
    expect(pow(-2, 2)).toBeNaN();
    expect(pow(10, 400)).toBe(Infinity);
    expect(pow(10, -400)).toBe(0);
  });
  it('exp and log at their ends', () => {
    expect(exp(0)).toBe(1);
    expect(exp(-800)).toBe(0);
    expect(exp(800)).toBe(Infinity);
    expect(log(1)).toBe(0);
    expect(log(0)).toBe(-Infinity);
    expect(log(-1)).toBeNaN();
    expect([cbrt(0), cbrt(-1), cbrt(Infinity), cbrt(1e-320)]).toEqual([0, NaN, Infinity, Math.cbrt(1e-320)]);
    expect(sin(Infinity)).toBeNaN();
  });
});

describe('bracketedRoot', () => {
  it('finds the root of a smooth and of a kinked function', () => {
    expect(bracketedRoot((x) => x * x - 2, 0, 5, 1e-14)).toBeCloseTo(Math.SQRT2, 13);
    expect(bracketedRoot((x) => (x < 1 ? x - 1 : 50 * (x - 1)), 0, 9, 1e-14)).toBeCloseTo(1, 12);
  });
  it('refuses an interval without a change of sign', () => {
    expect(() => bracketedRoot((x) => x * x + 1, -1, 1, 1e-9)).toThrow('root.notBracketed');
  });
});

describe('seededRandom', () => {
  it('is mulberry32, by the engine\'s own 32-bit product', () => {
    for (const seed of [0, 1, 7, 20240611, -5]) {
      const own = seededRandom(seed);
      let state = seed | 0;
      for (let i = 0; i < 200; i += 1) {
        state = (state + 0x6d2b79f5) | 0;
        let t = Math.imul(state ^ (state >>> 15), 1 | state);
        t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
        expect(own()).toBe(((t ^ (t >>> 14)) >>> 0) / 4294967296);
      }
    }
  });

  it('repeats itself and stays in [0, 1)', () => {
    const a = seededRandom(3);
    const b = seededRandom(3);
    const draws = Array.from({ length: 1000 }, () => a());
    expect(draws).toEqual(Array.from({ length: 1000 }, () => b()));
    expect(Math.abs(draws.reduce((a, u) => a + u, 0) / 1000 - 0.5)).toBeLessThan(0.03);
    expect(Math.min(...draws)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...draws)).toBeLessThan(1);
  });
});
