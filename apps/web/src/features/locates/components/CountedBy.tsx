import type { BuiltInLocateRule } from '@yardfall/contracts';
import { useText } from '../../../lib/reader.tsx';
import { ruleWords } from '../model/ruleWords.ts';

type Rule = Pick<BuiltInLocateRule, 'notice' | 'life' | 'renewal' | 'received' | 'noAnswer' | 'toleranceFrom' | 'tolerance'>;

/** What a rule counts by, in words that can be held against the law: wait, life, renewal and strip. */
export function CountedBy({ rule }: { readonly rule: Rule }) {
  const { t } = useText();
  return (
    <ul className="ticket-history">
      {ruleWords(rule).map(({ code, params }) => <li key={code}>{t(code, params)}</li>)}
      <li>{rule.tolerance === null ? t('locates.rules.stripUnknown') : <>{t('locates.rules.strip', { tolerance: rule.tolerance })} {t(rule.toleranceFrom === 'edge' ? 'locates.rules.fromEdge' : 'locates.rules.fromMark')}</>}</li>
    </ul>
  );
}

/** Hours of business, what silence asks for, and the days that are not counted, the doubtful ones by themselves. */
export function CountedToo({ rule, holidays: { source, until, days } }: { readonly rule: Rule; readonly holidays: BuiltInLocateRule['holidays'] }) {
  const { t, say } = useText();
  const named = (sure: boolean) => days.filter((day) => day.sure === sure).map(({ name }) => say(`locates.holiday.${name}`)).join(', ');
  const doubtful = named(false);
  return (
    <ul className="ticket-history">
      <li>{rule.received === null ? t('locates.rules.anyHour') : t('locates.rules.hoursOf', rule.received)}</li>
      <li>{t('locates.rules.silence', { what: t(`locates.noAnswer.${rule.noAnswer}`) })}</li>
      <li>{t('locates.rules.daysOff', { days: named(true) })}</li>
      {doubtful === '' ? null : <li>{t('locates.rules.daysDoubtful', { days: doubtful })}</li>}
      <li>{t('locates.rules.daysFrom', { source, until })}</li>
    </ul>
  );
}
