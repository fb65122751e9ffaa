import { describe, expect, it } from 'vitest';
import { siQuantity } from './si.ts';

describe('a value for a formula', () => {
  it('stands in SI with six figures, whatever the reader reads elsewhere', () => {
    expect(siQuantity('en', 'flow', 0.0019558123456)).toBe('0.00195581\u00a0m³/s');
    expect(siQuantity('en', 'level', 30.4585)).toBe('30.4585\u00a0m');
    expect(siQuantity('es', 'level', -30.4585)).toBe('-30.4585\u00a0m');
    expect(siQuantity('en', 'percent', 0.35)).toBe('0.35');
    expect(siQuantity('en', 'volume', 12345.678)).toBe('12345.7\u00a0m³');
  });

  it('says nothing as nothing, and what is very small in powers of ten', () => {
    expect(siQuantity('en', 'number', 0)).toBe('0');
    expect(siQuantity('en', 'intensity', 2.5e-7)).toBe('2.5E-7\u00a0m/s');
  });
});
