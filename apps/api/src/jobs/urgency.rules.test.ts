import { expect, test } from 'vitest';
import { urgencyOf, visitBy } from './urgency.rules.ts';

test.each([
  [{ enteredHouse: true, onDryDays: false }, 'houseEntered'],
  [{ enteredHouse: false, onDryDays: false }, 'normal'],
  [{ enteredHouse: false, onDryDays: true }, 'leakTestFirst'],
  [{ enteredHouse: true, onDryDays: true }, 'leakTestFirst'],
])('%o is %s', (complaint, urgency) => {
  expect(urgencyOf(complaint)).toBe(urgency);
});

test.each([
  // Monday 2 March 2026 -> Thursday
  ['2026-03-02T15:00:00Z', 'America/Chicago', '2026-03-05'],
  // Thursday -> Tuesday over the weekend
  ['2026-03-05T15:00:00Z', 'America/Chicago', '2026-03-10'],
  // late on Sunday in Chicago is Monday in London
  ['2026-03-02T03:00:00Z', 'America/Chicago', '2026-03-04'],
  ['2026-03-02T03:00:00Z', 'Europe/London', '2026-03-05'],
])('called %s in %s, visit by %s', (called, zone, day) => {
  expect(visitBy(new Date(called), zone)).toBe(day);
});
