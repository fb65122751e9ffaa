import { describe, expect, test } from 'vitest';
import fixture from './cases.json' with { type: 'json' };
import { locateTimes, UnknownDay } from './clock.ts';
import { datesOf, easter } from './holidays.ts';
import { knownHolidays } from './holidayLists.ts';
import { locateRule, locateRules, unconfirmed } from './rules.ts';

const { cases, sources } = fixture;
const eastern = 'America/New_York';

function times(state: string, requestedAt: string, zone: string, given?: Parameters<typeof locateTimes>[3]) {
  const rule = locateRule(state, requestedAt.slice(0, 10));
  if (rule === null) throw new Error(`no rule for ${state}`);
  return { rule, ...locateTimes(rule, requestedAt, zone, given) };
}

/** The wall clock at the property by the time zones of the platform (ICU), not by the library that the clock counts with. */
function wallClock(moment: string, timeZone: string): string {
  const shape = { timeZone, hourCycle: 'h23', year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit' } as const;
  const parts = Object.fromEntries(new Intl.DateTimeFormat('en-US', shape).formatToParts(new Date(moment)).map(({ type, value }) => [type, value]));
  return `${parts.year}-${parts.month}-${parts.day} ${parts.hour}:${parts.minute}`;
}

describe('dated cases from the text of each rule', () => {
  test.each(cases.map((one) => [`${one.rule}, ${one.requested}: ${one.why}`, one] as const))('%s', (_name, one) => {
    const counted = times(one.state, one.requested, one.zone);
    expect(counted.rule.version).toBe(one.rule);
    expect({ earliestDig: wallClock(counted.legalStartAt, one.zone), renewBy: wallClock(counted.renewByAt, one.zone), expires: wallClock(counted.expiresAt, one.zone) })
      .toEqual({ earliestDig: one.earliestDig, renewBy: one.renewBy, expires: one.expires });
  });
  test('there are at least forty, each names its source, and every rule set has some', () => {
    expect(cases.length).toBeGreaterThanOrEqual(40);
    expect(new Set(cases.map(({ rule }) => rule))).toEqual(new Set(locateRules.map(({ version }) => version)));
    expect(new Set(Object.keys(sources))).toEqual(new Set(locateRules.map(({ version }) => version)));
  });
});

describe('what the center wrote on the ticket', () => {
  const monday = '2026-06-01T10:00:00-04:00';
  test('a later start is waited for, and a life from the start runs from it', () => {
    // Monday June 8 is the first of 15 working days; the last is Friday June 26 (June 19 may be kept and counts all the same).
    const counted = times('SC', monday, eastern, { startAt: '2026-06-08T00:00:00-04:00', expiresAt: null });
    expect([counted.legalStartAt, counted.expiresAt]).toEqual(['2026-06-08T04:00:00.000Z', '2026-06-27T04:00:00.000Z']);
  });
  test('an earlier start does not shorten the wait, an earlier end counts and a later one does not', () => {
    const bare = times('NC', monday, eastern);
    expect(times('NC', monday, eastern, { startAt: '2026-06-02T00:00:00-04:00', expiresAt: '2027-01-01T00:00:00-05:00' })).toEqual(bare);
    const short = times('NC', monday, eastern, { startAt: null, expiresAt: '2026-06-10T00:00:00-04:00' });
    expect([short.expiresAt, short.renewByAt]).toEqual(['2026-06-10T04:00:00.000Z', '2026-06-10T04:00:00.000Z']);
  });
});

describe('holidays', () => {
  test('Easter of published tables', () => {
    // U.S. Naval Observatory, dates of Easter, from memory.
    expect([2024, 2025, 2026, 2027, 2028, 2038].map((year) => easter(year).toISODate())).toEqual(['2024-03-31', '2025-04-20', '2026-04-05', '2027-03-28', '2028-04-16', '2038-04-25']);
  });
  test.each([
    // Federal holidays of 2027 as the U.S. Office of Personnel Management lists them, from memory.
    ['newYear', '2027-01-01'], ['king', '2027-01-18'], ['presidents', '2027-02-15'], ['memorial', '2027-05-31'], ['juneteenth', '2027-06-18'], ['independence', '2027-07-05'],
    ['labor', '2027-09-06'], ['columbus', '2027-10-11'], ['veterans', '2027-11-11'], ['thanksgiving', '2027-11-25'], ['christmas', '2027-12-24'],
    ['afterThanksgiving', '2027-11-26'], ['election', '2027-11-02'], ['goodFriday', '2027-03-26'], ['arborDay', '2027-04-30'],
  ] as const)('%s of 2027 is kept on %s', (name, date) => expect(datesOf(knownHolidays[name], 2027, 2027)).toEqual([date]));
  test('the New Year of a Saturday is kept on the last day of the old year', () => expect(datesOf(knownHolidays.newYear, 2028, 2028)).toEqual(['2027-12-31']));
  test('nothing is counted beyond the list', () => expect(() => times('SC', '2028-12-20T09:00:00-05:00', eastern)).toThrow(UnknownDay));
});

describe('rule sets', () => {
  test.each([...Object.keys(unconfirmed), 'WY', 'ZZ'])('%s is not confirmed and refuses', (state) => expect(locateRule(state)).toBeNull());
  test.each(locateRules.map((rule) => [rule.version, rule] as const))('%s shows its source and when it was read', (_version, rule) => {
    expect(rule.source).toMatch(/811|Code|Stat\.|K\.S\.A\./);
    expect(rule.asOf).toMatch(/^\d{4}-\d{2}-\d{2}$/);
    expect(rule.holidays.source).not.toBe('');
  });
  test('a law that changed has a rule set for each time', () => {
    expect([locateRule('SC', '2026-05-21')?.version, locateRule('SC', '2026-05-22')?.version, locateRule('SC')?.version]).toEqual(['SC-1', 'SC-2', 'SC-2']);
  });
});
