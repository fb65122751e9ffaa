import { holidayLists } from './holidayLists.ts';
import type { HolidayList } from './holidays.ts';

/** When digging may begin. Days are counted in the zone of the property, the request day never counts. */
export type NoticeClock =
  /** So many full working days; they end with the last minute of the last one. */
  | { readonly kind: 'fullWorkingDays'; readonly days: number }
  /** Hours that begin at a time of the next working day; a day of rest stops the clock. */
  | { readonly kind: 'hoursFromNextWorkingDay'; readonly hours: number; readonly from: { readonly hour: number } }
  /** Hours that begin with the request; a day of rest stops the clock. */
  | { readonly kind: 'workingHours'; readonly hours: number };

/**
 * How long a ticket lives, from the request or from the start of the work. Where a rule leaves open whether its first day counts,
 * it counts, so that a ticket never lives too long here. The last day counts whole; periods of 24 hours end at their minute.
 */
export type Life =
  | { readonly kind: 'workingDays'; readonly days: number; readonly from: 'request' | 'legalStart' }
  | { readonly kind: 'calendarDays'; readonly days: number; readonly from: 'legalStart' }
  /** Fewer than so many calendar days after the request. */
  | { readonly kind: 'underCalendarDays'; readonly days: number }
  | { readonly kind: 'periodsOf24Hours'; readonly days: number; readonly from: 'legalStart' };

/** Last day to renew. `notice`: a new notice must ripen before the old ticket ends (ours, where the rule names no day). */
export type Renewal =
  | { readonly kind: 'workingDay'; readonly day: number }
  | { readonly kind: 'calendarDay'; readonly day: number }
  | { readonly kind: 'workingDaysBeforeExpiry'; readonly days: number }
  | { readonly kind: 'notice' };

export interface LocateRule {
  readonly state: string;
  readonly version: string;
  /** Law and page that were read, with their sections. */
  readonly source: string;
  /** When it was read. */
  readonly asOf: string;
  /** The page bears no date: the owner is asked to check it. */
  readonly undated: boolean;
  /** Requests of these days, in the zone of the property. */
  readonly from: string | null;
  readonly until: string | null;
  /** Hours in which requests are received; one outside of them counts as of the next working day. Null where the rule names none. */
  readonly received: { readonly from: number; readonly until: number } | null;
  readonly notice: NoticeClock;
  readonly life: Life;
  readonly renewal: Renewal;
  /** Hand-dig strip each side [m]; null when not confirmed. */
  readonly tolerance: number | null;
  /** What the strip is measured from; half the width of the line comes on top of its middle. */
  readonly toleranceFrom: 'mark' | 'edge';
  readonly noAnswer: 'checkThenNotifyAgain' | 'callAgain' | 'newTicket' | 'secondNotice' | 'threeHourNotice';
  readonly holidays: HolidayList;
}

const inch = 0.0254;
const read = { asOf: '2026-11-29', undated: false, from: null, until: null, received: null } as const;

