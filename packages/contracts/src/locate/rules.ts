import { holidaysOf, type HolidayList } from './holidays.ts';

/** When digging may begin. Days are counted in the zone of the property, the request day never counts. */
export type NoticeClock =
  /** So many full working days; they end with the last minute of the last one. */
  | { readonly kind: 'fullWorkingDays'; readonly days: number }
  /** Hours that begin at a time of the next working day; a day of rest stops the clock. */
  | { readonly kind: 'hoursFromNextWorkingDay'; readonly hours: number; readonly from: { readonly hour: number } };

/** How long a ticket lives; the last day counts whole. */
export type Life =
  | { readonly kind: 'workingDays'; readonly days: number; readonly from: 'request' | 'legalStart' }
  /** Fewer than so many calendar days. */
  | { readonly kind: 'underCalendarDays'; readonly days: number };

/** Last day to renew. `notice`: a new notice must ripen before the old ticket ends (ours, where the rule names no day). */
export type Renewal = { readonly kind: 'workingDay'; readonly day: number } | { readonly kind: 'workingDaysBeforeExpiry'; readonly days: number } | { readonly kind: 'notice' };

export interface LocateRule {
  readonly state: string;
  readonly version: string;
  readonly source: string;
  /** When the rule was entered here; the pages themselves bear no date. */
  readonly asOf: string;
  readonly notice: NoticeClock;
  readonly life: Life;
  readonly renewal: Renewal;
  /** Hand-dig strip each side of the mark [m]; null when not confirmed. */
  readonly tolerance: number | null;
  readonly noAnswer: string;
  readonly holidays: HolidayList;
}

const inch = 0.0254;
const asOf = '2026-11-25';
const undated = 'page without a date, check it at set-up';

const rules: readonly LocateRule[] = [
  {
    state: 'SC', version: 'SC-1', source: `SC811, ${undated}`, asOf, notice: { kind: 'fullWorkingDays', days: 3 },
    life: { kind: 'workingDays', days: 15, from: 'request' }, renewal: { kind: 'notice' }, tolerance: 24 * inch, noAnswer: 'checkThenNotifyAgain', holidays: holidaysOf('SC'),
  },
  {
    state: 'NC', version: 'NC-1', source: `NC811, ${undated}`, asOf, notice: { kind: 'fullWorkingDays', days: 3 },
    life: { kind: 'workingDays', days: 15, from: 'request' }, renewal: { kind: 'workingDay', day: 12 }, tolerance: 24 * inch, noAnswer: 'callAgain', holidays: holidaysOf('NC'),
  },
  {
    state: 'FL', version: 'FL-1', source: `Sunshine 811, ${undated}`, asOf, notice: { kind: 'fullWorkingDays', days: 2 },
    life: { kind: 'underCalendarDays', days: 30 }, renewal: { kind: 'notice' }, tolerance: 24 * inch, noAnswer: 'newTicket', holidays: holidaysOf('FL'),
  },
  {
    state: 'AL', version: 'AL-1', source: `Alabama 811, ${undated}`, asOf, notice: { kind: 'fullWorkingDays', days: 2 },
    life: { kind: 'workingDays', days: 20, from: 'legalStart' }, renewal: { kind: 'workingDaysBeforeExpiry', days: 2 }, tolerance: 18 * inch, noAnswer: 'secondNotice',
    holidays: holidaysOf('AL'),
  },
  {
    state: 'VA', version: 'VA-1', source: `VA811 and a state trade association, ${undated}`, asOf,
    notice: { kind: 'hoursFromNextWorkingDay', hours: 48, from: { hour: 7 } },
    life: { kind: 'workingDays', days: 15, from: 'request' }, renewal: { kind: 'notice' }, tolerance: 24 * inch, noAnswer: 'threeHourNotice', holidays: holidaysOf('VA'),
  },
];

/** States whose rule was looked at and could not be confirmed in a field that the clock needs, with what is open. */
export const unconfirmed: Readonly<Record<string, string>> = {
  GA: 'life of a ticket: an old page says 21 calendar days, a newer rule is reported longer',
  MS: 'notice and life of a ticket',
  TX: 'life of a ticket: a 14-day reading is disputed',
  NE: 'notice',
  MI: 'life of a ticket',
};

/** The rule set of a state, or null: an unknown rule refuses. */
export function locateRule(state: string): LocateRule | null {
  return rules.find((rule) => rule.state === state) ?? null;
}

export const locateRules = rules;
