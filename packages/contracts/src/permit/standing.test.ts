import { describe, expect, test } from 'vitest';
import { evidenceLacking, permitGap, permitStates } from './standing.ts';

const bare = { number: '', note: '', on: null, expiresOn: null, photoId: null };

describe('an approval', () => {
  test.each([
    ['unknown', null, 'unknown'], ['applied', null, 'applied'], ['refused', null, 'refused'], ['notNeeded', null, null], ['granted', null, null],
    ['granted', '2026-03-02', null], ['granted', '2026-03-01', 'expired'],
  ] as const)('%s, good until %s: %s', (state, expiresOn, gap) => expect(permitGap({ state, expiresOn }, '2026-03-02')).toBe(gap));
  test('that nobody answered is unknown', () => expect(permitGap(null, '2026-03-02')).toBe('unknown'));
  test('says what it lacks', () => {
    expect(Object.fromEntries(permitStates.map((state) => [state, evidenceLacking({ ...bare, state })]))).toEqual({
      unknown: [], notNeeded: ['note'], applied: ['number', 'on'], granted: ['note', 'on'], refused: ['note'],
    });
    expect(evidenceLacking({ ...bare, state: 'granted', on: '2026-03-01', photoId: 'x' })).toEqual([]);
    expect(evidenceLacking({ ...bare, state: 'granted', on: '2026-03-01', number: 'B-7' })).toEqual([]);
  });
});
