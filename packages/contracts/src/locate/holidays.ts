import { DateTime } from 'luxon';

/** When a holiday falls. Observed `nearest`: from Saturday to Friday, from Sunday to Monday. */
export type HolidayDate =
  | { readonly kind: 'fixed'; readonly month: number; readonly day: number; readonly observed: 'nearest' | 'never' }
  /** The n-th weekday (1 Monday to 7 Sunday) of a month, -1 for the last, and so many days later. */
  | { readonly kind: 'weekday'; readonly month: number; readonly weekday: number; readonly nth: number; readonly plus: number }
  /** So many days from Easter Sunday. */
  | { readonly kind: 'easter'; readonly plus: number }
  | { readonly kind: 'dates'; readonly dates: readonly string[] };

export interface Holiday {
  readonly name: string;
  readonly on: HolidayDate;
  /** The law or the center names it. One that is not sure holds the start back, and never makes a ticket live longer. */
  readonly sure: boolean;
}

export interface HolidayList {
  readonly source: string;
  /** Nothing is counted outside of the days for which somebody looked at the list. */
  readonly from: string;
  readonly until: string;
  readonly holidays: readonly Holiday[];
}

/** Days of a list between two years, told apart by whether they are sure. */
export interface HolidayDays {
  readonly sure: ReadonlySet<string>;
  readonly all: ReadonlySet<string>;
}

const cache = new WeakMap<HolidayList, HolidayDays>();

export function daysOf(list: HolidayList): HolidayDays {
  const known = cache.get(list);
  if (known !== undefined) return known;
  const years = [Number(list.from.slice(0, 4)), Number(list.until.slice(0, 4)) + 1] as const;
  const on = (wanted: (holiday: Holiday) => boolean) => new Set(list.holidays.filter(wanted).flatMap((holiday) => datesOf(holiday.on, ...years)));
  const made = { sure: on(({ sure }) => sure), all: on(() => true) };
  cache.set(list, made);
  return made;
}

/** The days on which a holiday is kept, from one year to another. Each year also looks at the next: its New Year may be kept in December. */
export function datesOf(on: HolidayDate, first: number, last: number): string[] {
  if (on.kind === 'dates') return [...on.dates];
  return Array.from({ length: last - first + 1 }, (_, at) => dateIn(on, first + at).toFormat('yyyy-MM-dd'));
}

function dateIn(on: Exclude<HolidayDate, { kind: 'dates' }>, year: number): DateTime {
  if (on.kind === 'easter') return easter(year).plus({ days: on.plus });
  if (on.kind === 'weekday') return nthWeekday(year, on.month, on.weekday, on.nth).plus({ days: on.plus });
  const day = DateTime.utc(year, on.month, on.day);
  if (on.observed === 'never' || day.weekday < 6) return day;
  return day.plus({ days: day.weekday === 6 ? -1 : 1 });
}

function nthWeekday(year: number, month: number, weekday: number, nth: number): DateTime {
  if (nth < 0) {
    const last = DateTime.utc(year, month).endOf('month').startOf('day');
    return last.minus({ days: (last.weekday - weekday + 7) % 7 });
  }
  const first = DateTime.utc(year, month, 1);
  return first.plus({ days: ((weekday - first.weekday + 7) % 7) + 7 * (nth - 1) });
}

/** Easter Sunday of the Gregorian calendar. Source: the anonymous algorithm in Meeus, Astronomical Algorithms, chapter 8. */
export function easter(year: number): DateTime {
  const a = year % 19;
  const b = Math.floor(year / 100);
  const c = year % 100;
  const d = Math.floor((8 * b + 13) / 25);
  const h = (19 * a + b - Math.floor(b / 4) - d + 15) % 30;
  const l = (32 + 2 * (b % 4) + 2 * Math.floor(c / 4) - h - (c % 4)) % 7;
  const m = Math.floor((a + 11 * h + 22 * l) / 451);
  const n = h + l - 7 * m + 114;
  return DateTime.utc(year, Math.floor(n / 31), (n % 31) + 1);
}
