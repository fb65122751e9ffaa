import { describe, expect, test } from 'vitest';
import { locateTimes, UnknownDay } from './clock.ts';
import { locateRule, unconfirmed } from './rules.ts';

/** Expected moments were counted by hand on a calendar from the rule of each center; the holidays are from memory. */
const eastern = 'America/New_York';
const central = 'America/Chicago';

function times(state: string, requestedAt: string, zone: string) {
  const rule = locateRule(state);
  if (rule === null) throw new Error(`no rule for ${state}`);
  return locateTimes(rule, requestedAt, zone);
}

const starts: readonly [source: string, why: string, state: string, zone: string, requested: string, legalStart: string][] = [
  ['SC811', 'Monday, dig Friday', 'SC', eastern, '2026-03-02T10:00:00-05:00', '2026-03-06T05:00:00.000Z'],
  ['SC811', 'Friday, over a weekend and the change to summer time', 'SC', eastern, '2026-03-06T10:00:00-05:00', '2026-03-12T04:00:00.000Z'],
  ['SC811', 'Saturday counts like any request day', 'SC', eastern, '2026-03-07T10:00:00-05:00', '2026-03-12T04:00:00.000Z'],
  ['SC811', 'late Monday evening, already Tuesday in UTC', 'SC', eastern, '2026-03-03T03:30:00Z', '2026-03-06T05:00:00.000Z'],
  ['SC811', 'over Thanksgiving and the day after', 'SC', eastern, '2026-11-23T09:00:00-05:00', '2026-12-01T05:00:00.000Z'],
  ['SC811', 'over Christmas', 'SC', eastern, '2026-12-21T09:00:00-05:00', '2026-12-30T05:00:00.000Z'],
  ['SC811', 'over New Year', 'SC', eastern, '2026-12-29T09:00:00-05:00', '2027-01-05T05:00:00.000Z'],
  ['SC811', 'Independence Day is kept on Friday', 'SC', eastern, '2026-07-01T09:00:00-04:00', '2026-07-08T04:00:00.000Z'],
  ['NC811', 'the day before Good Friday is the third', 'NC', eastern, '2026-03-30T09:00:00-04:00', '2026-04-03T04:00:00.000Z'],
  ['NC811', 'over Good Friday', 'NC', eastern, '2026-03-31T09:00:00-04:00', '2026-04-07T04:00:00.000Z'],
  ['Sunshine 811', 'two full days', 'FL', eastern, '2026-03-02T09:00:00-05:00', '2026-03-05T05:00:00.000Z'],
  ['Sunshine 811', 'the western zone of the state', 'FL', central, '2026-03-02T09:00:00-06:00', '2026-03-05T06:00:00.000Z'],
  ['Sunshine 811', 'over Labor Day', 'FL', eastern, '2026-09-03T09:00:00-04:00', '2026-09-09T04:00:00.000Z'],
  ['Alabama 811', 'over the state holiday of April', 'AL', central, '2026-04-23T09:00:00-05:00', '2026-04-29T05:00:00.000Z'],
  ['VA811', '48 hours from 07:00 of the next working day', 'VA', eastern, '2026-03-02T15:00:00-05:00', '2026-03-05T12:00:00.000Z'],
  ['VA811', '48 hours over a weekend and the change to summer time', 'VA', eastern, '2026-03-05T15:00:00-05:00', '2026-03-10T11:00:00.000Z'],
  ['VA811', 'over the election and the change to winter time', 'VA', eastern, '2026-10-30T15:00:00-04:00', '2026-11-05T12:00:00.000Z'],
  ['VA811', 'over the holiday of June 19', 'VA', eastern, '2026-06-17T15:00:00-04:00', '2026-06-23T11:00:00.000Z'],
];

describe('legal start', () => {
  test.each(starts)('%s: %s', (_source, _why, state, zone, requested, expected) => {
    expect(times(state, requested, zone).legalStartAt).toBe(expected);
  });
});

describe('expiry and renewal', () => {
  test('SC811: 15 working days, ending after the change to summer time; a new notice must ripen before', () => {
    expect(times('SC', '2026-03-02T10:00:00-05:00', eastern)).toMatchObject({ expiresAt: '2026-03-24T04:00:00.000Z', renewByAt: '2026-03-19T04:00:00.000Z' });
  });
  test('SC811: a ticket of December lives into the new year', () => {
    // Dec 15-18 (4), 21-23 (7), 29-31 (10), Jan 4-8 (15)
    expect(times('SC', '2026-12-14T10:00:00-05:00', eastern).expiresAt).toBe('2027-01-09T05:00:00.000Z');
  });
  test('NC811: 15 full working days, update by the 12th', () => {
    expect(times('NC', '2026-03-02T10:00:00-05:00', eastern)).toMatchObject({ expiresAt: '2026-03-24T04:00:00.000Z', renewByAt: '2026-03-19T04:00:00.000Z' });
  });
  test('Sunshine 811: under 30 calendar days', () => {
    expect(times('FL', '2026-03-02T10:00:00-05:00', eastern).expiresAt).toBe('2026-04-01T04:00:00.000Z');
  });
  test('Alabama 811: 20 working days from the start, renew two working days before', () => {
    expect(times('AL', '2026-04-23T09:00:00-05:00', central)).toMatchObject({ expiresAt: '2026-05-28T05:00:00.000Z', renewByAt: '2026-05-23T05:00:00.000Z' });
  });
  test('nothing is counted beyond the holiday list', () => {
    expect(() => times('SC', '2027-12-20T09:00:00-05:00', eastern)).toThrow(UnknownDay);
  });
});

describe('rule sets', () => {
  test.each([...Object.keys(unconfirmed), 'LA', 'CA', 'WY'])('%s is not confirmed and refuses', (state) => {
    expect(locateRule(state)).toBeNull();
  });
  test.each(['SC', 'NC', 'FL', 'AL', 'VA'])('%s shows its source and date', (state) => {
    const rule = locateRule(state);
    expect(rule?.source).toMatch(/811/);
    expect(rule?.asOf).toMatch(/^\d{4}-\d{2}-\d{2}$/);
    expect(rule?.holidays.source).toBe('from memory');
  });
});
