import type { NewPhotoAddition, Photo } from '@yardfall/contracts';
import { expect, test } from 'vitest';
import type { OutboxEntry } from './outbox.ts';
import { photosNow } from './photosNow.ts';

const about = { itemKey: null, part: null, note: '', forCustomer: false, marks: [], sha256: 'a'.repeat(64) };
const stored = (id: string, takenAt: string, additions: Photo['additions'] = []): Photo => ({ ...about, additions, id, jobId: 'j', takenAt, receivedAt: takenAt, bytes: 1, mediaType: 'image/jpeg', width: 1, height: 1, by: 'Ana', ready: true, unshown: false, fromCustomer: false });
const here = (id: string, takenAt: string, jobId = 'j'): OutboxEntry => ({ kind: 'photo', at: 1, id, memberId: 'm', jobId, refused: null, meta: { ...about, id, takenAt }, file: new Blob() });
const words = (id: string, note: string): NewPhotoAddition => ({ id, at: '2026-11-25T13:00:00Z', marks: [], note, place: null, hides: [] });
const more = (id: string, photoId: string, note: string): OutboxEntry => ({ kind: 'photoMore', at: 2, id, memberId: 'm', jobId: 'j', refused: null, photoId, more: words(id, note) });

test('one list, the newest first, each photo once and numbered from the oldest', () => {
  const list = photosNow('j', [stored('b', '2026-11-25T10:00:00Z'), stored('a', '2026-11-25T09:00:00Z')],
    [here('c', '2026-11-25T04:30:00-05:00'), here('b', '2026-11-25T10:00:00Z'), here('d', '2026-11-25T12:00:00Z', 'other')]);
  expect(list.map(({ id, by, number }) => [id, by, number])).toEqual([['b', 'Ana', 3], ['c', null, 2], ['a', 'Ana', 1]]);
});

test('what was added on this phone stands on the photo before the office has it, and once after that', () => {
  const arrived = { ...words('x', 'cracked'), by: 'Ana', recordedAt: '2026-11-25T13:00:01Z' };
  const [waits] = photosNow('j', [stored('a', '2026-11-25T09:00:00Z')], [more('x', 'a', 'cracked'), more('y', 'other', 'no')]);
  expect(waits).toMatchObject({ note: 'cracked', waiting: 1 });
  const [both] = photosNow('j', [stored('a', '2026-11-25T09:00:00Z', [arrived])], [more('x', 'a', 'cracked')]);
  expect(both).toMatchObject({ note: 'cracked', waiting: 0 });
  const [unsent] = photosNow('j', [], [here('c', '2026-11-25T09:30:00Z'), more('z', 'c', 'low')]);
  expect(unsent).toMatchObject({ id: 'c', note: 'low', by: null, waiting: 1 });
});

test('a list that an earlier version of the page kept has no additions, and is read all the same', () => {
  const { additions: _none, ...earlier } = stored('a', '2026-11-25T09:00:00Z');
  expect(photosNow('j', [earlier as Photo], []).map(({ note, waiting }) => [note, waiting])).toEqual([['', 0]]);
});