const rules: readonly LocateRule[] = [
  {
    ...read, state: 'SC', version: 'SC-1', source: 'SC811, notice calendar and law page', undated: true, until: '2026-05-21', notice: { kind: 'fullWorkingDays', days: 3 },
    life: { kind: 'workingDays', days: 15, from: 'request' }, renewal: { kind: 'notice' }, tolerance: 24 * inch, toleranceFrom: 'edge', noAnswer: 'checkThenNotifyAgain', holidays: holidayLists.SC,
  },
  {
    ...read, state: 'SC', version: 'SC-2', source: 'S.C. Code 58-36-60(A) and (B), in force from May 22, 2026; SC811 notice calendar', from: '2026-05-22',
    notice: { kind: 'fullWorkingDays', days: 3 }, life: { kind: 'workingDays', days: 15, from: 'legalStart' }, renewal: { kind: 'notice' },
    tolerance: 24 * inch, toleranceFrom: 'edge', noAnswer: 'checkThenNotifyAgain', holidays: holidayLists.SC,
  },
  {
    ...read, state: 'NC', version: 'NC-1', source: 'NC811, notice and holiday pages', undated: true, notice: { kind: 'fullWorkingDays', days: 3 },
    life: { kind: 'workingDays', days: 15, from: 'request' }, renewal: { kind: 'workingDay', day: 12 }, tolerance: 24 * inch, toleranceFrom: 'edge', noAnswer: 'callAgain', holidays: holidayLists.NC,
  },
  {
    // The law says valid for 30 calendar days, the page of the center "less than 30": the shorter is counted. Hours of business from memory.
    ...read, state: 'FL', version: 'FL-2', source: 'Fla. Stat. 556.102(1), 556.105(1)(a) to (c); Sunshine 811', received: { from: 7, until: 17 },
    notice: { kind: 'fullWorkingDays', days: 2 }, life: { kind: 'underCalendarDays', days: 30 }, renewal: { kind: 'notice' },
    tolerance: 24 * inch, toleranceFrom: 'edge', noAnswer: 'newTicket', holidays: holidayLists.FL,
  },
  {
    ...read, state: 'AL', version: 'AL-2', source: 'Ala. Code 37-15-2 and 37-15-4(b); Alabama 811, life of a ticket', notice: { kind: 'hoursFromNextWorkingDay', hours: 48, from: { hour: 7 } },
    life: { kind: 'workingDays', days: 20, from: 'legalStart' }, renewal: { kind: 'workingDaysBeforeExpiry', days: 2 }, tolerance: 18 * inch, toleranceFrom: 'edge', noAnswer: 'secondNotice',
    holidays: holidayLists.AL,
  },
  {
    ...read, state: 'VA', version: 'VA-1', source: 'VA811, wait times explained; Va. Code 56-265.24 for the strip', undated: true,
    notice: { kind: 'hoursFromNextWorkingDay', hours: 48, from: { hour: 7 } }, life: { kind: 'workingDays', days: 15, from: 'request' }, renewal: { kind: 'notice' },
    tolerance: 24 * inch, toleranceFrom: 'mark', noAnswer: 'threeHourNotice', holidays: holidayLists.VA,
  },
  {
    ...read, state: 'KS', version: 'KS-1', source: 'K.S.A. 66-1804(a) and (c), 66-1802', notice: { kind: 'fullWorkingDays', days: 2 },
    life: { kind: 'calendarDays', days: 20, from: 'legalStart' }, renewal: { kind: 'notice' }, tolerance: 24 * inch, toleranceFrom: 'edge', noAnswer: 'callAgain', holidays: holidayLists.KS,
  },
  {
    ...read, state: 'NE', version: 'NE-1', source: 'Neb. Rev. Stat. 76-2321(1), 76-2304; 155 NAC 2-005.02 to .04', notice: { kind: 'fullWorkingDays', days: 2 },
    life: { kind: 'calendarDays', days: 17, from: 'legalStart' }, renewal: { kind: 'calendarDay', day: 14 }, tolerance: 18 * inch, toleranceFrom: 'edge', noAnswer: 'callAgain', holidays: holidayLists.NE,
  },
  {
    ...read, state: 'TN', version: 'TN-1', source: 'Tenn. Code 65-31-106(a), 65-31-102(4); Tennessee 811, excavation guide 2024', notice: { kind: 'workingHours', hours: 72 },
    life: { kind: 'periodsOf24Hours', days: 15, from: 'legalStart' }, renewal: { kind: 'workingDaysBeforeExpiry', days: 3 }, tolerance: 24 * inch, toleranceFrom: 'edge', noAnswer: 'callAgain',
    holidays: holidayLists.TN,
  },
];

/** States whose rule was looked at and could not be confirmed in a field that the clock needs, with what is open. */
export const unconfirmed: Readonly<Record<string, string>> = {
  GA: 'notice: O.C.G.A. 25-9-7 begins its 48 hours after the business day that follows the request, the center counts two business days; 25-9-6 was not read',
  MS: 'notice and life: the center names 14 calendar days, the law was being changed in 2025',
  TX: 'life: Util. Code 251.151 names the notice and a Saturday rule, but no life of a ticket',
  MI: 'life of a ticket',
  LA: 'life: R.S. 40:1749.13 was read, the 20 days of 40:1749.14 and where they begin were not',
  CA: 'notice: Gov. Code 4216 was not read in its present text',
};

/** The rule set of a state for a request of this day, or null: an unknown rule refuses. Without a day the newest. */
export function locateRule(state: string, day?: string): LocateRule | null {
  return ruleAmong(rules, state, day);
}

/** The rule set among these, the last of a state first. */
export function ruleAmong(among: readonly LocateRule[], state: string, day?: string): LocateRule | null {
  const covers = ({ from, until }: LocateRule) => day === undefined || ((from === null || day >= from) && (until === null || day <= until));
  return among.findLast((rule) => rule.state === state && covers(rule)) ?? null;
}

export const locateRules = rules;
