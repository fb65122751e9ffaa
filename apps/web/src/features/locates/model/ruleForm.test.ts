import { EnteredLocateRule } from '@yardfall/contracts';
import { expect, test } from 'vitest';
import { clocksOf, lifeKinds, noticeKinds, renewalKinds } from './ruleForm.ts';
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
