import { expect, test } from 'vitest';
import { givenIn } from './given.ts';

const typed = (startAt: string, expiresAt: string) => givenIn('America/New_York', (name) => (name === 'startAt' ? startAt : expiresAt));

test('start and end of the center are read in the time of the property', () => {
  expect(typed('2026-03-06T00:00', '2026-03-23T23:59')).toEqual({ startAt: '2026-03-06T05:00:00.000Z', expiresAt: '2026-03-24T03:59:00.000Z' });
  expect([typed('', ''), typed('2026-03-06T00:00', '')]).toEqual([{ startAt: null, expiresAt: null }, { startAt: '2026-03-06T05:00:00.000Z', expiresAt: null }]);
});
test('an end before the start and half a time are none', () => expect([typed('2026-03-06T00:00', '2026-03-05T00:00'), typed('2026-03-06', '')]).toEqual([null, null]));
