import type { Photo } from '@yardfall/contracts';
import { expect, test } from 'vitest';
import type { OutboxEntry } from '../../../lib/outbox.ts';
import { galleryOf } from './gallery.ts';

const about = { itemKey: null, part: null, note: '', forCustomer: false, marks: [], sha256: 'a'.repeat(64) };
const stored = (id: string, takenAt: string): Photo => ({ ...about, id, jobId: 'j', takenAt, receivedAt: takenAt, bytes: 1, mediaType: 'image/jpeg', width: 1, height: 1, by: 'Ana', ready: true, unshown: false, fromCustomer: false });
const here = (id: string, takenAt: string, jobId = 'j'): OutboxEntry => ({ kind: 'photo', at: 1, id, memberId: 'm', jobId, refused: null, meta: { ...about, id, takenAt }, file: new Blob() });

test('the gallery is one list, the newest first, each photo once', () => {
  const list = galleryOf('j', [stored('b', '2026-11-25T10:00:00Z'), stored('a', '2026-11-25T09:00:00Z')],
    [here('c', '2026-11-25T04:30:00-05:00'), here('b', '2026-11-25T10:00:00Z'), here('d', '2026-11-25T12:00:00Z', 'other')]);
  expect(list.map(({ id, by }) => [id, by])).toEqual([['b', 'Ana'], ['c', null], ['a', 'Ana']]);
});
