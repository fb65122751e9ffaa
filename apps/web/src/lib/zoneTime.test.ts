import { describe, expect, test } from 'vitest';
import { instantIn, wallClockIn } from './zoneTime.ts';

describe('a time at the property', () => {
  test.each([
    ['America/New_York', '2026-07-01T08:30', '2026-07-01T12:30:00.000Z'],
    ['America/New_York', '2026-12-01T08:30', '2026-12-01T13:30:00.000Z'],
    ['America/Phoenix', '2026-07-01T23:59', '2026-07-02T06:59:00.000Z'],
    ['Pacific/Honolulu', '2026-03-01T00:00', '2026-03-01T10:00:00.000Z'],
  ])('%s %s', (zone, clock, moment) => {
    expect(instantIn(zone, clock)).toBe(moment);
    expect(wallClockIn(zone, new Date(moment))).toBe(clock);
  });
  // US clocks go forward at 02:00 on the second Sunday of March and back at 02:00 on the first of November (15 U.S.C. 260a).
  test('just after the clocks changed', () => {
    expect(instantIn('America/New_York', '2026-03-08T03:30')).toBe('2026-03-08T07:30:00.000Z');
    expect(instantIn('America/New_York', '2026-11-01T03:30')).toBe('2026-11-01T08:30:00.000Z');
  });
  test('that is no time is not guessed', () => {
    expect(['', '2026-02', '2026-13-01T00:00'].map((clock) => instantIn('America/New_York', clock))).toEqual([null, null, null]);
  });
});
