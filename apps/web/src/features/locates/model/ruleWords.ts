import type { EnteredRule } from '@yardfall/contracts';
import type { MessageCode } from '@yardfall/text';

interface Said {
  readonly code: MessageCode;
  readonly params: Readonly<Record<string, number>>;
}

/** Notice, life and renewal of a rule as sentences. */
export function ruleWords({ notice, life, renewal }: Pick<EnteredRule, 'notice' | 'life' | 'renewal'>): readonly Said[] {
  const wait: Said = notice.kind === 'fullWorkingDays' ? { code: 'locates.rules.notice.fullWorkingDays', params: { days: notice.days } }
    : notice.kind === 'workingHours' ? { code: 'locates.rules.notice.workingHours', params: { hours: notice.hours } }
      : { code: 'locates.rules.notice.hoursFromNextWorkingDay', params: { hours: notice.hours, hour: notice.from.hour } };
  const lasts: Said = life.kind === 'workingDays' ? { code: life.from === 'request' ? 'locates.rules.life.workingDaysRequest' : 'locates.rules.life.workingDaysStart', params: { days: life.days } }
    : { code: `locates.rules.life.${life.kind}`, params: { days: life.days } };
  const renews: Said = renewal.kind === 'notice' ? { code: 'locates.rules.renewal.notice', params: {} }
    : { code: `locates.rules.renewal.${renewal.kind}`, params: { days: renewal.kind === 'workingDaysBeforeExpiry' ? renewal.days : renewal.day } };
  return [wait, lasts, renews];
}
