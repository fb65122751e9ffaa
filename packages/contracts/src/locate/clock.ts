import { DateTime } from 'luxon';
import { daysOf, type HolidayList } from './holidays.ts';
import type { LocateRule } from './rules.ts';

export interface LocateTimes {
  readonly legalStartAt: string;
  readonly expiresAt: string;
  readonly renewByAt: string;
}

/** What the center wrote on the ticket. The later start and the earlier end count. */
export interface GivenTimes {
  readonly startAt: string | null;
  readonly expiresAt: string | null;
}

/** A day beyond the holiday list: nothing can be counted there. */
export class UnknownDay extends Error {
  readonly day: string;
  constructor(day: string) {
    super(`the holiday list does not reach ${day}`);
    this.name = 'UnknownDay';
    this.day = day;
  }
}

/** Which holidays stop a count: a start waits for every one that may be kept, a life only for those that are sure. */
type Doubt = 'all' | 'sure';

/**
 * Legal start, expiry and the last moment to renew, from the moment of the request, counted in the zone of the property.
 * Throws UnknownDay when the count runs past the holiday list, RangeError for what is not a moment in a zone.
 */
export function locateTimes(rule: LocateRule, requestedAt: string, timeZone: string, given: GivenTimes = { startAt: null, expiresAt: null }): LocateTimes {
  const requested = momentIn(requestedAt, timeZone);
  const startGiven = given.startAt === null ? null : momentIn(given.startAt, timeZone);
  const counted = startOf(rule, requested, 'all');
  const legalStart = startGiven === null || startGiven < counted ? counted : startGiven;
  // A life that runs from the start of the work runs from the earliest one that the rule allows, or from what the ticket says.
  const end = endOf(rule, requested, startGiven ?? startOf(rule, requested, 'sure'));
  const endGiven = given.expiresAt === null ? null : momentIn(given.expiresAt, timeZone);
  const expires = endGiven === null || endGiven > end ? end : endGiven;
  const renewBy = renewalOf(rule, requested, startGiven ?? startOf(rule, requested, 'sure'), expires);
  return { legalStartAt: utc(legalStart), expiresAt: utc(expires), renewByAt: utc(renewBy) };
}

function startOf(rule: LocateRule, requested: DateTime, doubt: Doubt): DateTime {
  const { notice, holidays } = rule;
  const received = receivedOn(rule, requested, doubt);
  if (notice.kind === 'fullWorkingDays') return nextDay(addWorkingDays(received, notice.days, holidays, doubt));
  if (notice.kind === 'workingHours') return addWorkingHours(received, notice.hours, holidays, doubt);
  const begins = addWorkingDays(received, 1, holidays, doubt);
  const wholeDays = Math.floor(notice.hours / 24);
  const end = wholeDays === 0 ? begins : addWorkingDays(begins, wholeDays, holidays, doubt);
  return end.startOf('day').set({ hour: notice.from.hour }).plus({ hours: notice.hours - wholeDays * 24 });
}

/** A request outside of the hours of business counts as of the next working day. */
function receivedOn({ received, holidays }: LocateRule, requested: DateTime, doubt: Doubt): DateTime {
  if (received === null) return requested;
  const inHours = isWorkingDay(requested, holidays, doubt) && requested.hour >= received.from && requested.hour < received.until;
  return inHours ? requested : addWorkingDays(requested, 1, holidays, doubt);
}

function endOf({ life, holidays }: LocateRule, requested: DateTime, start: DateTime): DateTime {
  switch (life.kind) {
    case 'underCalendarDays': return requested.startOf('day').plus({ days: life.days });
    case 'calendarDays': return start.startOf('day').plus({ days: life.days });
    case 'periodsOf24Hours': return start.plus({ hours: 24 * life.days });
    case 'workingDays': {
      // A start that is a working day is the first of them.
      const before = life.from === 'request' ? requested : start.minus({ days: 1 });
      return nextDay(addWorkingDays(before, life.days, holidays, 'sure'));
    }
  }
}

function renewalOf(rule: LocateRule, requested: DateTime, start: DateTime, expires: DateTime): DateTime {
  const { renewal, holidays } = rule;
  const counted = (): DateTime => {
    switch (renewal.kind) {
      case 'workingDay': return addWorkingDays(requested, renewal.day, holidays, 'sure');
      case 'calendarDay': return start.startOf('day').plus({ days: renewal.day - 1 });
      case 'workingDaysBeforeExpiry': return walk(lastWholeDay(expires).plus({ days: 1 }), renewal.days + 1, -1, holidays, 'all');
      case 'notice': return ripensBefore(rule, expires);
    }
  };
  const day = counted();
  const by = rule.received === null ? nextDay(day) : day.startOf('day').set({ hour: rule.received.until });
  return by > expires ? expires : by;
}

/** The last day on which a notice could be given so that it ripens before the old one ends. */
function ripensBefore(rule: LocateRule, expires: DateTime): DateTime {
  const noticeOn = (day: DateTime) => day.set({ hour: rule.received?.from ?? 0 });
  let day = lastWholeDay(expires);
  while (startOf(rule, noticeOn(day), 'all') > expires) day = day.minus({ days: 1 });
  return day;
}

function lastWholeDay(end: DateTime): DateTime {
  return end.startOf('day').minus({ days: 1 });
}

export function isWorkingDay(day: DateTime, holidays: HolidayList, doubt: Doubt = 'all'): boolean {
  const date = dateOf(day);
  if (date < holidays.from || date > holidays.until) throw new UnknownDay(date);
  return day.weekday <= 5 && !daysOf(holidays)[doubt].has(date);
}

/** The n-th working day after this day. */
export function addWorkingDays(from: DateTime, n: number, holidays: HolidayList, doubt: Doubt = 'all'): DateTime {
  return walk(from, n, 1, holidays, doubt);
}

/** So many hours on, through working days only; a day of rest has none. */
function addWorkingHours(from: DateTime, hours: number, holidays: HolidayList, doubt: Doubt): DateTime {
  let at = isWorkingDay(from, holidays, doubt) ? from : addWorkingDays(from, 1, holidays, doubt);
  for (let left = hours; ;) {
    const midnight = nextDay(at);
    const today = midnight.diff(at, 'hours').hours;
    if (left <= today) return at.plus({ hours: left });
    left -= today;
    at = isWorkingDay(midnight, holidays, doubt) ? midnight : addWorkingDays(midnight, 1, holidays, doubt);
  }
}

function walk(from: DateTime, n: number, step: 1 | -1, holidays: HolidayList, doubt: Doubt): DateTime {
  let day = from.startOf('day');
  for (let counted = 0; counted < n;) {
    day = day.plus({ days: step });
    if (isWorkingDay(day, holidays, doubt)) counted += 1;
  }
  return day;
}

function nextDay(day: DateTime): DateTime {
  return day.plus({ days: 1 }).startOf('day');
}

function momentIn(text: string, timeZone: string): DateTime {
  const moment = DateTime.fromISO(text, { zone: timeZone });
  if (!moment.isValid) throw new RangeError(`not a moment in a time zone: ${text} ${timeZone}`);
  return moment;
}

function dateOf(day: DateTime): string {
  return day.toFormat('yyyy-MM-dd');
}

function utc(moment: DateTime): string {
  const text = moment.toUTC().toISO();
  if (text === null) throw new RangeError('not a moment');
  return text;
}
