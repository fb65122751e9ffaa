import { describe, expect, test } from 'vitest';
import { holdsAll, searchStep, wordsOf } from './search.rules.ts';

const job = { number: 12, title: 'Wicker Road', customerName: 'Begoña Lindqvist', address: '9 Wicker Rd, Apex' };
const finds = (typed: string) => holdsAll(job, wordsOf(typed));

describe('words find a job', () => {
  test.each(['wicker', 'LINDQVIST', 'begona', 'Begoña', '12', 'apex, road', ' lind  9 ', ''])('by %j', (typed) => expect(finds(typed)).toBe(true));
  test.each(['wicker lane', '13', 'lindqvist 8'])('and not by %j', (typed) => expect(finds(typed)).toBe(false));
});

test('a plain page reads one row more than it shows, a search reads ahead', () => {
  expect([searchStep(50, 0), searchStep(50, 2), searchStep(100, 1)]).toEqual([51, 200, 200]);
});
