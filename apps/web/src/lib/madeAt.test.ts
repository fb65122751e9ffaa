import { expect, test } from 'vitest';
import { madeAt } from './madeAt.ts';

test('the example of RFC 9562, A.6: Tuesday, February 22, 2022, 2:22:22 PM GMT-05:00', () => {
  expect(madeAt('017F22E2-79B0-7CC3-98C4-DC0C0C07398F')).toBe('2022-02-22T19:22:22.000Z');
});
