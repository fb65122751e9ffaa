import { expect, test } from 'vitest';
import { dayAfter, smsLink, wholeLink } from './link.ts';

test('a message keeps its text and the digits of the number', () => {
  const link = smsLink('+1 (555) 010-0199', 'Here: https://x.test/drain/a?b&c');
  expect(link.startsWith('sms:+15550100199?body=')).toBe(true);
  expect(decodeURIComponent(link.split('?body=')[1] ?? '')).toBe('Here: https://x.test/drain/a?b&c');
  expect(smsLink(null, 'a b')).toBe('sms:?body=a%20b');
});

test('a link of the office becomes a whole address, and a whole one stays', () => {
  expect(wholeLink('/drain/abc', 'https://yard.test')).toBe('https://yard.test/drain/abc');
  expect(wholeLink('https://other.test/drain/abc', 'https://yard.test')).toBe('https://other.test/drain/abc');
});

test('the day is that of the property', () => {
  const late = new Date('2031-03-01T03:00:00Z');
  expect(dayAfter(late, 0, 'America/New_York')).toBe('2031-02-28');
  expect(dayAfter(late, 30, 'America/New_York')).toBe('2031-03-30');
  expect(dayAfter(late, 0, 'UTC')).toBe('2031-03-01');
});
