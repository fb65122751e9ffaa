import { render } from '@yardfall/text';
import { describe, expect, test } from 'vitest';
import { casesOf, levelWords, memberOf, periodsOf, type Member } from './water.ts';

const member = (what: Member['case'], returnPeriod: number, maxLevel: number, minutesOverSill = 0): Member => ({ case: what, returnPeriod, maxLevel, minutesOverSill });
const family = [member('powerOut', 25, 30.01, 40), member('system', 100, 29.98), member('system', 2, 29.9), member('noSystem', 2, 30.02, 90)];
const said = (one: Member | null, sill: number) => {
  const { code, params } = levelWords(one, sill);
  return render('en', 'us', code, params).replaceAll('\u00a0', ' ');
};

describe('the water at the door', () => {
  test('offers only what was worked out, in its order', () => {
    expect(casesOf(family)).toEqual(['noSystem', 'system', 'powerOut']);
    expect(periodsOf(family)).toEqual([2, 25, 100]);
    expect(memberOf(family, 'system', 100)?.maxLevel).toBe(29.98);
    expect(memberOf(family, 'system', 25)).toBeNull();
  });

  test('is told as a height while it stays below the sill', () => {
    expect(said(member('system', 2, 29.9), 30)).toBe('The water stops 3.9 in below your sill.');
  });

  test('is told as time once it is over, and that it comes in; never as a height', () => {
    const words = said(member('powerOut', 25, 30.01, 40), 30);
    expect(words).toBe('The water comes in. It stands over your sill for about 40 min.');
    expect(words).not.toMatch(/\d in\b/);
  });

  test('has words for the very edge and for what was not worked out', () => {
    expect(said(member('system', 25, 29.9995), 30)).toBe('The water just reaches your sill.');
    expect(said(null, 30)).toBe('We did not work out this case.');
  });
});
