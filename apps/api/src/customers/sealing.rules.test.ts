import { describe, expect, test } from 'vitest';
import { makeDataKey, open, openJson, seal, sealJson } from './sealing.rules.ts';

const person = { name: 'Marisol Pruett', email: null, phones: ['555-0142'] };

describe('what is sealed for a customer', () => {
  const key = makeDataKey();
  test('opens with its key at its place', () => {
    expect(openJson(key, 'customer:1', sealJson(key, 'customer:1', person))).toEqual(person);
  });
  test('shows nothing of itself', () => {
    const sealed = Buffer.from(sealJson(key, 'customer:1', person));
    expect(sealed.includes('Marisol')).toBe(false);
    expect(sealed.includes('555-0142')).toBe(false);
  });
  test('is another value each time, so equal names do not look equal', () => {
    expect(sealJson(key, 'customer:1', person)).not.toEqual(sealJson(key, 'customer:1', person));
  });
  test('does not open with another key, at another place, or with a bit turned', () => {
    const sealed = sealJson(key, 'customer:1', person);
    expect(() => open(makeDataKey(), 'customer:1', sealed)).toThrow();
    expect(() => open(key, 'customer:2', sealed)).toThrow();
    for (const at of [0, 1, 13, sealed.length - 1]) {
      const bent = new Uint8Array(sealed);
      bent[at] = (bent[at] ?? 0) ^ 1;
      expect(() => open(key, 'customer:1', bent), `byte ${at}`).toThrow();
    }
  });
  test('a wrapped key opens to the same key and what it sealed is lost without it', () => {
    const master = makeDataKey();
    const wrapped = seal(master, 'key:1', key);
    expect(open(master, 'key:1', wrapped)).toEqual(key);
    expect(() => open(makeDataKey(), 'key:1', wrapped)).toThrow();
  });
  test('a short or foreign value is refused', () => {
    expect(() => open(key, 'x', new Uint8Array(5))).toThrow(/format/);
  });
});
