import type { EnteredRule } from '@yardfall/contracts';

export const noticeKinds = ['fullWorkingDays', 'hoursFromNextWorkingDay', 'workingHours'] as const;
export const lifeKinds = ['workingDaysRequest', 'workingDaysStart', 'calendarDays', 'underCalendarDays', 'periodsOf24Hours'] as const;
export const renewalKinds = ['workingDaysBeforeExpiry', 'workingDay', 'calendarDay', 'notice'] as const;

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
