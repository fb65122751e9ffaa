import { EnteredLocateRule } from '@yardfall/contracts';
import { expect, test } from 'vitest';
import { clocksOf, lifeKinds, noticeKinds, renewalKinds, ruleOf } from './ruleForm.ts';
import { ruleWords } from './ruleWords.ts';

const typed = (name: string) => ({ notice: '2', life: '21', renewal: '3', fromHour: '7' })[name] ?? '';
const rest = { state: 'GA', received: null, tolerance: 0.6, toleranceFrom: 'edge', noAnswer: 'callAgain', holidays: [], source: 'Handbook, page 12', readOn: '2026-03-01' };

test('every choice of the form is a rule that the office reads, and has words', () => {
  for (const notice of noticeKinds) for (const life of lifeKinds) for (const renewal of renewalKinds) {
    const clocks = clocksOf({ notice, life, renewal }, typed);
    expect(EnteredLocateRule.safeParse({ ...rest, ...clocks }).success, `${notice} ${life} ${renewal}`).toBe(true);
    expect(ruleWords(clocks)).toHaveLength(3);
  }
});
test('a count that is none is refused', () => {
  const clocks = clocksOf({ notice: 'fullWorkingDays', life: 'calendarDays', renewal: 'notice' }, (name) => (name === 'notice' ? 'two' : '21'));
  expect(EnteredLocateRule.safeParse({ ...rest, ...clocks }).success).toBe(false);
});
test('hours of business are both given or neither, and begin before they end', () => {
  const choices = { notice: 'fullWorkingDays', life: 'workingDaysRequest', renewal: 'notice' } as const;
  const withHours = (receivedFrom: string, receivedUntil: string) => {
    const rule = ruleOf(choices, (name) => ({ state: 'GA', source: 'Handbook, page 12', readOn: '2026-03-01', 'holiday.christmas': 'on', receivedFrom, receivedUntil })[name] ?? typed(name), 0.6);
    return { received: rule.received, holidays: rule.holidays, isRead: EnteredLocateRule.safeParse(rule).success };
  };
  expect(withHours('', '')).toEqual({ received: null, holidays: ['christmas'], isRead: true });
  expect(withHours('7', '17')).toEqual({ received: { from: 7, until: 17 }, holidays: ['christmas'], isRead: true });
  for (const [from, until] of [['7', ''], ['', '17'], ['17', '7'], ['7', '25']] as const) expect(withHours(from, until).isRead, `${from} ${until}`).toBe(false);
});
