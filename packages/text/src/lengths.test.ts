import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatTape } from './fractions.ts';
import { lengthUnits, parseLength } from './lengths.ts';
import { foot, inch } from './units.ts';

// The same cases in every run: a failure is found again by running it.
fc.configureGlobal({ seed: 20_261_128 });

const read = (typed: string, field?: Parameters<typeof parseLength>[1]) => {
  const result = parseLength(typed, field);
  return result.ok ? Number((result.metres / inch).toFixed(6)) : result.code;
};

describe('a length with its unit', () => {
  test.each<[string, number]>([
    ['3 1/4"', 3.25], ['3-1/4"', 3.25], ['3.25"', 3.25], ['3¼"', 3.25], ['3 1/4 in', 3.25], ['1/4"', 0.25], ['.5"', 0.5], ["3''", 3],
    ["0.27'", 3.24], [".27'", 3.24], ["3'", 36], ["3' 3\"", 39], ["3'3\"", 39], ["3'-3\"", 39], ["3'-3 1/4\"", 39.25], ["3' 3 1/4\"", 39.25],
    ["3' 1/4\"", 36.25], ['3 ft 3 in', 39], ['12 ft', 144], ['12ft', 144], ['4 in', 4], ['4 inches', 4], ['3\u2032 3\u2033', 39], ['3’ 3”', 39],
    ['4 pulgadas', 4], ['12 pies', 144], ["-0.5'", -6], ['\u22122"', -2], ['+2"', 2],
  ])('%s', (typed, inches) => {
    expect(read(typed)).toBe(inches);
  });

  test.each<[string, number]>([['1.2 m', 1.2], ['35 mm', 0.035], ['8cm', 0.08], ['-35 mm', -0.035]])('%s', (typed, metres) => {
    expect(parseLength(typed)).toEqual({ ok: true, metres: expect.closeTo(metres, 12) });
  });
});

describe('a length that could mean two things', () => {
  test('is asked back without a field unit', () => {
    expect(parseLength('99.93')).toEqual({
      ok: false,
      code: 'length.ambiguous',
      options: [{ unit: 'ft', metres: 99.93 * foot }, { unit: 'in', metres: 99.93 * inch }],
    });
  });

  test('takes the unit of a field that has one', () => {
    expect(parseLength('99.93', { unit: 'ft' })).toEqual({ ok: true, metres: 99.93 * foot });
    expect(parseLength('3 1/4', { unit: 'in' })).toEqual({ ok: true, metres: 3.25 * inch });
  });

  test('a fraction in a field of feet is asked back: nobody reads fractions of a foot', () => {
    expect(read('3 1/4', { unit: 'ft' })).toBe('length.ambiguous');
  });

  test('a bare point-figure is asked back where inches are typed too', () => {
    expect(read('.1', { unit: 'ft', offered: ['ft', 'in'] })).toBe('length.ambiguous');
    expect(read('.27', { unit: 'in', offered: ['ft', 'in'] })).toBe('length.ambiguous');
    expect(read('0.1', { unit: 'ft', offered: ['ft', 'in'] })).toBe(1.2);
    expect(read('.1', { unit: 'ft' })).toBe(1.2);
  });
});

describe('what is not a length', () => {
  test.each(['', ' ', 'abc', '3 1/0"', '3 5/4"', '3 1/3"', "3' 14\"", '3 4 5"', '1,200', '1e3 m', '--3"', "'", '3 / "', 'Infinity', 'NaN m', '٣ m', "3' 3' 3\""])('%j is refused', (typed) => {
    expect(parseLength(typed, { unit: 'ft' })).toEqual({ ok: false, code: 'length.unreadable', options: [] });
  });
});

describe('any length', () => {
  const sixteenths = fc.integer({ min: -20_000, max: 20_000 });

  test('on a tape reads back as it is written', () => {
    fc.assert(fc.property(sixteenths, (n) => {
      const metres = (n / 16) * inch;
      const result = parseLength(formatTape(metres));
      expect(result.ok && result.metres).toBeCloseTo(metres, 9);
    }), { numRuns: 200 });
  });

  test('means the same in every unit it is written in', () => {
    const units = fc.constantFrom(...(Object.keys(lengthUnits) as (keyof typeof lengthUnits)[]));
    fc.assert(fc.property(fc.integer({ min: 0, max: 9_999_999 }), units, (thousandths, unit) => {
      const figure = (thousandths / 1000).toFixed(3);
      const marked = parseLength(`${figure} ${unit}`);
      const bare = parseLength(figure, { unit });
      expect(marked).toEqual(bare);
      expect(marked.ok && marked.metres / lengthUnits[unit]).toBeCloseTo(thousandths / 1000, 6);
    }), { numRuns: 200 });
  });

  test('never throws and never gives a number that is not finite', () => {
    const typed = fc.oneof(fc.string(), fc.stringMatching(/^[0-9 .'"/ftinmc-]{0,14}$/));
    fc.assert(fc.property(typed, (s) => {
      const result = parseLength(s);
      if (result.ok) expect(Number.isFinite(result.metres)).toBe(true);
    }), { numRuns: 500 });
  });

  test('keeps its meaning under curly quotes and extra spaces', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 99 }), fc.integer({ min: 0, max: 11 }), (feet, inches) => {
      expect(parseLength(`  ${feet}’  ${inches}” `)).toEqual(parseLength(`${feet}'${inches}"`));
    }), { numRuns: 200 });
  });
});
