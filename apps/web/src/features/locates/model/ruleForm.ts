import { type EnteredLocateRule, type EnteredRule, holidayNames } from '@yardfall/contracts';

export const noticeKinds = ['fullWorkingDays', 'hoursFromNextWorkingDay', 'workingHours'] as const;
export const lifeKinds = ['workingDaysRequest', 'workingDaysStart', 'calendarDays', 'underCalendarDays', 'periodsOf24Hours'] as const;
export const renewalKinds = ['workingDaysBeforeExpiry', 'workingDay', 'calendarDay', 'notice'] as const;

export const noAnswers = ['checkThenNotifyAgain', 'callAgain', 'newTicket', 'secondNotice', 'threeHourNotice'] as const;

export interface RuleChoices {
  readonly notice: (typeof noticeKinds)[number];
  readonly life: (typeof lifeKinds)[number];
  readonly renewal: (typeof renewalKinds)[number];
}

/** A count as typed; not a whole number above nothing is 0, which the office refuses. */
export function countIn(typed: string): number {
  return /^\d{1,3}$/.test(typed.trim()) ? Number(typed) : 0;
}

/** The clocks of a rule from what was chosen and typed. */
export function clocksOf({ notice, life, renewal }: RuleChoices, field: (name: string) => string): Pick<EnteredRule, 'notice' | 'life' | 'renewal'> {
  const [wait, days, renew] = [countIn(field('notice')), countIn(field('life')), countIn(field('renewal'))];
  return {
    notice: notice === 'fullWorkingDays' ? { kind: notice, days: wait } : notice === 'workingHours' ? { kind: notice, hours: wait } : { kind: notice, hours: wait, from: { hour: countIn(field('fromHour')) } },
    life: life === 'workingDaysRequest' ? { kind: 'workingDays', days, from: 'request' } : life === 'workingDaysStart' ? { kind: 'workingDays', days, from: 'legalStart' }
      : life === 'underCalendarDays' ? { kind: life, days } : { kind: life, days, from: 'legalStart' },
    renewal: renewal === 'notice' ? { kind: renewal } : renewal === 'workingDaysBeforeExpiry' ? { kind: renewal, days: renew } : { kind: renewal, day: renew },
  };
}

/** Hours of business as typed; neither means that the rule names none, half of them or none that can be is left to the office to refuse. */
function receivedIn(field: (name: string) => string): EnteredRule['received'] {
  const [from, until] = [field('receivedFrom').trim(), field('receivedUntil').trim()];
  return from === '' && until === '' ? null : { from: from === '' ? -1 : countIn(from), until: countIn(until) };
}

/** @param tolerance strip each side [m] */
export function ruleOf(choices: RuleChoices, field: (name: string) => string, tolerance: number): EnteredLocateRule {
  return {
    state: field('state'), ...clocksOf(choices, field), received: receivedIn(field), tolerance, toleranceFrom: field('toleranceFrom') === 'mark' ? 'mark' : 'edge',
    noAnswer: noAnswers.find((one) => one === field('noAnswer')) ?? 'callAgain', holidays: holidayNames.filter((name) => field(`holiday.${name}`) !== ''), source: field('source'), readOn: field('readOn'),
  };
}
