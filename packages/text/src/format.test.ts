import { describe, expect, test } from 'vitest';
import { quantity, type QuantityKind } from './format.ts';
import { foot, gallon, gallonPerMinute, inch } from './units.ts';

const us = (kind: QuantityKind, value: number | string) => quantity('en', 'us', kind, value).replaceAll('\u00a0', ' ');
const metric = (kind: QuantityKind, value: number | string) => quantity('es', 'metric', kind, value).replaceAll('\u00a0', ' ');

describe('units', () => {
  // International inch of 1959: 25.4 mm exactly; US gallon: 231 cubic inches exactly (NIST SP 811, appendix B).
  test('are exact', () => {
    expect(inch).toBe(0.0254);
    expect(foot).toBeCloseTo(0.3048, 15);
    expect(gallon).toBeCloseTo(0.003785411784, 15);
  });
});

describe('quantity', () => {
  test.each<[QuantityKind, number | string, string, string]>([
    ['level', 99.93 * foot, '99.93 ft', '30.459 m'],
    ['relative', 0.27 * foot, '+0.27 ft', '+0.082 m'],
    ['relative', -0.9 * foot, '-0.90 ft', '-0.274 m'],
    ['levelAndTape', 0.27 * foot, '0.27 ft (3 1/4")', '0.082 m'],
    ['length', 112 * foot, '112 ft', '34.1 m'],
    ['length', 3.25 * foot, '3.25 ft', '0.99 m'],
    ['height', 3.25 * inch, '3.3 in', '83 mm'],
    ['tape', 3.25 * inch, '3 1/4"', '83 mm'],
    ['tape', 39.25 * inch, `3' 3 1/4"`, '997 mm'],
    ['tape', 36 * inch, "3'", '914 mm'],
    ['tape', inch / 16, '1/16"', '2 mm'],
    ['tape', 0, '0"', '0 mm'],
    ['tape', -2 * inch, '-2"', '-51 mm'],
    ['diameter', 1.5 * inch, '1.5 in', '38 mm'],
    ['flow', 30 * gallonPerMinute, '30 gpm', '1.89 L/s'],
    ['flow', 0.4 * gallonPerMinute, '0.4 gpm', '0.03 L/s'],
    ['fineFlow', 29.34 * gallonPerMinute, '29.3 gpm', '1.85 L/s'],
    ['volume', 1234 * gallon, '1,234 gal', '4,671 L'],
    ['velocity', 2 * foot, '2.0 ft/s', '0.61 m/s'],
    ['area', 900 * foot ** 2, '900 sq ft', '83.6 m²'],
    ['rain', 25.4, '1.00 in', '25.4 mm'],
    ['intensity', (6 * inch) / 3600, '6.00 in/h', '152.4 mm/h'],
    ['percent', 0.25, '25%', '25%'],
    ['slope', 1 / 96, '1.04% (0.125 in/ft)', '1.04%'], ['fall', 1 / 96, '1/8 in per ft', '1.04%'], ['fall', 1 / 192, '1/16 in per ft', '0.52%'], ['fall', -0.25 / 12, '-1/4 in per ft', '-2.08%'], ['fall', 0.05 / 12, '0.05 in per ft', '0.42%'], ['fall', 1.5 / 12, '1 1/2 in per ft', '12.5%'],
    ['minutes', 720, '12 min', '12 min'],
    ['minutes', 90, '1.5 min', '1.5 min'],
    ['duration', 2400, '40 min', '40 min'],
    ['duration', 58_740, '16.3 h', '16.3 h'],
    ['seconds', 45, '45 s', '45 s'],
    ['money', 123456, '$1,234.56', '$1,234.56'],
    ['date', '2031-03-04', 'Mar 4, 2031', '4 mar 2031'],
    ['text', 'as it is', 'as it is', 'as it is'],
  ])('%s of %s', (kind, value, expectedUs, expectedMetric) => {
    expect(us(kind, value)).toBe(expectedUs);
    expect(metric(kind, value)).toBe(expectedMetric);
  });

  test('writes a rounded zero without a sign', () => {
    expect(us('level', -0.0001)).toBe('0.00 ft');
  });

  test('puts a no-break space before the unit', () => {
    expect(quantity('en', 'us', 'flow', 0.002)).toContain('\u00a0gpm');
  });

  test('tells an instant in the zone that it is given', () => {
    expect(quantity('en', 'us', 'dateTime', '2031-03-04T15:30:00Z', { timeZone: 'America/New_York' })).toMatch(/10:30.AM/);
    expect(quantity('en', 'us', 'dateTime', '2031-03-04T15:30:00Z', { timeZone: 'America/Denver' })).toMatch(/8:30.AM/);
  });

  test('refuses what it cannot write', () => {
    expect(() => quantity('en', 'us', 'level', Number.NaN)).toThrow(RangeError);
    expect(() => quantity('en', 'us', 'flow', 'much')).toThrow(RangeError);
    expect(() => quantity('en', 'us', 'date', '4 March')).toThrow(RangeError);
    expect(() => quantity('en', 'us', 'dateTime', 'soon')).toThrow(RangeError);
  });
});
