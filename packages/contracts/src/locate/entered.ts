import { DateTime } from 'luxon';
import { locateTimes, UnknownDay } from './clock.ts';
import { type HolidayName, holidayList } from './holidayLists.ts';
import type { Life, LocateRule, NoticeClock, Renewal } from './rules.ts';

/** A rule set that the owner of a company read, entered and signed. */
export interface EnteredRule {
  readonly state: string;
  readonly notice: NoticeClock;
  readonly life: Life;
  readonly renewal: Renewal;
  readonly received: LocateRule['received'];
  readonly tolerance: number;
  readonly toleranceFrom: LocateRule['toleranceFrom'];
  readonly noAnswer: LocateRule['noAnswer'];
  readonly holidays: readonly HolidayName[];
  readonly source: string;
  readonly readOn: string;
}

/** @param id of the signed row: a ticket names it as its rule */
export function enteredRule({ readOn, source, holidays, ...rest }: EnteredRule, id: string): LocateRule {
  return { ...rest, version: enteredVersion(id), source, asOf: readOn, undated: false, from: null, until: null, holidays: holidayList(source, holidays) };
}

export function enteredVersion(id: string): string {
  return `own-${id}`;
}

/** Zone and days on which a rule is tried out: each day of two weeks that hold Independence Day and a weekend. */
const [tryZone, tryFrom] = ['America/New_York', '2026-06-29'];

/**
 * Why a rule cannot be counted with, or null: a ticket must be alive when it may be dug, and be renewed after it began and before it ends.
 * A slip of a digit is found so before anybody digs by it.
 */
export function ruleProblem(entered: EnteredRule): 'endsBeforeStart' | 'renewBeforeStart' | 'beyondHolidays' | null {
  const rule = enteredRule(entered, '');
  for (let day = 0; day < 14; day += 1) {
    const requested = DateTime.fromISO(`${tryFrom}T10:00`, { zone: tryZone }).plus({ days: day });
    try {
      const { legalStartAt, renewByAt, expiresAt } = locateTimes(rule, requested.toISO() ?? '', tryZone);
      if (expiresAt <= legalStartAt) return 'endsBeforeStart';
      if (renewByAt <= (requested.toUTC().toISO() ?? '')) return 'renewBeforeStart';
    } catch (error) {
      if (error instanceof UnknownDay) return 'beyondHolidays';
      throw error;
    }
  }
  return null;
}
