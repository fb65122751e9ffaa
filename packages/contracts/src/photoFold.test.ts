import { expect, test } from 'vitest';
import { type PhotoAdded, photoAsIs } from './photoFold.ts';
import type { PhotoMark } from './photos.ts';

const mark = (words: string): PhotoMark => ({ kind: 'text', from: { x: 0.1, y: 0.2 }, to: { x: 0.1, y: 0.2 }, words });
const photo = { id: 'photo', takenAt: '2026-11-24T15:00:00Z', itemKey: 'B1', part: null, note: 'The door', marks: [mark('came')] };
const added = (id: string, minute: number, more: Partial<PhotoAdded> = {}): PhotoAdded => ({ id, at: `2026-11-24T15:${String(minute).padStart(2, '0')}:00Z`, by: 'Ines', marks: [], note: '', place: null, hides: [], ...more });

test('a later set of marks takes no earlier one away, whatever the order of arrival', () => {
  const all = [added('b', 2, { marks: [mark('second')], note: 'Crack' }), added('a', 1, { marks: [mark('first')] })];
  const { sets, marks, note } = photoAsIs(photo, all);
  expect(sets.map(({ id, by, hidden }) => [id, by, hidden])).toEqual([['photo', null, false], ['a', 'Ines', false], ['b', 'Ines', false]]);
  expect(marks.map(({ words }) => words)).toEqual(['came', 'first', 'second']);
  expect(note).toBe('The door\nCrack');
  expect(photoAsIs(photo, all.toReversed())).toEqual(photoAsIs(photo, all));
  expect(photoAsIs(photo, [...all, ...all])).toEqual(photoAsIs(photo, all));
});

test('a set that is drawn no longer stays on record; the one the photo came with goes by its own id', () => {
  const { sets, marks } = photoAsIs(photo, [added('a', 1, { marks: [mark('wrong')] }), added('b', 2, { hides: ['a', 'photo'] })]);
  expect(marks).toEqual([]);
  expect(sets.map(({ id, hidden }) => [id, hidden])).toEqual([['photo', true], ['a', true]]);
});

test('the later place counts as a whole, and where none was said it is where it was taken', () => {
  const at = (part: string | null, station: number | null) => ({ itemKey: null, part, point: station === null ? null : { station, level: -0.5 } });
  expect(photoAsIs(photo, [])).toMatchObject({ itemKey: 'B1', part: null, point: null });
  const moved = [added('a', 5, { place: at('P1', 4.2) }), added('b', 3, { place: at('C1', 1) }), added('c', 9, { note: 'no word of a place' })];
  expect(photoAsIs(photo, moved)).toMatchObject({ itemKey: null, part: 'P1', point: { station: 4.2, level: -0.5 } });
  expect(photoAsIs(photo, [...moved, added('d', 10, { place: at('P1', null) })])).toMatchObject({ part: 'P1', point: null });
});
