import { expect, test } from 'vitest';
import { cancelUntil } from './cancellation.ts';

const north = { state: 'NC', timeZone: 'America/New_York' };

// 16 CFR 429.0: midnight of the third business day; every day but Sundays and federal holidays is one. Counted by hand on the calendar of 2026.
test.each([
  ['Monday counts from Tuesday', '2026-03-02T15:00:00Z', '2026-03-06T00:00:00-05:00'],
  ['Saturday counts, Sunday does not', '2026-03-05T15:00:00Z', '2026-03-10T00:00:00-04:00'],
  ['late in the evening is still that day where the property stands', '2026-03-03T04:30:00Z', '2026-03-06T00:00:00-05:00'],
  ['Thanksgiving does not count', '2026-11-24T15:00:00Z', '2026-11-29T00:00:00-05:00'],
  ['neither the Fourth of July, a Saturday, nor the Friday on which it is kept', '2026-07-01T15:00:00Z', '2026-07-08T00:00:00-04:00'],
  ['over the New Year', '2026-12-30T15:00:00Z', '2027-01-05T00:00:00-05:00'],
])('%s', (_name, accepted, until) => {
  expect(cancelUntil(accepted, north)).toBe(until);
});

test('a state that gives longer is counted by its own days', () => {
  expect(cancelUntil('2026-03-02T15:00:00Z', { state: 'CA', timeZone: 'America/Los_Angeles' })).toBe('2026-03-08T00:00:00-08:00');
});
