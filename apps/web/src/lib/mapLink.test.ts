import { expect, test } from 'vitest';
import { mapLink } from './mapLink.ts';

const phone = (userAgent: string, maxTouchPoints = 5) => mapLink('40 Wicker Rd, Sabine Flats', { userAgent, maxTouchPoints });

test('the map opens by the scheme that the phone knows', () => {
  expect(phone('Mozilla/5.0 (Linux; Android 15) Mobile')).toBe('geo:0,0?q=40%20Wicker%20Rd%2C%20Sabine%20Flats');
  expect(phone('Mozilla/5.0 (iPhone; CPU iPhone OS 18_1 like Mac OS X)')).toBe('maps:?q=40%20Wicker%20Rd%2C%20Sabine%20Flats');
  expect(phone('Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7)')).toMatch(/^maps:/);
  expect(phone('Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7)', 0)).toMatch(/^geo:/);
});
