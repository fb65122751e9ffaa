import { DateTime } from 'luxon';
import type { HolidayList } from './holidays.ts';
import type { Life, LocateRule, NoticeClock, Renewal } from './rules.ts';

export interface LocateTimes {
  readonly legalStartAt: string;
  readonly expiresAt: string;
  readonly renewByAt: string;
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

/**
 * Legal start, expiry and the last moment to renew, from the moment of the request, counted in the zone of the property.
 * Throws UnknownDay when the count runs past the holiday list.
 */
export function locateTimes(rule: LocateRule, requestedAt: string, timeZone: string): LocateTimes {
  const requested = DateTime.fromISO(requestedAt, { zone: timeZone });
  if (!requested.isValid) throw new RangeError(`not a moment in a time zone: ${requestedAt} ${timeZone}`);
  const legalStart = startOf(rule.notice, requested, rule.holidays);
  const lastDay = lastDayOf(rule.life, requested, legalStart, rule.holidays);
  const renewBy = renewalOf(rule, requested, lastDay);
  return { legalStartAt: utc(legalStart), expiresAt: utc(lastDay.plus({ days: 1 }).startOf('day')), renewByAt: utc(renewBy) };
}

function startOf(notice: NoticeClock, requested: DateTime, holidays: HolidayList): DateTime {
  if (notice.kind === 'fullWorkingDays') return addWorkingDays(requested, notice.days, holidays).plus({ days: 1 }).startOf('day');
  const begins = addWorkingDays(requested, 1, holidays);
  const wholeDays = Math.floor(notice.hours / 24);
  const end = wholeDays === 0 ? begins : addWorkingDays(begins, wholeDays, holidays);
  return end.startOf('day').set({ hour: notice.from.hour }).plus({ hours: notice.hours - wholeDays * 24 });
}

function lastDayOf(life: Life, requested: DateTime, legalStart: DateTime, holidays: HolidayList): DateTime {
  if (life.kind === 'underCalendarDays') return requested.startOf('day').plus({ days: life.days - 1 });
  if (life.from === 'request') return addWorkingDays(requested, life.days, holidays);
  // The start day is the first of them when it is a working day.
  return addWorkingDays(legalStart.minus({ days: 1 }), life.days, holidays);
}

function renewalOf({ renewal, notice, holidays }: LocateRule, requested: DateTime, lastDay: DateTime): DateTime {
  return renewalDay(renewal, notice, requested, lastDay, holidays).plus({ days: 1 }).startOf('day');
}

function renewalDay(renewal: Renewal, notice: NoticeClock, requested: DateTime, lastDay: DateTime, holidays: HolidayList): DateTime {
  if (renewal.kind === 'workingDay') return addWorkingDays(requested, renewal.day, holidays);
  if (renewal.kind === 'workingDaysBeforeExpiry') return subtractWorkingDays(lastDay, renewal.days, holidays);
  let day = lastDay.startOf('day');
  while (startOf(notice, day, holidays) > lastDay.plus({ days: 1 }).startOf('day')) day = day.minus({ days: 1 });
  return day;
}

export function isWorkingDay(day: DateTime, holidays: HolidayList): boolean {
  const date = dateOf(day);
  if (date < holidays.from || date > holidays.until) throw new UnknownDay(date);
  return day.weekday <= 5 && !holidays.days.includes(date);
}

/** The n-th working day after this day. */
export function addWorkingDays(from: DateTime, n: number, holidays: HolidayList): DateTime {
  return walk(from, n, 1, holidays);
}

export function subtractWorkingDays(from: DateTime, n: number, holidays: HolidayList): DateTime {
  return walk(from, n, -1, holidays);
}

function walk(from: DateTime, n: number, step: 1 | -1, holidays: HolidayList): DateTime {
  let day = from.startOf('day');
  for (let counted = 0; counted < n;) {
    day = day.plus({ days: step });
    if (isWorkingDay(day, holidays)) counted += 1;
  }
  return day;
}

function dateOf(day: DateTime): string {
  return day.toFormat('yyyy-MM-dd');
}

function utc(moment: DateTime): string {
  const text = moment.toUTC().toISO();
  if (text === null) throw new RangeError('not a moment');
  return text;
}
