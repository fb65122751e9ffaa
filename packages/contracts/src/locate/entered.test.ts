import { describe, expect, test } from 'vitest';
import { locateTimes } from './clock.ts';
import { enteredRule, type EnteredRule, ruleProblem } from './entered.ts';
import { locateRule, locateRules, ruleAmong } from './rules.ts';

/** What an owner in Georgia could enter: a rule in the shape of a law that is confirmed for nobody here. */
const entered: EnteredRule = {
  state: 'GA', notice: { kind: 'fullWorkingDays', days: 2 }, life: { kind: 'calendarDays', days: 21, from: 'legalStart' }, renewal: { kind: 'workingDaysBeforeExpiry', days: 3 }, received: null,
  tolerance: 0.6096, toleranceFrom: 'edge', noAnswer: 'callAgain', holidays: ['newYear', 'memorial', 'independence', 'labor', 'thanksgiving', 'christmas'], source: 'Ga. 811 handbook, page 12', readOn: '2026-06-01',
};

test('a state without a rule is counted by the one that was entered', () => {
  expect(locateRule('GA', '2026-07-01')).toBeNull();
  const rule = ruleAmong([...locateRules, enteredRule(entered, 'x')], 'GA', '2026-07-01');
  expect(rule).toMatchObject({ version: 'own-x', source: 'Ga. 811 handbook, page 12', asOf: '2026-06-01' });
  if (rule === null) throw new Error('no rule');
  // By hand: Wednesday July 1; Thursday the 2nd counts, Friday the 3rd is kept for the Fourth (a Saturday), Monday the 6th counts; dig on Tuesday the 7th.
  // 21 calendar days from the 7th, the 7th among them, end with Monday the 27th. Three working days before, without the day of the notice, are the 23rd, 24th and 27th: Wednesday the 22nd.
  expect(locateTimes(rule, '2026-07-01T10:00:00-04:00', 'America/New_York')).toEqual({
    legalStartAt: '2026-07-07T04:00:00.000Z', expiresAt: '2026-07-28T04:00:00.000Z', renewByAt: '2026-07-23T04:00:00.000Z',
  });
});
test('the newest signed rule of a state stands before the built-in one and the earlier ones', () => {
  const mine = (id: string) => enteredRule({ ...entered, state: 'NC' }, id);
  expect(ruleAmong([...locateRules, mine('1'), mine('2')], 'NC', '2026-07-01')?.version).toBe('own-2');
});

describe('a rule that cannot be counted with is refused', () => {
  test('a sound one is not', () => expect(ruleProblem(entered)).toBeNull());
  test.each<[string, Partial<EnteredRule>]>([
    ['endsBeforeStart', { life: { kind: 'underCalendarDays', days: 2 } }],
    ['endsBeforeStart', { notice: { kind: 'fullWorkingDays', days: 12 }, life: { kind: 'workingDays', days: 10, from: 'request' } }],
    ['renewBeforeStart', { life: { kind: 'calendarDays', days: 3, from: 'legalStart' }, renewal: { kind: 'workingDaysBeforeExpiry', days: 20 } }],
  ])('%s: %j', (problem, change) => expect(ruleProblem({ ...entered, ...change })).toBe(problem));
});
