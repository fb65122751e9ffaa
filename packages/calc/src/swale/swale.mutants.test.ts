import { expect, test } from 'vitest';
import { vSwale } from './vSwale.ts';

test('no swale carries water uphill', () => {
  expect(() => vSwale({ sideSlope: 6, slope: 0.01, roughness: 0.1 }, -0.01)).toThrow('value.negative at flow');
});
