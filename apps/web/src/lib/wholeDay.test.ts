import { describe, expect, test } from 'vitest';
import { wholeDay } from './wholeDay.ts';

describe('a legal time at midnight of the property', () => {
  test('begins the day that follows and ends the day before', () => {
    expect(wholeDay('2026-11-19T05:00:00Z', 'America/New_York', 'start')).toBe('2026-11-19');
    expect(wholeDay('2026-12-09T05:00:00Z', 'America/New_York', 'end')).toBe('2026-12-08');
  });
  test('also on the days when the clocks change', () => {
    expect(wholeDay('2026-11-02T05:00:00Z', 'America/New_York', 'end')).toBe('2026-11-01');
    expect(wholeDay('2026-03-09T04:00:00Z', 'America/New_York', 'end')).toBe('2026-03-08');
  });
  test('any other time keeps its hour', () => expect(wholeDay('2026-11-19T12:00:00Z', 'America/New_York', 'start')).toBeNull());
});
